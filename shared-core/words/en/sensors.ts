/** Thermometers and hygrometers. */
export const sensors = {
  'sensors.kind.air': 'Hygrometer',
  'sensors.kind.probe': 'Probe thermometer',
  'sensors.name': 'Name',
  'sensors.place': 'Place',
  'sensors.no-place': 'No place',
  'sensors.since': 'Since',
  'sensors.move': 'Move',
  'sensors.move-named': 'Move {name}',
  'sensors.move-effect': 'What it measured since that day is the air of the new place.',
  'sensors.moved': '{name} moved.',
  'sensors.rename': 'Rename',
  'sensors.rename-named': 'Rename {name}',
  'sensors.remove': 'Remove',
  'sensors.remove-named': 'Remove {name}',
  'sensors.remove-effect': 'Pintally stops reading it. What it measured stays with its places.',
  'sensors.removed': '{name} removed.',
} as const;
