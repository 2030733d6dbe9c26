import type { Db } from './yard-file.ts';

/** What an act did to a row of a table whose rows are edited (`change-triggers.ts`). */
export interface Change {
  id: number;
  inTable: string;
  uuid: string;
  /** JSON; null of a row that the act added. */
  before: string | null;
  /** JSON; null of a row that the act deleted. */
  after: string | null;
}

/** What acts changed, some at a time: the index of acts has them by tables, so a slice goes by ids and sorts nothing. */
export function changesOfAct(db: Db) {
  const span = db.prepare<[number], { first: number | null; last: number | null; count: number }>(
    'SELECT min(id) AS first, max(id) AS last, count(*) AS count FROM act_change WHERE act_id = ?',
  );
  const some = db.prepare<[number, number, number, number], Change>(
    `SELECT id, in_table AS inTable, row_uuid AS uuid, old_values AS before, new_values AS after
     FROM act_change NOT INDEXED WHERE act_id = ? AND id BETWEEN ? AND ? ORDER BY id DESC LIMIT ?`,
  );
  const forget = db.prepare('DELETE FROM act_change NOT INDEXED WHERE act_id = ? AND id BETWEEN ? AND ?');
  return {
    /** The ids of its first and last change, 0 and -1 where there is none, and how many there are. */
    span: (act: number): { first: number; last: number; count: number } => {
      const { first, last, count } = span.get(act)!;
      return { first: first ?? 0, last: last ?? -1, count };
    },
    /** So many at most, the newest first. */
    some: (act: number, first: number, last: number, most: number): Change[] =>
      some.all(act, first, last, most),
    forget: (act: number, first: number, last: number): void => {
      forget.run(act, first, last);
    },
  };
}
