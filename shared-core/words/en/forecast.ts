/** When a board or a stack gets there. */
export const forecast = {
  'forecast.chart': 'Moisture content of {boardCode}, past and forecast in {placeName}',
  'forecast.if-moved-to': 'Forecast if moved to',
  'forecast.stays': 'Stays',
  'forecast.today': 'Today',
  'forecast.lowest-emc': 'Lowest EMC {emcPct}',

  'forecast.average-now': 'Forecast for today: {averagePct}, likely {likelyInterval}.',
  'forecast.average-now-rough': 'Forecast for today: {averagePct}, questionable.',
  'forecast.target': 'Target {targetRange}.',
  'forecast.ready-in-place': 'Ready in {placeName}: {readyText}.',

  'forecast.driest-month': 'Lowest EMC',

  'forecast.places': 'If moved today',
  'forecast.move-there': 'Move to {placeName}',
  'forecast.places-caption':
    'Dates for {targetRange} on average and a shell–core difference of {allowedPoints} at most.',
  'forecast.places-caption-any': 'Dates for {targetRange} on average.',
  'forecast.place': 'Place',
  'forecast.here-now': 'here now',
  'forecast.ready': 'Ready',
  'forecast.likely': 'Likely {readyWhen}',
  'forecast.about': 'About {readyWhen}',
  'forecast.timeline-until': 'Today → {lastOn}',
  'forecast.all-year': 'all year',
  'forecast.lowest-emc-head': 'Lowest EMC',
  'forecast.now': 'Now',
  'forecast.any-day': 'Any day now',
  'forecast.unlikely': 'Unlikely within two years; closest in {bestMonthsRange}, driest about {driestPct} MC',
  'forecast.not-within': 'Unlikely within two years',
  'forecast.driest': 'Unlikely within two years; dries to about {driestPct} MC',
  'forecast.leaves': 'Too damp: rises above the target about {leavesOn}',
  'forecast.passes': 'In the target from about {entersOn} to {leavesOn}, then too damp',
  'forecast.air-too-damp': 'Unlikely: the air is too damp (lowest EMC {emcPct})',

  'forecast.based-on': 'Based on',
  'forecast.based-on-readings':
    '{readings, plural, =0 {No readings of this board} one {# reading of this board} other {# readings of this board}}.',
  'forecast.based-on-others':
    '{readings, plural, =0 {No readings of this board} one {# reading of this board} other {# readings of this board}}, and {others, plural, one {# other board} other {# other boards}} of its stack and log.',

  'profile.title': 'Through the thickness',
  'profile.chart': 'Moisture through the thickness of {boardCode} today',
  'profile.depth': 'Below the upper face',
  'profile.mc': 'MC',
  'profile.now': 'By today’s forecast: shell about {shellPct}, core about {corePct}.',
  'profile.shell-now': 'By today’s forecast: shell about {shellPct}.',
  'profile.core-now': 'By today’s forecast: core about {corePct}.',
  'profile.shell-read': 'Shell read today: {shellPct}.',
  'profile.core-read': 'Core read today: {corePct}.',
  'profile.emc': 'EMC this month {emcPct}',
  'profile.emc-here': 'EMC here this month: {emcPct}.',
  'profile.read-on': 'The readings are from {readOn}.',
  'profile.legend-likely': 'Forecast profile',
  'profile.legend-shell': 'Shell reading',
  'profile.legend-core': 'Core reading',
} as const;
