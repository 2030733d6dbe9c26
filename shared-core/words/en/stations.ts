/** Weather stations and weather files. */
export const stations = {
  'stations.nearest': 'Nearest weather station',
  'stations.hint':
    'All stations are in the US. A town, a state, or latitude and longitude. Leave blank for rough dates.',
  'stations.none':
    'No weather station matches “{typedText}”. Try a larger town, add the state, or leave it blank.',
  'stations.only-state': '“{typedText}” has no weather station. Choose the nearest in {stateName}.',

  'epw.label': 'EPW weather file',
  'epw.hint': 'A typical year, hour by hour. Published for many cities.',
  'epw.to-save': 'To be saved: {airSource}.',
  'epw.refused': '{fileName} was refused. {problem}',
  'epw.missing': 'Choose a file.',
  'epw.too-large': 'This file is too large for a year of weather. Nothing was changed. Choose an EPW file.',
  'epw.not-epw': 'This is not an EPW file. Nothing was changed. Choose one whose name ends in .epw.',
  'epw.month-missing':
    '{missingMonth} is missing or has too few hours. Nothing was changed. Choose a file with a whole year.',
} as const;
