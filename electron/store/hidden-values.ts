/**
 * A statement whose values SQLite's planner does not see. Where a value may change its plan, as with an index of some rows
 * only, SQLite plans the statement again whenever a value is bound. For the readings of a board that takes five times as
 * long as reading them. No statement of ours has a better way for one value than for another.
 *
 * @param sql  its parameters are `?` or begin with `@`
 */
export const withHiddenValues = (sql: string): string =>
  // The plus changes nothing of a value, whatever its type. A LIKE is left alone: its pattern may find it an index.
  sql.replaceAll(/(?<compared>[=<>]|\b(?:IS|IS NOT|SELECT))\s+(?<value>\?|@\w+)/g, '$<compared> +$<value>');
