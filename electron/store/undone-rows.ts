/**
 * Rows of the tables that are only ever added to stay when their act is undone: `undone_row` names those that hold no
 * longer. Redoing the act takes their names out again.
 */

/** SQL for whether the act of a row was undone. @param row  its alias */
export const isUndone = (row: string): string =>
  `(SELECT EXISTS (SELECT 1 FROM undone_row undone WHERE undone.uuid = ${row}.uuid))`;

/**
 * SQL for whether the act that added an edited row was undone: such a row is hidden like a closed one, and nobody closed
 * it. @param row  its alias
 */
export const isAddedInVain = (row: string): string =>
  `(SELECT EXISTS (SELECT 1 FROM act_change added JOIN act ON act.id = added.act_id
     WHERE added.row_uuid = ${row}.uuid AND added.old_values IS NULL AND act.undone_by IS NOT NULL))`;

/** SQL for the opposite of `isUndone`. */
export const holds = (row: string): string => `NOT ${isUndone(row)}`;
