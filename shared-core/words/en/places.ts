/** Places, their air, and the EMC in it. */
export const places = {
  'places.title': 'Places',
  'places.lead': 'The air of a place sets how dry wood gets there.',
  'places.add': 'Add a place',
  'places.none': 'No places yet. A stack needs one: the shed, the yard, the shop.',
  'places.edit': 'Edit {placeName}',

  'places.kind.outdoors': 'Outdoors',
  'places.kind.open-shed': 'Open shed',
  'places.kind.shop': 'Shop, heated now and then',
  'places.kind.heated-room': 'Heated room',

  'places.kind-and-air': '{kind} · {airSource}',
  'places.emc-in-month': 'EMC in {monthName}',
  'places.emc-all-year': 'EMC all year',
  'places.lowest': 'Lowest EMC',
  'places.in-month': 'in {monthName}',
  'places.other-air':
    'Lowest EMC in typical air: {typicalPct}. Readings {boards, plural, =0 {at other places of this kind} one {of # board} other {of # boards}} put it {offPoints} {direction, select, damper {higher} other {lower}}.',
  'places.stacks-at': 'Stacks at {placeName}',
  'places.boards': '({boards, plural, one {# board} other {# boards}})',
  'places.no-boards': 'No boards here.',

  'places.movement': 'Air movement',
  'places.movement.still-room': 'Still',
  'places.movement.open-shed': 'Sheltered',
  'places.movement.wind': 'Windy',
  'places.movement.fan': 'Fan',
  'places.movement.dehumidified': 'Dehumidifier',
  'places.movement.solar-kiln': 'Solar kiln',
  'places.movement-here': 'Air movement: {movement}',
  'places.movement-caution.fan': 'Wet oak can dry too fast in a fan’s air, and check.',
  'places.movement-caution.dehumidified':
    'Wet oak can dry too fast here, and check. Start mild. Enter the air that the dehumidifier keeps.',
  'places.movement-caution.solar-kiln':
    'Wet oak can dry too fast here, and check. Keep the vents open at first. Enter the air inside the kiln.',

  'places.year': 'EMC at {placeName}, by month',
  'places.year-unnamed': 'EMC by month',
  'places.lowest-emc': 'Lowest EMC here, in {monthName}: {emcPct}.',
  'places.steady-emc': 'EMC here all year: {emcPct}.',
  'places.month': 'Month',
  'places.emc': 'EMC',
  'places.typical-air': 'EMC of typical air',
  'places.by-readings': 'EMC from readings',
  'places.now': 'now',
  'places.lowest-mark': 'lowest {emcPct}',

  'places.name': 'Name',
  'places.kind': 'Kind',
  'places.way.open-shed': 'Outdoor air of this yard',
  'places.way.part-heated': 'Heated now and then',
  'places.way.heated': 'Heated in winter',
  'places.way.conditioned': 'Heated and air-conditioned',
  'places.way.steady': 'The same all year',
  'places.way.own': 'Your own monthly averages',
  'places.way.station': 'Outdoor air of a weather station',
  'places.way.file': 'Outdoor air of an EPW file',
  'places.room-hint':
    'An assumption: EMC from {driestPct} in winter to {dampestPct} in summer. Replace it once you know your own.',
  'places.from-outdoors-hint':
    'From the air of {outdoorsName}: EMC {emcInterval}. Rough, and so are the dates.',
  'places.edit-months': 'Edit the months',
  'places.renew-air': 'Use the outdoor air of {outdoorsName}',
  'places.steady-hint': 'Kept steady by a dehumidifier or air conditioner.',
  'places.temperature': 'Temperature',
  'places.humidity': 'Relative humidity',
  'places.months': 'Average air, by month',
  'places.months-hint':
    'Temperature in {unitName}, relative humidity in %. Twelve rows copied from a spreadsheet can be pasted into any field.',
  'places.temperature-in': '{monthName}, temperature',
  'places.humidity-in': '{monthName}, relative humidity',

  'places.air': 'Air',
  'places.air-of': 'Air of {siteName}, typical year',
  'places.air-of-region':
    '{stations, plural, one {Average of # weather station in the region: rough} other {Average of # weather stations in the region: rough}}',
  'places.air-of-no-region': 'Average air: rough',
  'places.air-of-room':
    'Assumed: {room, select, heated {heated in winter} conditioned {heated and air-conditioned} other {heated now and then}}',
  'places.air-made-of-outdoors':
    'From the outdoor air of {outdoorsName}, {room, select, heated {heated in winter} conditioned {heated and air-conditioned} other {heated now and then}}',
  'places.air-of-outdoors': 'Outdoor air of {outdoorsName}',
  'places.own-figures': 'Your own figures',
} as const;
