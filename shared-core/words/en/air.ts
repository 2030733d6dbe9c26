/** The EMC of any air, and the air for any target. */
export const air = {
  'air.lead': 'The EMC of any air, and the humidity for any target.',
  'air.places': 'EMC of your places',

  'air.of-this-air': 'EMC of this air',
  'air.temperature': 'Air temperature',
  'air.humidity': 'Relative humidity',
  'air.emc': 'EMC',
  'air.dew-point': 'Dew point',
  'air.emc-note':
    'Thin wood reaches it in days, a thick board in months. Wood colder than the dew point gets a wet surface, so its shell reads too high.',

  'air.for-target': 'Humidity for a target',
  'air.target': 'Target MC',
  'air.target-outside': 'At most {wettestPct}. Wood gets no wetter in air at this temperature.',
  'air.humidity-to-hold': 'Humidity to hold',
  'air.humidity-note': 'In drier air the wood dries past its target. In damper air it never gets there.',

  'air.at-this-temperature': 'EMC at this temperature',
  'air.emc-at': 'EMC at {airTempC}',
  'air.emc-summary': 'EMC at {airTempC}: {dryPct} at {dryRhPct} humidity, {dampPct} at {dampRhPct}.',

  'air.room': 'Target for your room',
  'air.room-lead':
    'For the room where the finished work goes. Type its humidity at the driest and the dampest time of the year. Wood machined within this range moves least.',
  'air.room-temperature': 'Room temperature',
  'air.lowest-humidity': 'Lowest humidity',
  'air.highest-humidity': 'Highest humidity',
  'air.room-target': 'Target for this room',
  'air.save-as-use': 'Save as a use',
  /** Where the target of a person's own use comes from. */
  'air.room-source': 'A room at {roomTempC}, {driestRhPct} to {dampestRhPct} humidity.',

  'air.humidity-turned': 'The highest humidity is below the lowest. Swap them.',
} as const;
