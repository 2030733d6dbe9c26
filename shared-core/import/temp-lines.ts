import { isBlank } from './cells.ts';
import { guessTable } from './guess-columns.ts';
import { headTexts } from './header-row.ts';
import { dateTextIn, meaningOf } from './headers.ts';
import type { Reader, Table } from './table.ts';

/**
 * The table with the wood's temperatures in columns of their days, where a line among the boards has them under dates: "Temp,
 * 68, 75". The lines keep their numbers. Common practice, no source.
 */
export function withTempLines(table: Table, reader: Reader): Table {
  const { headerRow, columns } = guessTable(table, reader);
  const codeColumn = columns.findIndex(({ role }) => role === 'code');
  const isDated = columns.some(({ role, on }) => role === 'reading' && on !== null);
  if (headerRow === null || codeColumn < 0 || !isDated) return table;
  const heads = headTexts(table, headerRow, reader.today);
  const isOfTemps = (row: readonly string[], index: number): boolean =>
    index > headerRow && meaningOf(row[codeColumn] ?? '', reader.today).role === 'wood-temp';
  /** The temperatures, by the name of their column. */
  const temps = new Map<string, string>();
  for (const row of table.filter(isOfTemps)) {
    for (const [column, { role, on }] of columns.entries()) {
      const cell = row[column] ?? '';
      if (role !== 'reading' || on === null || isBlank(cell)) continue;
      const name = `${row[codeColumn]} ${dateTextIn(heads[column] ?? '', reader.today)}`;
      if (!temps.has(name)) temps.set(name, cell);
    }
  }
  if (temps.size === 0) return table;
  const [names, values] = [[...temps.keys()], [...temps.values()]];
  const blanks = names.map(() => '');
  // Of a header of two rows the upper one has the dates.
  const isOfTwoRows = heads.some((head, column) => head !== (table[headerRow]?.[column] ?? ''));
  const nameRow = isOfTwoRows ? headerRow - 1 : headerRow;
  return table.map((row, index) => {
    if (index === nameRow) return [...row, ...names];
    if (isOfTemps(row, index)) return [...row.map(() => ''), ...blanks];
    return [...row, ...(index > headerRow && !isBlank(row[codeColumn] ?? '') ? values : blanks)];
  });
}
