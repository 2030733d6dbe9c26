/** The error report: what a person reads of the fault log. */
export const log = {
  'log.title': 'Error report',
  'log.what': 'Pintally records each error in a file on this computer.',
  'log.without': 'The error report has no readings and no names of boards.',
  'log.open': 'Open the error report',
  'log.opened': 'Error report opened.',
  'log.newest': 'Newest errors',
  'log.empty': 'Nothing has gone wrong yet.',
  'log.not-written':
    'The error report cannot be written. Allow writing to its folder, or make room on the disk.',
  'log.save': 'Save the error report',
} as const;
