/** What is wrong with a field of a form. */
export const validation = {
  'validation.fix-fields': 'Not saved yet. Fix the highlighted fields.',
  'validation.not-understood': 'Pintally does not understand that input. Check the values.',

  'validation.missing': 'Fill this in.',
  'validation.path-missing': 'Give a path.',
  'validation.path-too-long': 'That path is too long. Choose a shorter one.',
  'validation.upload-too-large': 'That file is larger than any yard. Choose another file.',
  'validation.not-whole': 'Type a whole number.',
  'validation.text-too-long': 'Use at most {letters} characters.',
  'validation.least-length': 'At least {boundLengthMm}.',
  'validation.most-length': 'At most {boundLengthMm}.',
  'validation.least-size': 'At least {boundMm}.',
  'validation.most-size': 'At most {boundMm}.',
  'validation.least-temperature': 'At least {boundTempC}.',
  'validation.most-temperature': 'At most {boundTempC}.',
  'validation.least-weight': 'At least {boundKg}.',
  'validation.most-weight': 'At most {boundKg}.',
  'validation.least-percent': 'At least {boundLimitPct}.',
  'validation.most-percent': 'At most {boundLimitPct}.',
  'validation.least': 'At least {rawBound}.',
  'validation.most': 'At most {rawBound}.',
  'validation.most-at-once': 'At most {most} at a time. Add the rest after these.',

  'validation.name-missing': 'Give it a name.',
  'validation.name-too-long': 'Use at most 80 letters.',
  'validation.board-code': 'A board ID has up to 16 letters, digits, and hyphens, like OAK-07.',
  'validation.not-a-number': '“{typedText}” is not a number. Type it in digits.',
  'validation.two-numbers':
    '“{typedText}” could mean two different numbers. Type {rawWhole} or {rawDecimal}.',
  'validation.weight-not-above-zero': 'Type a weight above 0.',
  'validation.section-weight-missing': 'Give the weight of at least one section.',
  'validation.piece-missing': 'Give the piece a mark, like A1.',
  'validation.readings-missing': 'Type at least one reading.',
  'validation.per-layer-missing': 'Give the boards per layer, or leave all three blank.',
  'validation.first-column-too-high':
    'Column {firstColumn} is beyond the {perLayer, plural, one {# board} other {# boards}} of a layer.',
  'validation.too-many-layers':
    'That makes {layers} layers. A stack has at most {mostLayers}. Put more boards in a layer.',

  'validation.zero-reading':
    '0 is not a reading. A meter shows a blank or a dash instead. Leave the spot open, or probe it again.',
  'validation.negative-reading': 'A reading is above 0. Check the sign.',
  'validation.pins-short': 'Those pins read the surface only. Check their length and its unit.',
  'validation.most-humidity': 'Relative humidity is at most 99% here. In fog, use 99%.',
  'validation.no-meter-shows': 'No meter shows that number. Check it.',
  'validation.place-missing': 'Choose a place.',
  'validation.use-missing': 'Choose a use.',
  'validation.day-too-early': 'Type the year with four digits, 1900 or later.',
  'validation.time-missing': 'Give the date and time.',
  'validation.day-missing': 'Give the day.',
  'validation.nothing-to-change': 'Change at least one field.',
} as const;
