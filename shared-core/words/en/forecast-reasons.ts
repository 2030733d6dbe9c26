/** What a forecast says of a board: what to expect, when to probe, what was assumed, or why there is none. */
export const forecastReasons = {
  // Why there is none.
  'forecast.none-to-begin-with':
    'No forecast yet: never probed, and the sawing date is missing. Probe it once, or enter the sawing date.',
  'forecast.none.starts-later':
    'No forecast: this board starts in the future. Check its sawing date and the clock.',
  'forecast.none.reading-to-come':
    'No forecast: a reading is from the future. Check the date of the reading and the clock.',
  'forecast.none.reading-before-start':
    'No forecast: a reading is older than the sawing date. Correct that date, or exclude that reading.',
  'forecast.none.no-first-place':
    'No forecast: its first place is missing. Enter the place and the day it came there.',
  'forecast.none.moves-out-of-order':
    'No forecast: the moves of this board are out of order. Check their dates.',
  'forecast.none.too-long':
    'No forecast: the history of this board is over 100 years long. Check its sawing date.',
  'forecast.none.no-fit':
    'No forecast: the readings do not fit any way of drying. Check the sizes, the species, and the readings.',

  // When to probe next.
  'forecast.probe.first': 'Not probed yet. Until then, the forecast shows how such boards dry on average.',
  'forecast.probe.known-ready': 'Ready, by its readings. More are unlikely to change that.',
  'forecast.probe.check-ready': 'It should be ready by now. Readings will tell for sure.',
  'forecast.probe.undecided': 'It is near its target. Readings a week after the last ones tell more.',
  'forecast.probe.decides': 'It may be ready or not. Readings today will tell.',
  'forecast.probe.never': 'It is unlikely to reach its target here. Move it to drier air.',
  'forecast.probe.after-moving':
    'It is unlikely to come near its target here by {untilOn}. Probe it after moving it.',
  'forecast.probe.learns-rate':
    'How fast this board dries is not clear yet. Readings a month after the last ones help most.',
  'forecast.probe.tries-air':
    'How fast it dries in this air is not clear yet. One reading here narrows the dates most.',
  'forecast.probe.not-sooner': 'Unlikely to be ready sooner.',

  // Assumptions.
  'forecast.assumed.from-first-round': 'Its history starts with its first round.',
  'forecast.assumed.from-first-round-moved':
    'Where it was before {enteredOn} is missing, so its history starts with its first round.',
  'forecast.assumed.there-since-sawn':
    'Where it was before {enteredOn} is missing. Assumed in {placeName} since it was sawn.',
  'forecast.assumed.readings-questionable':
    'All readings are questionable. The forecast uses them, so it may be far off.',
  'forecast.assumed.readings-unused': 'All readings of {readOn} are questionable and were not used.',
  'forecast.assumed.average-density':
    'Density of {speciesName} unknown: average density assumed, so dates are less certain.',
  'forecast.assumed.regional-air':
    'The air in {placeName} is a rough regional average, so the dates are rough too.',
  'forecast.air.measured':
    'Air in {placeName}: measured since {sinceOn}, on {days, plural, one {# day} other {# days}}. {otherAir}',
  'forecast.air.station':
    'All other days: the air of {stationName}{adjusted, select, yes {, adjusted to what was measured} other {}}.',
  'forecast.air.file':
    'All other days: the weather file for {siteName}{adjusted, select, yes {, adjusted to what was measured} other {}}.',
  'forecast.air.region':
    'All other days: the region’s average air{adjusted, select, yes {, adjusted to what was measured} other {}}.',
  'forecast.air.room':
    'All other days: the usual air of such a room{adjusted, select, yes {, adjusted to what was measured} other {}}.',
  'forecast.air.months':
    'All other days: the months you entered{adjusted, select, yes {, adjusted to what was measured} other {}}.',
  'forecast.assumed.room-air': 'The air in {placeName} is assumed, so the dates are rough too.',
  'forecast.assumed.check-air':
    'Readings differ a lot from the air entered for {placeName}. Check that air, and the airflow through the stack.',
  'forecast.assumed.air-in-doubt':
    'The EMC in {placeName} may stay at {emcPct}, above the target. So there is no latest date. Measure the air there with a hygrometer.',
  'forecast.assumed.sun':
    'Top layer, uncovered in {placeNames}: its upper face is assumed to dry at {rateSharePct} of the usual rate in the sun. Rain is ignored.',
  'forecast.assumed.lowest':
    'Layer 1, over the ground in {placeNames}: its lower face is assumed to dry at {rateSharePct} of the usual rate.',
  'forecast.assumed.bark-on':
    'Bark on its {face, select, upper {upper} other {lower}} face: that face is assumed to dry at {rateSharePct} of the usual rate. The pins are assumed to go into the other face.',
  'forecast.assumed.bark-until':
    'Bark on its {face, select, upper {upper} other {lower}} face until {barkOffOn}. Until then, that face is assumed to have dried at {rateSharePct} of the usual rate. The pins are assumed to have gone into the other face.',
} as const;
