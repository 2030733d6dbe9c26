import type { Backups } from './backups.ts';
import { savedOf } from './salvaging.ts';
import { salvagedNote } from './yard-notes.ts';
import type { Yards } from './yards.ts';

/** Says in the note of a salvage which backup has more readings than could be recovered. */
export async function noteFullerBackup(yards: Yards, backups: Backups, noted: () => void): Promise<void> {
  const report = yards.kind() === 'own' ? yards.salvageReport() : null;
  const uuid = yards.uuid();
  if (report === null) return;
  const readings = savedOf(report, 'readings');
  const all = await backups.queries['backups.list']();
  const fuller = all.find(
    ({ contents, isOfOtherYard }) =>
      isOfOtherYard === false && contents !== null && contents.readings > readings,
  );
  if (fuller === undefined || yards.uuid() !== uuid) return;
  yards.notes.add(salvagedNote(report, fuller));
  noted();
}
