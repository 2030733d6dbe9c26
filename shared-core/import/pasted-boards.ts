import { type Message, message } from '../words/message.ts';
import { codeOf } from './board-id.ts';
import { isBlank } from './cells.ts';
import { meaningOf } from './headers.ts';
import type { Table } from './table.ts';
import { isTotal } from './totals.ts';

/** An ID, a width and a length, in this order. */
export const PASTED_COLUMNS = 3;

/** Boards of cells that were copied from a spreadsheet. */
export interface PastedBoards {
  /**
   * Of each board its ID, width and length, for a person's fields to read: a number has the unit that its column names. Blank
   * where the cell was; null of a column that was not copied.
   */
  rows: (string | null)[][];
  /** What was not taken, as sentences. */
  leftOut: Message[];
}

/** Where in the cells an ID, a width and a length are, and in which unit; null where they are not there. */
type Columns = readonly ({ at: number; unit: string } | null)[];

const CODE = 0;
const UNITS_OF_LENGTH: readonly string[] = ['mm', 'cm', 'm', 'in', 'ft'];
/** A number without a unit: "8", "8 1/2", "15,5", "6½". */
const BARE = /^[\d\s.,/⁄¼-¾⅐-⅞-]*[\d¼-¾⅐-⅞]$/;

/**
 * Reads copied cells as boards. A row with the names of columns tells which column is which, and in which units; without
 * one, the columns go in their order. Blank lines and totals are no boards.
 *
 * @param firstColumn  into which of the three the first goes, from 0, where no names tell
 * @param rowsThere    of so many boards the lines are there already: a blank line within them keeps its place where no IDs tell
 * @param today        local day
 * @returns            why none of it can be taken, where nobody can know what its columns are
 */
export function pastedBoards(
  block: Table,
  { firstColumn, rowsThere, today }: { firstColumn: number; rowsThere: number; today: string },
): PastedBoards | { problem: Message } {
  const cells = block.map((row) => row.map((cell) => cell.trim()));
  const filledOf = (row: readonly string[]) => row.filter((cell) => cell !== '');
  const width = Math.max(0, ...cells.map((row) => row.findLastIndex((cell) => cell !== '') + 1));
  const lines = cells.slice(0, cells.findLastIndex((row) => filledOf(row).length > 0) + 1);
  const isHeading = (row: readonly string[]): boolean => namesColumns(row, width, lines, today);
  const headingAt = lines.findIndex(isHeading);

  const inOrder = Array.from({ length: PASTED_COLUMNS }, (_, column) => {
    const at = column - firstColumn;
    return at >= 0 && at < width ? { at, unit: '' } : null;
  });
  const found = headingAt < 0 ? inOrder : columnsOf(lines[headingAt]!, width, today);
  if ('problem' in found) return found;
  const before =
    headingAt < 0 ? undefined : lines.slice(0, headingAt).find((row) => filledOf(row).length > 1);
  if (before) return { problem: message('stacks.pasted-names-below', { lineTypedText: textOf(before) }) };
  if (headingAt < 0) {
    const [first = []] = lines.filter((row) => filledOf(row).length > 0);
    if (filledOf(first).length > 1 && !first.some((cell) => /\d/.test(cell)))
      return { problem: message('stacks.pasted-names-unknown', { columnNames: quoted(filledOf(first)) }) };
    if (firstColumn + width > PASTED_COLUMNS)
      return { problem: message('stacks.pasted-too-wide', { columns: width }) };
  }

  const columns: Columns = found;
  const body = lines.slice(headingAt + 1);
  const codeAt = columns[CODE]?.at ?? null;
  const hasCodes = codeAt !== null && body.some((row) => (row[codeAt] ?? '') !== '');
  const keepsBlank = !hasCodes && body.length <= rowsThere;
  const rows: (string | null)[][] = [];
  const dropped = lines.slice(0, Math.max(0, headingAt)).filter((row) => filledOf(row).length > 0);
  let blank = 0;
  for (const [at, row] of body.entries()) {
    const filled = filledOf(row);
    const isOfOthers =
      isTotal(row[codeAt ?? 0] ?? '') ||
      isTotal(filled[0] ?? '') ||
      (hasCodes && at === body.length - 1 && isSum(row, body.slice(0, at), columns));
    const isBlankLine = columns.every((column) => column === null || (row[column.at] ?? '') === '');
    if (isHeading(row) || isOfOthers || (isBlankLine && filled.length > 0)) dropped.push(row);
    else if (isBlankLine && !keepsBlank) blank += 1;
    else rows.push(columns.map((column, of) => (column === null ? null : cellFor(of, row, column))));
  }
  const heading = lines[headingAt] ?? [];
  const unused = heading.filter(
    (name, at) => name !== '' && !columns.some((column) => column?.at === at) && body.some((row) => row[at]),
  );
  return {
    rows,
    leftOut: [
      ...(unused.length > 0 ? [message('stacks.pasted-unused', { columnNames: quoted(unused) })] : []),
      ...(dropped.length > 0
        ? [message('stacks.pasted-no-boards', { lines: quoted(dropped.map(textOf)) })]
        : []),
      ...(blank > 0 ? [message('stacks.pasted-blank', { lines: blank })] : []),
    ],
  };
}

