/** Backups, restoring one, and saving a copy. */
export const backups = {
  // Why one could not be made. Readings are never touched by it.
  'backup.no-room': 'There is not enough room in {folder}. Make room, or choose another folder.',
  'backup.folder-refused':
    'Pintally cannot write to {folder}. Check that the disk is there and that you may write to it, or choose another folder.',
  'backup.folder-relative': 'Give the whole path of the folder. The backup folder was not changed.',
  'backup.disk-failed': 'The disk with {folder} is failing. Choose a folder on another disk.',
  'backup.copy-damaged': 'The copy did not pass its check, so it was deleted. The yard file may be damaged.',
  'backup.own-not-open': 'Your own yard is not open. No backup was made. Open it, then try again.',
  'backup.failed': 'Something went wrong. Restart Pintally.',

  'restore.damaged': 'That file is damaged. Nothing was changed. Choose another backup.',
  'restore.no-yard': 'That file is not a yard. Nothing was changed. Choose another file.',
  'restore.newer':
    'A newer Pintally wrote that file. Nothing was changed. Install the newer version to restore it.',
  'restore.file-gone': 'That backup cannot be read. Nothing was changed. Check that its disk is there.',
} as const;
