/** What the machine says of the yard file that is open, and of its backups. */
import type { BackupState } from '../../../../shared-core/contract/backups.ts';
import type { YardInfo } from '../../../../shared-core/contract/yard.ts';

export const aYard = (changes: Partial<YardInfo> = {}): YardInfo => ({
  uuid: '7f1b0a3f-9d53-4c3b-8f55-0b5c1d4e8f10',
  kind: 'own',
  file: '/home/sawyer/yard.sqlite',
  problem: null,
  canStartAfresh: false,
  rescuedFile: null,
  boards: 12,
  version: '0.1.0',
  ...changes,
});

export const backupsAre = (changes: Partial<BackupState> = {}): BackupState => ({
  chosenFolder: null,
  usualFolder: '/home/sawyer/backups',
  isAway: false,
  elsewhere: null,
  hasDialogs: false,
  problem: null,
  restored: null,
  isFullOfOnlyCopies: false,
  picturesLeftOut: 0,
  ...changes,
});
