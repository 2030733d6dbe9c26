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
  'places.other-air-measured':
    'Lowest EMC in typical air: {typicalPct}. {from, select, measured {Measured air puts} others {Measured air, and readings at other places of this kind, put} other {{boards, plural, one {Readings of # board and measured air put} other {Readings of # boards and measured air put}}}} it {offPoints} {direction, select, damper {higher} other {lower}}.',
  'places.by-measured': 'EMC from measured air',
  'places.by-both': 'EMC from readings and measured air',
  'places.measured': 'EMC measured here',
  'places.measured-unused': 'Not used',
  'places.measured-chart': 'EMC measured at {placeName}, by day',
  'places.measured-summary': '{days, plural, one {# day} other {# days}} measured. The newest: {emcPct}.',
  'places.newest-air':
    'Measured {measuredAt}: {airTempC}, {humidityRhPct} humidity. EMC in this air: {emcPct}.',
  'places.newest-typed':
    'Measured {measuredOn}: {airTempC}, {humidityRhPct} humidity. EMC in this air: {emcPct}.',
  'places.measured-since':
    '{days, plural, one {# day measured, {sinceOn}.} other {# days measured since {sinceOn}.}}',
  'places.silent':
    'No value for {days, plural, one {# day} other {# days}}. Check the sensor’s battery and its distance.',
  'places.no-value-yet': 'No value yet. Sensors are read once an hour while Pintally is open.',
  'places.sensors-at': 'Sensors at {placeName}',
  'places.type-air': 'Enter measured air',
  'places.type-air-at': 'Enter measured air at {placeName}',
  'places.type-air-title': 'Air in {placeName}',
  'places.type-air-how':
    'Read a hygrometer that has hung there for a few hours. It counts for the whole day, in place of what sensors measure.',
  'places.measured-on': 'Measured on',
  'places.air-typed': 'Air in {placeName} saved.',
  'places.unused.stuck':
    '{days, plural, one {# day} other {# days}} not used: every value was the same. Check the sensor.',
  'places.unused.saturated':
    '{days, plural, one {# day} other {# days}} not used: 0 or 100% humidity for days. The sensor may be wet or broken.',
  'places.unused.jump':
    '{days, plural, one {# day} other {# days}} not used: the temperature jumped. Was the sensor moved?',
  'places.unused.unlike':
    '{days, plural, one {# day} other {# days}} not used: unlike the usual air here. Was the sensor elsewhere?',
  'places.unused.unlike-typed':
    '{days, plural, one {# day} other {# days}} not used: unlike the usual air here. Check what was entered.',
  'places.unused.later':
    '{days, plural, one {# day} other {# days}} not used: dated in the future. Was the computer’s clock ahead?',
  'places.unused.part-of-day':
    '{days, plural, one {# day} other {# days}} not used: only part of the day was measured. Nights are damper.',
  'places.unused.excluded': '{days, plural, one {# day} other {# days}} excluded.',
  'places.days': '{days, plural, one {The measured day} other {All # measured days}}',
  'places.days-at': 'Measured days at {placeName}',
  'places.day-runs': '{measuredOn} runs from {fromAt} to {toAt} here, as sensors count days.',
  'places.earlier-days': 'Show earlier days',
  'places.day': '{measuredOn}: {airTempC}, {humidityRhPct} humidity. EMC {emcPct}.',
  'places.day-typed': 'Entered for the whole day.',
  'places.day-typed-instead': 'Entered for the whole day, in place of the sensor.',
  'places.day-outdated': '{airTempC}, {humidityRhPct} humidity, entered earlier for this day, is not used.',
  'places.day-unused.stuck': 'Not used: every value was the same. Check the sensor.',
  'places.day-unused.saturated': 'Not used: 0 or 100% humidity for days. The sensor may be wet or broken.',
  'places.day-unused.jump': 'Not used: the temperature jumped. Was the sensor moved?',
  'places.day-unused.unlike': 'Not used: unlike the usual air here.',
  'places.day-unused.part-of-day': 'Not used: only part of the day was measured.',
  'places.day-unused.later': 'Not used: dated in the future. Was the computer’s clock ahead?',
  'places.day-unused.excluded': 'Excluded.',
  'places.typed-value': '{humidityRhPct} on {measuredOn}',
  'places.exclude': 'Exclude',
  'places.exclude-day': 'Exclude {measuredOn}',
  'places.exclude-days': 'Exclude days at {placeName}',
  'places.exclude-effect':
    'Use this where a sensor was elsewhere, or wrong. Nothing is deleted. The usual air is used on these days.',
  'places.excluded': '{days, plural, one {# day} other {# days}} of air in {placeName} excluded.',
  'places.include': 'Include',
  'places.include-day': 'Include {measuredOn}',
  'places.include-days': 'Include days at {placeName}',
  'places.include-effect': 'What sensors measured on these days is used again.',
  'places.included': '{days, plural, one {# day} other {# days}} of air in {placeName} included.',
  'places.first-day': 'First day',
  'places.last-day': 'Last day',
  'places.replace-air': 'Replace',
  'places.delete-air': 'Delete the air of {measuredOn}',
  'places.delete-air-effect': 'What sensors measured that day is used again, or else the usual air.',
  'places.air-deleted': 'Air of {measuredOn} deleted.',
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
