import type { ColumnRole } from '../contract/import.ts';
import { isWithoutNumber } from '../probing/readings/beyond-scale.ts';
import { importing } from '../words/en/import.ts';
import { isBlank, numberIn } from './cells.ts';
import { guessDecimalMark, guessTable } from './guess-columns.ts';
import { isOfReading, withDate } from './header-row.ts';
import { dateTextIn, factsOfBoards, isHeaderLike, meaningOf } from './headers.ts';
import type { Reader, Table } from './table.ts';

/** So many dates of a table that is turned become columns. */
const MOST_ACROSS = 200;

/**
 * The table with its boards down where it has them across: dates in its first column, and in the other columns numbers
 * under names that nobody knows. Null for another table.
 */
export function turnedTable(table: Table, reader: Reader): Table | null {
  return turnedWithNames(table, reader) ?? turnedWithDates(table, reader);
}

/** What a line over the dates can say of each board. */
const SAID_OF_BOARDS: readonly ColumnRole[] = ['code', 'day', 'log', ...factsOfBoards];

/**
 * Where lines over the dates say what each board is: "Board, A1, A2", "Species, walnut, cherry". Each line below is of a
 * date, which may stand once for several of them, and may say how deep, or be the temperature: "5/1/2025, Shell".
 */
function turnedWithNames(table: Table, reader: Reader): Table | null {
  const { today } = reader;
  const lines = table.filter((row) => row.some((cell) => cell !== ''));
  // Looking for a date is cheap, and most cells have none.
  const dateOf = (text: string): string | null => {
    const dateText = dateTextIn(text, today);
    return dateText !== null && isHeaderLike(text, today) ? dateText : null;
  };
  const firstDate = lines.findIndex(([first = '']) => dateOf(first) !== null);
  const roleOf = ([first = '']: readonly string[]) => meaningOf(first, today).role;
  const isSaid = (row: readonly string[]): boolean => {
    const role = roleOf(row);
    const boards = row.slice(1).filter((cell) => cell !== '').length;
    return role !== null && SAID_OF_BOARDS.includes(role) && boards > 1;
  };
  const firstSaid = lines.slice(0, Math.max(firstDate, 0)).findLastIndex((row) => !isSaid(row)) + 1;
  const said = lines.slice(firstSaid, Math.max(firstDate, 0));
  const body = lines.slice(firstDate);
  const ids = said.filter((row) => roleOf(row) === 'code' || roleOf(row) === 'day');
  const [idRow] = ids;
  if (said.length < 2 || ids.length !== 1 || !idRow || said.length + body.length > MOST_ACROSS) return null;
  if (idRow.slice(1).some((cell) => isHeaderLike(cell, today))) return null;
  const decimalMark = guessDecimalMark(table);
  const isValue = (cell: string): boolean =>
    isBlank(cell) || isWithoutNumber(cell) || numberIn(cell, decimalMark) !== null;
  // The second column goes on with the names of the lines where no board is over it.
  const named = said.every((row) => (row[1] ?? '') === '') ? 2 : 1;
  let date: string | null = null;
  const dated: string[][] = [];
  for (const row of body) {
    const [first = '', ...more] = row.slice(0, named);
    const ownDate = dateOf(first);
    date = ownDate ?? date;
    const own = ownDate === null ? first : first.replace(ownDate, '').trim();
    const label = [own, ...more].filter((text) => text !== '').join(' ');
    const cells = row.slice(named);
    if (date === null || !cells.every(isValue) || !(label === '' || isOfReading(label, today))) return null;
    // A date may stand alone, above the lines with its readings.
    if (cells.some((cell) => cell !== '')) dated.push([withDate(label, date), ...cells]);
  }
  const across = [...said.map((row) => [row[0] ?? '', ...row.slice(named)]), ...dated];
  return [...idRow.slice(named - 1).keys()].map((column) =>
    across.map((row, at) =>
      column === 0 && at === said.indexOf(idRow) ? importing['import.role.code'] : (row[column] ?? ''),
    ),
  );
}

/** Where the first line has the boards' IDs, and each other line a date and its readings. */
function turnedWithDates(table: Table, reader: Reader): Table | null {
  const { headerRow, kind, columns, decimalMark } = guessTable(table, reader);
  if (kind !== 'boards' || headerRow === null || columns[0]?.role !== 'day') return null;
  const body = table.slice(headerRow + 1);
  const heads = table[headerRow] ?? [];
  const isBoard = columns.map(({ role }, column) => {
    const cells = body.map((row) => row[column] ?? '').filter((cell) => !isBlank(cell));
    // "A-1" over readings is a board, which roleByContent may take for the column of the boards' IDs.
    const meaning = meaningOf(heads[column] ?? '', reader.today);
    const isFree = (role === 'unused' && meaning.depth !== 'average') || meaning.role === null;
    return isFree && cells.length > 0 && cells.every((cell) => numberIn(cell, decimalMark) !== null);
  });
  const across = table.slice(headerRow);
  if (!isBoard.slice(1).every(Boolean) || isBoard.length < 3 || across.length > MOST_ACROSS) return null;
  // What is over the dates says nothing of the boards that come below it.
  return columns.map((_, column) => across.map((row, at) => (column + at === 0 ? '' : (row[column] ?? ''))));
}
