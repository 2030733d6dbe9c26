import { rolesOfReadings } from '../contract/import.ts';
import { importing } from '../words/en/import.ts';
import { dateTextIn, depthNamed, isHeaderLike, meaningOf, writtenOut } from './headers.ts';
import type { Table } from './table.ts';

/** A table may begin with its title and a few lines about it. Common practice, no source. */
const MOST_LINES_BEFORE = 20;

/** The row with the names of the columns; null where none of the first looks like it. */
export function guessHeaderRow(table: Table, today: string): number | null {
  let best: number | null = null;
  let most = 0;
  for (const [index, row] of table.slice(0, MOST_LINES_BEFORE).entries()) {
    const filled = row.filter((cell) => cell !== '');
    const named = filled.filter((cell) => isHeaderLike(cell, today)).length;
    const isRow = filled.length > 1 || row.length === 1;
    if (isRow && named > most && named >= filled.length / 3) {
      best = index;
      most = named;
    }
  }
  if (best !== null) {
    const below = table[best + 1];
    return below && isUnderDates(below, table[best]!, today) ? best + 1 : best;
  }
  // Words over numbers are names, whatever they say.
  const [first, second] = table.slice(0, 2);
  const numbers = (row: readonly string[] | undefined) => row?.filter((cell) => /^\d/.test(cell)).length ?? 0;
  const isNames = first?.every((cell) => /\p{L}/u.test(cell)) ?? false;
  return isNames && numbers(first) === 0 && numbers(second) > 0 ? 0 : null;
}

/**
 * What the header says of each column. Over a row of depths or readings, the row above may have dates that hold for the columns to
 * their right, and the names of the other columns. Common practice, no source.
 */
export function headTexts(table: Table, headerRow: number | null, today: string): readonly string[] {
  if (headerRow === null) return [];
  const own = table[headerRow] ?? [];
  const above = table[headerRow - 1];
  if (!above || !isUnderDates(own, above, today)) return own;
  let date = '';
  return own.map((cell, column) => {
    const over = above[column] ?? '';
    if (over !== '') date = dateTextIn(over, today) === null ? '' : over;
    if (cell === '' || date === '') return cell === '' ? over : cell;
    return withDate(cell, date);
  });
}

/** What is of a day, as the name of a column: "Reading 2 5/1/2025" where it counts readings. */
export const withDate = (label: string, date: string): string =>
  `${IS_COUNTED.test(label) ? importing['import.role.reading'] : ''} ${writtenOut(label)} ${date}`.trim();

/** The first, second and third reading of a day. */
const IS_COUNTED = /^[1-9]$/;

/** Whether a text says what is read on a day: how deep, or another thing of readings. */
export function isOfReading(text: string, today: string): boolean {
  const { role } = meaningOf(text, today);
  const isNamed = depthNamed(writtenOut(text)) !== null || role === 'reading';
  return isNamed || (role !== null && rolesOfReadings.includes(role));
}

/**
 * Whether the filled cells of a row under dates are depths, numbers that count readings from 1, or else what is of
 * readings; what is left of the dates may be any other name.
 */
function isUnderDates(row: readonly string[], above: readonly string[], today: string): boolean {
  const isDate = (column: number): boolean => dateTextIn(above[column] ?? '', today) !== null;
  const firstDate = above.findIndex((_, column) => isDate(column));
  const isDated = row.some((cell, column) => cell !== '' && isDate(column));
  const isCounted = (cell: string, column: number): boolean =>
    IS_COUNTED.test(cell) && Number(cell) === (isDate(column) ? 1 : Number(row[column - 1]) + 1);
  return (
    isDated &&
    row.every(
      (cell, column) =>
        cell === '' ||
        cell === above[column] ||
        isOfReading(cell, today) ||
        (column < firstDate ? isHeaderLike(cell, today) : isCounted(cell, column)),
    )
  );
}
