import { amendmentWrites } from './amendment-table.ts';
import type { Db } from './yard-file.ts';

interface Change {
  inTable: string;
  uuid: string;
  /** JSON; null of a row that the act added. */
  before: string | null;
  /** JSON. */
  after: string;
}

const quoted = (name: string): string => `"${name.replaceAll('"', '""')}"`;

/** Undoes an act by a further act, from what the file recorded of it (`change-triggers.ts`). */
export function actUndo(db: Db) {
  const mark = db.prepare(
    `UPDATE act SET undone_by = (SELECT act_id FROM act_now) WHERE uuid = ? AND undone_by IS NULL`,
  );
  const changes = db.prepare<[string], Change>(
    `SELECT in_table AS inTable, row_uuid AS uuid, old_values AS before, new_values AS after FROM act_change
     WHERE act_id = (SELECT id FROM act WHERE uuid = ?) ORDER BY id DESC`,
  );
  const exclusions = db.prepare<[string], { readingId: number; before: string | null; isNewest: 0 | 1 }>(
    `SELECT a.reading_id AS readingId,
       (SELECT value FROM amendment b WHERE b.reading_id = a.reading_id AND b.field = a.field AND b.id < a.id
        ORDER BY b.id DESC LIMIT 1) AS before,
       NOT EXISTS (SELECT 1 FROM amendment c WHERE c.reading_id = a.reading_id AND c.field = a.field
        AND c.id > a.id) AS isNewest
     FROM amendment a WHERE a.act_id = (SELECT id FROM act WHERE uuid = ?) AND a.field = 'excluded'`,
  );
  const { exclude } = amendmentWrites(db);

  /** @returns false where the row is no longer as the act left it */
  function restore({ inTable, uuid, before, after }: Change): boolean {
    const { version } = JSON.parse(after) as { version: number };
    const where = 'WHERE uuid = ? AND version = ?';
    if (before === null) {
      return db.prepare(`DELETE FROM ${quoted(inTable)} ${where}`).run(uuid, version).changes > 0;
    }
    const { version: _, ...values } = JSON.parse(before) as Record<string, string | number | null>;
    const set = Object.keys(values).map((name) => `${quoted(name)} = ?, `);
    const sql = `UPDATE ${quoted(inTable)} SET ${set.join('')}version = version + 1 ${where}`;
    return db.prepare(sql).run(...Object.values(values), uuid, version).changes > 0;
  }

  /**
   * Puts back what an act edited, moved, excluded or included. To be called within another act; what it wrote before it
   * answers false is to be rolled back.
   *
   * @returns false where it was undone before, or something of it was changed since
   */
  return (id: string, at: string): boolean =>
    mark.run(id).changes > 0 &&
    changes.all(id).every(restore) &&
    exclusions.all(id).every(({ readingId, before, isNewest }) => {
      exclude('reading', readingId, before === null ? null : JSON.parse(before), at);
      return isNewest === 1;
    });
}
