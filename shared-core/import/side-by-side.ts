import { guessHeaderRow, type Table } from './guess-columns.ts';
import { meaningOf } from './headers.ts';

/**
 * The table with its lists below each other where it has them side by side: "Board, MC, Board, MC". Null for another
 * table. Common practice, no source.
 */
export function belowEachOther(table: Table, today: string): Table | null {
  const headerRow = guessHeaderRow(table, today);
  if (headerRow === null) return null;
  const header = table[headerRow] ?? [];
  const starts = header.flatMap((cell, column) => (meaningOf(cell, today).role === 'code' ? [column] : []));
  const [first, second] = starts;
  if (first !== 0 || second === undefined) return null;
  const namesFrom = (start: number, end: number | undefined): string[] => {
    const names = header.slice(start, end);
    // A blank column parts them.
    while (names.at(-1) === '') names.pop();
    return names;
  };
  const names = namesFrom(first, second);
  const isSame = starts.every(
    (start, at) => JSON.stringify(namesFrom(start, starts[at + 1])) === JSON.stringify(names),
  );
  if (!isSame || names.length < 2) return null;
  const width = names.length;
  const lists = starts.map((start) =>
    table.slice(headerRow + 1).map((row) => Array.from({ length: width }, (_, at) => row[start + at] ?? '')),
  );
  // A blank line of one list may part what is above from what is below; one at the end parts nothing.
  const withoutEnd = (rows: string[][]): string[][] =>
    rows.slice(0, rows.findLastIndex((row) => row.some((cell) => cell !== '')) + 1);
  return [...table.slice(0, headerRow + 1).map((row) => row.slice(0, width)), ...lists.flatMap(withoutEnd)];
}
