/** The log of faults. */
export const log = {
  'log.title': 'Log',
  'log.what': 'When something goes wrong, Pintally writes it to a log on this computer.',
  'log.without': 'The log has no readings and no names of boards.',
  'log.open': 'Open the log',
  'log.opened': 'The log was opened.',
  'log.newest': 'Newest entries',
  'log.empty': 'Nothing has gone wrong yet.',
  'log.save': 'Save the log',
} as const;
