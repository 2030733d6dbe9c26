/**
 * A statement whose values SQLite's planner does not see. Where it has looked at one, as for an index of some rows only, it
 * plans the statement again whenever a value is bound, which for the readings of a board is six times the work of reading
 * them. No statement of ours has a better way for one value than for another.
 *
 * @param sql  its parameters are `?` or begin with `@`
 */
export const withHiddenValues = (sql: string): string =>
  // The plus changes nothing of a value, whatever its type. A LIKE is left alone: its pattern may find it an index.
  sql.replaceAll(/(?<compared>[=<>]|\b(?:IS|IS NOT|SELECT))\s+(?<value>\?|@\w+)/g, '$<compared> +$<value>');
