/** The call on a board, and its reasons. */
export const calls = {
  'call.ready': 'Ready',
  'call.bring-in': 'Bring in',
  'call.keep-drying': 'Keep drying',
  'call.probe-again': 'Probe again',
  'call.too-dry': 'Too dry',

  /** The letter of each, which differ: on labels and in the drawing of a stack. */
  'call.letter-ready': 'R',
  'call.letter-bring-in': 'B',
  'call.letter-keep-drying': 'K',
  'call.letter-probe-again': 'P',

  'call.too-wet': 'Too wet: {averagePct}. Target {targetRange}.',
  'call.dry-as-place': 'At {averagePct} it is as dry as {placeName} gets it (EMC {emcPct}). Bring it in.',
  'call.would-change':
    '{questionable, plural, one {# questionable reading} other {# questionable readings}} would change this call.',
  'call.none-left': 'All readings are excluded.',
  'call.no-readings': 'No readings yet.',
} as const;