const textOf = (row: readonly string[]): string => row.filter((cell) => cell !== '').join(' ');
const quoted = (texts: readonly string[]) =>
  texts.map((text) => message('stacks.pasted-text', { cellTypedText: text }));

/** What a name says, as one of the three; null for another. */
function sizeNamed(name: string, today: string): { column: number; unit: string } | null {
  const { role, unit } = meaningOf(name, today);
  const column = role === 'code' || role === 'piece' ? CODE : ['', 'width', 'length'].indexOf(role ?? '-');
  if (column < 0) return null;
  return { column, unit: column === CODE ? '' : (unit ?? '') };
}

/** Whether a row has the names of columns: an ID of letters alone is none. */
function namesColumns(row: readonly string[], width: number, lines: Table, today: string): boolean {
  const filled = row.filter((cell) => !isBlank(cell));
  if (filled.length < Math.min(2, width) || filled.some((cell) => /^[^\p{L}]*\d/u.test(cell))) return false;
  const named = filled.flatMap((cell) => sizeNamed(cell, today) ?? []);
  if (named.length === 0) return false;
  // "L" and "W" are IDs where no numbers are below.
  const [only] = named;
  return (
    width > 1 ||
    only!.column === CODE ||
    lines.every((line) => line === row || isBlank(line[0] ?? '') || /\d/.test(line[0]!))
  );
}

function columnsOf(heading: readonly string[], width: number, today: string): Columns | { problem: Message } {
  const columns: ({ at: number; unit: string } | null)[] = Array.from({ length: PASTED_COLUMNS }, () => null);
  for (let at = 0; at < width; at++) {
    const name = heading[at] ?? '';
    const named = sizeNamed(name, today);
    if (named === null) continue;
    const { column, unit } = named;
    if (unit !== '' && !UNITS_OF_LENGTH.includes(unit))
      return { problem: message('stacks.pasted-unit', { columnTypedText: name }) };
    const other = columns[column];
    if (other)
      return { problem: message('stacks.pasted-twice', { columnNames: quoted([heading[other.at]!, name]) }) };
    columns[column] = { at, unit };
  }
  return columns;
}

function cellFor(of: number, row: readonly string[], { at, unit }: { at: number; unit: string }): string {
  const text = row[at] ?? '';
  if (of === CODE) return text === '' ? '' : (codeOf(text) ?? text);
  if (isBlank(text)) return '';
  return unit !== '' && BARE.test(text) ? `${text} ${unit}` : text;
}

/** Whether a line without an ID has the sum of all lines above it. */
function isSum(row: readonly string[], above: Table, columns: Columns): boolean {
  if ((row[columns[CODE]?.at ?? 0] ?? '') !== '') return false;
  const numberIn = (text: string | undefined) => Number((text ?? '').replace(',', '.'));
  return columns.slice(CODE + 1).some((column) => {
    if (column === null || above.length < 2) return false;
    const sum = above.reduce((total, line) => total + numberIn(line[column.at]), 0);
    return (row[column.at] ?? '') !== '' && Math.abs(sum - numberIn(row[column.at])) < 0.01 * sum;
  });
}
