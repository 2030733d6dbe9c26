import type { Backup, YardContents } from './backups.ts';

/** A backup that can be read. */
export type ReadableBackup = Backup & { contents: YardContents };

/**
 * The backup to offer where the own yard cannot be opened: the newest of the yard as it last was, or else the newest of
 * it as it was before a restore. Never one of another yard, nor of a restored yard that the person undid.
 * @param backups  the newest first
 */
export function newestOfOwn(backups: readonly Backup[]): ReadableBackup | undefined {
  const own = backups.filter(
    (backup): backup is ReadableBackup =>
      backup.contents !== null && backup.isOfOtherYard === false && backup.why !== 'undo',
  );
  return own.find(({ isOfPresent }) => isOfPresent) ?? own[0];
}
