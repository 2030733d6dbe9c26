const NORMAL =
  "'[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]T[0-9][0-9]:[0-9][0-9]:[0-9][0-9].[0-9][0-9][0-9]Z'";

const normalize = (table: string, column: string): string => `
  UPDATE ${table} SET ${column} = strftime('%Y-%m-%dT%H:%M:%fZ', ${column})
    WHERE ${column} NOT GLOB ${NORMAL} AND strftime('%Y-%m-%dT%H:%M:%fZ', ${column}) IS NOT NULL;`;

/**
 * Writes every instant that lists are sorted by as UTC with milliseconds. Earlier layouts took "08:00:00Z" and
 * "08:00:00.000Z" as two. Weights are never edited: they are put in order as they are read.
 */
export const sql = [
  normalize('move', 'since'),
  normalize('round', 'started_at'),
  normalize('round', 'finished_at'),
].join('');
