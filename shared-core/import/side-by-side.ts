import { importing } from '../words/en/import.ts';
import { guessHeaderRow } from './header-row.ts';
import { meaningOf } from './headers.ts';
import type { Table } from './table.ts';

/**
 * The table with its lists below each other where it has them side by side: "Board, MC, Board, MC". What stands over a list
 * stands over its lines then. Where lists have the same IDs and nothing is over them, a column says which list each line is
 * from, as a log, so that a person is asked. Null for another table. Common practice, no source.
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
  const listAt = (rows: Table, start: number): string[][] =>
    rows.map((row) => Array.from({ length: width }, (_, at) => row[start + at] ?? ''));
  const isFilled = (row: readonly string[]): boolean => row.some((cell) => cell !== '');
  // A blank line of one list may part what is above from what is below; one at the end parts nothing.
  const withoutEnd = (rows: string[][]): string[][] => rows.slice(0, rows.findLastIndex(isFilled) + 1);
  const lists = starts.map((start) => withoutEnd(listAt(table.slice(headerRow + 1), start)));
  const above = table.slice(0, headerRow);
  /** What stands over one list alone, where that is so of each of them. */
  const over = starts.map((start) => listAt(above, start).filter(isFilled).slice(-1));
  const isEachNamed = over.every((lines) => lines.length > 0);
  const head = [...names];
  if (isEachNamed) {
    const ofAll = above.slice(0, -1).map((row) => row.slice(0, width));
    return [...ofAll, head, ...lists.flatMap((rows, at) => [...(over[at] ?? []), ...rows])];
  }
  const ofAll = above.map((row) => row.slice(0, width));
  const idsOf = (rows: string[][]) => new Set(rows.map(([id = '']) => id).filter((id) => id !== ''));
  const distinct = new Set(lists.flatMap((rows) => [...idsOf(rows)]));
  if (distinct.size === lists.reduce((sum, rows) => sum + idsOf(rows).size, 0))
    return [...ofAll, head, ...lists.flat()];
  return [
    ...ofAll.map((row) => [...row, '']),
    [...head, importing['import.role.log']],
    ...lists.flatMap((rows, at) => rows.map((row) => [...row, isFilled(row) ? String(at + 1) : ''])),
  ];
}
