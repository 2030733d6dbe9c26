/** A board followed by its weight. */
export const weights = {
  'weights.title': 'Moisture by weight',
  'weights.weigh': 'Weigh',
  'weights.cut': 'Cut sections',
  'weights.cut-new': 'Cut new sections',
  'weights.why': 'You can follow a board by its weight, without a meter.',
  'weights.how-cut': 'Cut a section near each end. Weigh the sections and the board.',
  'weights.how-dry': 'Dry the sections in an oven. They give the oven-dry weight of the board.',
  'weights.how-follow': 'From then on its weight gives its MC, above fiber saturation too.',
  'weights.no-sections': 'Cut sections first. Without them its weight does not give its MC.',
  'weights.sections-drying':
    '{drying} of {sections, plural, one {# section} other {# sections}} in the oven. Weigh {drying, plural, one {it} other {them}} when dry.',
  'weights.impossible': 'These weights cannot be right. Exclude this cut, then cut new sections.',
  'weights.weigh-now':
    'It was at {mcWhenCutPct} when the sections were cut. Weigh the board to see its MC now.',
  'weights.mc-now': '{mcPct} by weight. It was at {mcWhenCutPct} when the sections were cut.',
  'weights.below-oven-dry':
    'It weighs less than its oven-dry estimate, so the sections were too dry. Cut new ones.',
  'weights.target': 'Target weight for {useName}: {leastKg} to {mostKg}.',

  'weights.cut-title': 'Sections of {boardCode}',
  'weights.cut-where':
    'Cut two sections, each {sectionMm} along the grain. Stay {clearDistanceMm} from the ends and clear of knots.',
  'weights.cut-middle': 'The piece between them is the sample board.',
  'weights.cut-weigh': 'Weigh the sections at once, before they dry. Then weigh the board.',
  'weights.cut-coat': 'Coat the fresh ends of the board.',
  'weights.cut-caution': 'A saw can throw short pieces. Clamp the board and keep your hands clear.',
  'weights.first-section': 'First section, wet',
  'weights.second-section': 'Second section, wet',
  'weights.second-hint': 'Optional. Two sections show how sure the estimate is.',
  'weights.board': 'Weight of the board',
  'weights.cut-when': 'When it was cut',

  'weights.weigh-title': 'Weigh {boardCode}',
  'weights.weigh-how': 'Weigh the whole board, without stickers. Brush off rain and snow.',
  'weights.weighed-when': 'When it was weighed',

  'weights.dry-title': '{sectionName}, oven-dry',
  'weights.dry-how':
    'Keep the oven at {leastTempC} to {mostTempC}. The section is dry when it loses less than {lossPct} in 2 hours (EN 13183-1).',
  'weights.dry-wet': 'It weighed {wetGrams} wet.',
  'weights.dry-caution':
    'Oven and wood are hot. Use gloves or tongs. Do not leave wood in a hot oven unattended. Resinous wood gives off vapors that can burn. A microwave can set wood on fire.',
  'weights.dry-weight': 'Oven-dry weight',

  'weights.what': 'Weighed',
  'weights.when': 'When',
  'weights.sections-cut': '{boardKg}, sections cut',
  'weights.mc-error': '{mcPct} ± {errorPoints}',
  'weights.section': 'Section {number}',
  'weights.section-of-cut': 'section {number} of {cutName}',
  'weights.cut-name': 'the cut of {cutOn}',
  'weights.wet': '{wetGrams} wet',
  'weights.in-oven': 'in the oven',
  'weights.dry': '{dryGrams} oven-dry',
  'weights.weigh-dry': 'Weigh dry',
  'weights.weigh-again': 'Weigh again',
  'weights.weigh-dry-name': 'Weigh dry: {sectionName}',
  'weights.weigh-again-name': 'Weigh again: {sectionName}',

  'weights.chart': 'Moisture content of {boardCode} by weight',
  'weights.chart-one': '{mcPct} on {weighedOn}.',
  'weights.chart-more': 'From {firstPct} on {firstOn} to {lastPct} on {lastOn}.',
  'weights.weight': 'Weight',
  'weights.by-weight': 'By weight',
  'weights.by-meter': 'By meter',
} as const;
