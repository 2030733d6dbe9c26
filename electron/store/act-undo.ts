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
interface Amended {
  id: number;
  readingId: number;
  field: keyof typeof AS_TAKEN;
  /** JSON. */
  before: string;
  isNewest: 0 | 1;
}

/** Amended fields of a reading `g` that an act may undo, each with SQL for what holds where nothing is amended, as JSON. */
const AS_TAKEN = {
  excluded: "'null'",
  depthMm: `'"as-saved"'`,
  meterProfileId: "coalesce(CAST(g.meter_profile_id AS TEXT), 'null')",
} as const;
const asTaken = Object.entries(AS_TAKEN).map(([field, value]) => `WHEN '${field}' THEN ${value}`);

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
  const countAmended = db
    .prepare<[string], number>(
      'SELECT count(*) FROM amendment WHERE act_id = (SELECT id FROM act WHERE uuid = ?)',
    )
    .pluck();
  const changes = db.prepare<[string, number, number], Change>(
    `SELECT id, in_table AS inTable, row_uuid AS uuid, old_values AS before, new_values AS after FROM act_change
     WHERE act_id = (SELECT id FROM act WHERE uuid = ?) AND id < ? ORDER BY id DESC LIMIT ?`,
  );
  // A later act that was undone, and the act that undid it, cancel out.
  const amendments = db.prepare<[string, number, number], Amended>(
    `SELECT a.id, a.reading_id AS readingId, a.field,
       coalesce((SELECT value FROM amendment b WHERE b.reading_id = a.reading_id AND b.field = a.field AND b.id < a.id
        ORDER BY b.id DESC LIMIT 1), CASE a.field ${asTaken.join(' ')} END) AS before,
       NOT EXISTS (SELECT 1 FROM amendment c WHERE c.reading_id = a.reading_id AND c.field = a.field
        AND c.id > a.id AND (c.act_id IS NULL OR NOT EXISTS (SELECT 1 FROM act d
          WHERE d.undone_by IS NOT NULL AND (d.id = c.act_id OR d.undone_by = c.act_id)))) AS isNewest
     FROM amendment a JOIN reading g ON g.id = a.reading_id
     WHERE a.act_id = (SELECT id FROM act WHERE uuid = ?)
       AND a.field IN (${Object.keys(AS_TAKEN).map((field) => `'${field}'`)}) AND a.id > ?
     ORDER BY a.id LIMIT ?`,
  );
  const { amendReading } = amendmentWrites(db);
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
   * Puts back what an act edited, moved, excluded or included, read with another meter or gave another depth, some changes at a time. It yields how many are done, and
   * receives how many come next. Run it within another act, and take back what it wrote where it answers false.
   *
   * @returns false where it was undone before, or something of it was changed since
   */
  return function* undo(id: string, at: string): Generator<{ done: number; total: number }, boolean, number> {
    if (mark.run(id).changes === 0) return false;
    const changed = count.get(id) ?? 0;
    const total = changed + (countAmended.get(id) ?? 0);
    let size = FIRST;
    let oldest = Number.MAX_SAFE_INTEGER;
    let done = 0;
    while (done < changed) {
      if (done > 0) size = yield { done, total };
      const some = changes.all(id, oldest, size);
      if (!some.every(restore)) return false;
      oldest = some.at(-1)!.id;
      done += some.length;
    }
    let amended = amendments.all(id, 0, size);
    while (amended.length > 0) {
      for (const { readingId, field, before, isNewest } of amended) {
        if (isNewest === 0) return false;
        amendReading(readingId, field, JSON.parse(before), at);
      }
      done += amended.length;
      amended = amendments.all(id, amended.at(-1)!.id, size);
      if (amended.length > 0) size = yield { done, total };
    }
    return true;
  };
}
