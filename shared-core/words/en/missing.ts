/** What is not known of a board, and what it would make better. */
export const missing = {
  'missing.title': 'Still missing',
  'missing.edit': 'Edit this board',
  'missing.sawn-on': 'Sawing date: starts the forecast from green wood.',
  'missing.station': 'Weather station nearest to {placeName}: narrows the dates.',
  'missing.log': 'Log: boards of one log improve each other’s dates.',
  'missing.length': 'Length: spots are then measured from its ends.',
  'missing.end':
    '{lacking, select, width {Width} sawing {Sawing} other {Width and sawing}}: cup is then forecast.',
  'missing.bark-side': 'Bark side: tells which face cups.',
  'missing.layer': 'Layer: the top and the bottom of a stack dry differently.',
} as const;
