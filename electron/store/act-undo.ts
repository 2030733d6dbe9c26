import { amendmentWrites } from './amendment-table.ts';
import { statements } from './columns.ts';
import type { Db } from './yard-file.ts';

interface Change {
  id: number;
  inTable: string;
  uuid: string;
  /** JSON; null of a row that the act added. */
  before: string | null;
  /** JSON. */
  after: string;
}
interface Exclusion {
  id: number;
  readingId: number;
  /** JSON. */
  before: string | null;
  isNewest: 0 | 1;
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** So many changes are undone before it is first asked how many. */
const FIRST = 250;

/** Undoes an act by a further act, from what the file recorded of it (`change-triggers.ts`). */
export function actUndo(db: Db) {
  const mark = db.prepare(
    `UPDATE act SET undone_by = (SELECT act_id FROM act_now) WHERE uuid = ? AND undone_by IS NULL`,
  );
  const count = db
    .prepare<[string], number>(
      'SELECT count(*) FROM act_change WHERE act_id = (SELECT id FROM act WHERE uuid = ?)',
    )
    .pluck();
  const changes = db.prepare<[string, number, number], Change>(
    `SELECT id, in_table AS inTable, row_uuid AS uuid, old_values AS before, new_values AS after FROM act_change
     WHERE act_id = (SELECT id FROM act WHERE uuid = ?) AND id < ? ORDER BY id DESC LIMIT ?`,
  );
  const exclusions = db.prepare<[string, number, number], Exclusion>(
    `SELECT a.id, a.reading_id AS readingId,
       (SELECT value FROM amendment b WHERE b.reading_id = a.reading_id AND b.field = a.field AND b.id < a.id
        ORDER BY b.id DESC LIMIT 1) AS before,
       NOT EXISTS (SELECT 1 FROM amendment c WHERE c.reading_id = a.reading_id AND c.field = a.field
        AND c.id > a.id) AS isNewest
     FROM amendment a WHERE a.act_id = (SELECT id FROM act WHERE uuid = ?) AND a.field = 'excluded' AND a.id > ?
     ORDER BY a.id LIMIT ?`,
  );
  const { exclude } = amendmentWrites(db);
  const prepare = statements(db);

  /** @returns false where the row is no longer as the act left it */
  function restore({ inTable, uuid, before, after }: Change): boolean {
    const { version } = JSON.parse(after) as { version: number };
    const where = 'WHERE uuid = ? AND version = ?';
    if (before === null) {
      return prepare(`DELETE FROM ${quoted(inTable)} ${where}`).run([uuid, version]).changes > 0;
    }
    const { version: _, ...values } = JSON.parse(before) as Record<string, string | number | null>;
    const set = Object.keys(values).map((name) => `${quoted(name)} = ?, `);
    const sql = `UPDATE ${quoted(inTable)} SET ${set.join('')}version = version + 1 ${where}`;
    return prepare(sql).run([...Object.values(values), uuid, version]).changes > 0;
  }

  /**
   * Puts back what an act edited, moved, excluded or included, some changes at a time. It yields how many are done, and
   * receives how many come next. Run it within another act, and take back what it wrote where it answers false.
   *
   * @returns false where it was undone before, or something of it was changed since
   */
  return function* undo(id: string, at: string): Generator<{ done: number; total: number }, boolean, number> {
    if (mark.run(id).changes === 0) return false;
    const total = count.get(id) ?? 0;
    let size = FIRST;
    let oldest = Number.MAX_SAFE_INTEGER;
    for (let done = 0; done < total; ) {
      if (done > 0) size = yield { done, total };
      const some = changes.all(id, oldest, size);
      if (!some.every(restore)) return false;
      oldest = some.at(-1)!.id;
      done += some.length;
    }
    let excluded = exclusions.all(id, 0, size);
    while (excluded.length > 0) {
      for (const { readingId, before, isNewest } of excluded) {
        if (isNewest === 0) return false;
        exclude('reading', readingId, before === null ? null : JSON.parse(before), at);
      }
      excluded = exclusions.all(id, excluded.at(-1)!.id, size);
      if (excluded.length > 0) size = yield { done: total, total };
    }
    return true;
  };
}
