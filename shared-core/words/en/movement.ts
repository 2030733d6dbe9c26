/** How a board changes its size and shape as it dries; its volume and weight. */
export const movement = {
  'movement.title': 'Size, volume, and weight',
  'movement.not-probed': 'Probe it first. How much it shrinks depends on its MC now.',
  'movement.from-to': 'From {nowPct} now to {targetPct}, the target for {useName}:',
  'movement.table': 'Change in size',
  'movement.table-source': 'Wood Handbook, chapter 13. Single boards can move a third more or less.',
  'movement.side': 'Side',
  'movement.side.width': 'Width',
  'movement.side.thickness': 'Thickness',
  'movement.now': 'Now',
  'movement.by-shrinkage': 'By total shrinkage',
  'movement.by-coefficient': 'By change coefficient',
  'movement.change': '{sizeChangeMm} ({changeLimitPct})',

  'movement.width-missing': 'Width unknown: only the thickness is shown.',
  'movement.sawing-missing': 'Sawing unknown: flat-sawn and quarter-sawn are the two extremes.',
  'movement.shrinkage-missing': 'The shrinkage of {speciesName} is not fully known.',
  'movement.coefficients-missing': 'No change coefficients are published for {speciesName}.',
  'movement.coefficients-outside': 'Change coefficients are valid for {validRange} only.',
  'movement.size-missing':
    '{missing, select, width {Width} length {Length} other {Width and length}} unknown, so volume and weight are too.',
  'movement.gravity-missing': 'The specific gravity of {speciesName} is unknown, so its weight is too.',
  'movement.species-data': 'Data for {speciesName}',

  'movement.board-feet': 'Tally in board feet',
  'movement.cubic-meters': 'Tally in cubic meters',
  'movement.exact': 'exact: {volume}',
  'movement.weight-now': 'Weight now',
  'movement.weight-at-target': 'Weight at target',
  'movement.at-mc': 'at {mcPct}',
} as const;
