import type { Db } from '../store/yard-file.ts';

/**
 * Whether readings of a yard are moved in a circle, or one from itself. Pintally never does that: each move saves a new
 * reading on the other board. A file that was edited by hand may have it.
 */
export function isMovedInCircle(db: Db): boolean {
  db.exec(`
    CREATE TEMP TABLE moved_reading (uuid TEXT, from_uuid TEXT);
    INSERT INTO moved_reading SELECT g.uuid, k.value ->> '$' FROM amendment k JOIN reading g ON g.id = k.reading_id
      WHERE k.field = 'movedFrom'
      UNION SELECT k.value ->> 'to', g.uuid FROM amendment k JOIN reading g ON g.id = k.reading_id
      WHERE k.field = 'excluded' AND k.value ->> 'code' = 'moved';
    CREATE INDEX temp.moved_reading_by_uuid ON moved_reading (uuid);
  `);
  const dropFirst = db.prepare(
    'DELETE FROM moved_reading WHERE from_uuid NOT IN (SELECT uuid FROM moved_reading WHERE uuid IS NOT NULL)',
  );
  // What came from a reading that came from none is in no circle; and so on, as many times as one was moved.
  while (dropFirst.run().changes > 0);
  const isAny = db.prepare('SELECT 1 FROM moved_reading').get() !== undefined;
  db.exec('DROP TABLE moved_reading');
  return isAny;
}
