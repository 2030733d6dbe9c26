import type { Db } from './yard-file.ts';

/** What is made again from the rest, and names a board or a round. */
const CACHES = ['finding', 'finding_due', 'round_suspicion'];
const CACHED = ['board', 'round'];

/** Deletes what was made of a board or a round by its UUID, so that the row itself can be deleted. */
export function cacheDropper(db: Db): (table: string, uuid: unknown) => void {
  const drops = new Map(
    CACHED.map((table) => [
      table,
      CACHES.map((cache) =>
        db.prepare(`DELETE FROM ${cache} WHERE ${table}_id = (SELECT id FROM ${table} WHERE uuid = ?)`),
      ),
    ]),
  );
  return (table, uuid) => {
    for (const drop of drops.get(table) ?? []) drop.run(uuid);
  };
}
