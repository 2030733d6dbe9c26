import { withHeadings } from './headings.ts';
import { belowEachOther } from './side-by-side.ts';
import type { Reader, Table } from './table.ts';
import { withTempLines } from './temp-lines.ts';
import { turnedTable } from './turned-table.ts';

/** How a table was changed to have a board, or one of its readings, in each row; null where it had. */
export type Reshaped = 'turned' | 'below' | null;

/** A table with its boards down, its lists below each other, and what stands over its lines in columns. */
export function reshapedTable(asWritten: Table, reader: Reader): { table: Table; reshaped: Reshaped } {
  const turned = turnedTable(asWritten, reader);
  if (turned) return { table: turned, reshaped: 'turned' };
  const below = belowEachOther(asWritten, reader.today);
  const table = withTempLines(withHeadings(below ?? asWritten, reader), reader);
  return { table, reshaped: below ? 'below' : null };
}
