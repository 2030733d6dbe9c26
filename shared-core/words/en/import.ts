/** Tables that a person brings: what of them goes in, and what does not. */
export const importing = {
  // Why a row does not go in.
  'import.no-code': 'No board ID.',
  'import.totals': '“{cellTypedText}” is a line of totals.',
  'import.bad-code':
    '“{cellTypedText}” cannot be a board ID. An ID has up to 16 letters, digits, and hyphens.',
  'import.codes-clash': '“{cellTypedText}” and “{otherTypedText}” would both become {boardCode}.',
  'import.no-length': '“{cellTypedText}” is not a length.',
  'import.length-impossible': '“{cellTypedText}” is not between {leastMm} and {mostMm}. Check the unit.',
  'import.no-date': '“{cellTypedText}” is not a date. Check the order of day and month.',
  'import.date-impossible': '{givenOn} is in the future, or too long ago.',
  'import.no-time': '“{cellTypedText}” is not a time.',
  'import.no-month': '“{cellTypedText}” is not a month.',
  'import.place-unknown': 'The yard has no place called {placeName}.',
  'import.species-unknown': '{speciesName} is not a species of this yard, or could mean several.',
  'import.no-layer': '“{cellTypedText}” is not a layer from 1 to 100.',
  'import.no-reading': '“{cellTypedText}” is not a reading.',
  'import.reading-without-date': 'A reading without a date.',
  'import.read-before-sawn': 'Read on {readOn}, before it was sawn on {sawnOn}.',
  'import.depth-impossible': '{depthMm} is deeper than the board is thick.',
  'import.no-temperature': '“{cellTypedText}” is not a temperature.',
  'import.temperature-impossible': '{tempC} is no temperature of wood that is probed. Check the unit.',
  'import.air-impossible': '{tempC} is no temperature of air. Check the unit.',
  'import.no-humidity': '“{cellTypedText}” is not a humidity from 0 to 100%.',
  'import.no-species': 'No species.',
  'import.no-thickness': 'No thickness.',
  'import.no-stack': 'No stack.',
  'import.other-species': 'Line {line} gives this board another species.',
  'import.other-thickness': 'Line {line} says that this board is {rowThickness} thick.',
  'import.no-weight': '“{cellTypedText}” is not a weight.',
  'import.no-piece': 'No piece.',
  'import.no-meter-value': 'No reading of the meter.',
  'import.dry-heavier': 'The dry weight is above the wet weight.',

  // What a column holds.
  'import.role.unused': 'Not imported',
  'import.role.code': 'Board ID',
  'import.role.species': 'Species',
  'import.role.thickness': 'Thickness',
  'import.role.width': 'Width',
  'import.role.length': 'Length',
  'import.role.sawnOn': 'Sawn on',
  'import.role.log': 'Log',
  'import.role.layer': 'Layer',
  'import.role.stack': 'Stack',
  'import.role.place': 'Place',
  'import.role.note': 'Note',
  'import.role.day': 'Date',
  'import.role.time': 'Time',
  'import.role.reading': 'Reading',
  'import.role.depth': 'Depth',
  'import.role.woodTemp': 'Wood temperature',
  'import.role.month': 'Month',
  'import.role.airTemp': 'Air temperature',
  'import.role.humidity': 'Relative humidity',
  'import.role.piece': 'Piece',
  'import.role.wetWeight': 'Weight before drying',
  'import.role.dryWeight': 'Weight out of the oven',

  // What stands in the way of all rows, and what goes in with them.
  'import.column-missing': 'No column is {roleName}. Choose it above.',
  'import.role-twice': 'Two columns are {roleName}. Choose one of them.',
  'import.choose-place': 'Choose the place of the new stack.',
  'import.months-missing': 'A new place needs all twelve months. {placeName} was left out.',
  'import.month-thin': 'Fewer than 20 days in {thinMonth}: that month stays as it is.',
  'import.known-boards':
    '{boards, plural, one {# board is} other {# boards are}} here already. Their sizes stay as they are; new readings are added.',
  'import.temperature-missing': 'Some readings have no wood temperature. They go in, and are less certain.',
  'import.depth-missing': 'Some readings have no depth. They go in, and are less certain.',
  'import.at-place-since':
    'New boards count as at their place since they were sawn, or since their first reading.',

  // Why a file cannot be read. Nothing is changed by reading one.
  'import.refused-spreadsheet':
    'This is a workbook or another zipped file. Nothing was read. In your spreadsheet, save the sheet as CSV, and choose that file. Or copy its cells and paste them here.',
  'import.refused-kind': 'This file is not a table of text. Nothing was read. Choose a CSV or TSV file.',
  'import.refused-large':
    'This file is larger than 64 MB. Nothing was read. Split it, and import the parts one by one.',
  'import.refused-empty': 'There is nothing in it. Choose another file, or paste cells with their headers.',
  'import.refused-line': 'A line of this file never ends. Nothing was read. Choose a CSV or TSV file.',
  'import.refused-quotes':
    'A quotation mark in line {line} is never closed. Nothing was read. Close it, and choose the file again.',
  'import.refused-rows':
    'It has more than {most} rows. Nothing was read. Split it, and import the parts one by one.',
  'import.refused-columns':
    'It has more than {most} columns. Nothing was read. Check that its cells are separated by commas, semicolons, or tabs.',
  'import.refused-gone': 'This table is no longer open. Nothing was imported. Choose the file again.',
  'import.refused-nothing': 'Nothing in this table is new. Nothing was imported.',
} as const;
