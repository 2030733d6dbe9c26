/** Places, their air, and the EMC in it. */
export const places = {
  'places.title': 'Places',
  'places.lead': 'The air of a place sets how dry wood gets there.',
  'places.add': 'Add a place',
  'places.add-first': 'Add the first place',
  'places.none': 'No places yet. A stack needs one: the shed, the yard, the shop.',
  'places.edit': 'Edit {placeName}',

  'places.kind.outdoors': 'Outdoors',
  'places.kind.open-shed': 'Open shed',
  'places.kind.shop': 'Shop, not heated all year',
  'places.kind.heated-room': 'Heated room',

  'places.emc-in-month': 'EMC in {monthName}',
  'places.lowest': 'Lowest EMC',
  'places.in-month': 'in {monthName}',

  'places.year': 'EMC at {placeName}, by month',
  'places.year-unnamed': 'EMC by month',
  'places.lowest-emc': 'Lowest EMC here, in {monthName}: {emcPct}.',
  'places.steady-emc': 'EMC here all year: {emcPct}.',
  'places.month': 'Month',
  'places.emc': 'EMC',
  'places.now': 'now',
  'places.lowest-mark': 'lowest {emcPct}',

  'places.name': 'Name',
  'places.kind': 'Kind',
  'places.same-all-year': 'Same air all year',
  'places.same-all-year-hint':
    'As in a heated room. Otherwise type the average of each month, from a weather service.',
  'places.temperature': 'Temperature',
  'places.humidity': 'Relative humidity',
  'places.months': 'Average air, by month',
  'places.months-hint':
    'Temperature in {unitName}, relative humidity in %. Twelve rows copied from a spreadsheet can be pasted into any field.',
  'places.temperature-in': '{monthName}, temperature',
  'places.humidity-in': '{monthName}, relative humidity',

  'places.name-missing': 'Give the place a name.',
  'places.air': 'Air',
  'places.air-source': 'Source of its air',
  'places.air-of': 'Air of {siteName}, typical year',
  'places.air-of-region': 'Rough air: the average of {stations} weather stations',
  'places.own-months': 'Months typed by hand',
  'places.air-short': '{airTempC}, {rhPct} humidity',
  'places.air-missing': 'Type both the temperature and the humidity.',
  'places.temperature-outside': 'Type a temperature from {coldestTempC} to {warmestTempC}.',
  'places.humidity-outside': 'Type a humidity from {driestRhPct} to {dampestRhPct}.',
  'places.month-problem': '{monthName}: {problem}',
} as const;
