/**
 * Rows of the tables that are only ever added to stay when their act is undone: `undone_row` names those that hold no
 * longer. Redoing the act takes their names out again.
 */

/** SQL for whether the act of a row was undone. @param row  its alias */
export const isUndone = (row: string): string =>
  `(SELECT EXISTS (SELECT 1 FROM undone_row undone WHERE undone.uuid = ${row}.uuid))`;

/** SQL for the opposite. */
export const holds = (row: string): string => `NOT ${isUndone(row)}`;
