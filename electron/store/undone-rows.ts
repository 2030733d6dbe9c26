/**
 * Rows of the tables that are only ever added to stay when their act is undone: `undone_row` names those that hold no
 * longer. Redoing the act takes their names out again.
 */

/** SQL for whether the act of a row was undone. @param row  its alias */
export const isUndone = (row: string): string =>
  `(SELECT EXISTS (SELECT 1 FROM undone_row undone WHERE undone.uuid = ${row}.uuid))`;

/**
 * SQL for whether the act that added an edited row was undone, or taken back: such a row is hidden like a closed one, and
 * nobody closed it. What an act that was taken back changed is forgotten. @param row  its alias
 */
export const isAddedInVain = (row: string): string =>
  `(SELECT EXISTS (SELECT 1 FROM act_change added JOIN act ON act.id = added.act_id
     WHERE added.row_uuid = ${row}.uuid AND added.old_values IS NULL AND act.undone_by IS NOT NULL)
   OR NOT EXISTS (SELECT 1 FROM act_change closing
     WHERE closing.row_uuid = ${row}.uuid AND closing.new_values ->> 'closed_at' IS NOT NULL))`;

/**
 * SQL for an act, as `id`, what undid it, what undid that, and so on: `n` counts from 0. An act that was taken back names
 * itself. @param act  SQL for its id
 */
export const undoneInTurn = (act: string): string =>
  `WITH RECURSIVE chain (id, n) AS (SELECT ${act}, 0
     UNION ALL SELECT a.undone_by, n + 1 FROM chain c JOIN act a ON a.id = c.id
       WHERE a.undone_by IS NOT NULL AND a.undone_by <> a.id)`;

/** SQL for whether an act of a person holds: it was not undone, or redone since, and is itself no undoing. @param act  its alias */
export const hasEffect = (act: string): string =>
  `(SELECT ${act}.undone_by IS NOT ${act}.id
     AND NOT EXISTS (SELECT 1 FROM act undid WHERE undid.undone_by = ${act}.id)
     AND (${undoneInTurn(`${act}.id`)} SELECT count(*) FROM chain) % 2 = 1)`;

/** SQL for the opposite of `isUndone`. */
export const holds = (row: string): string => `NOT ${isUndone(row)}`;
