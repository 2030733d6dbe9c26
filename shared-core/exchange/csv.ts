/**
 * CSV as RFC 4180 has it: cells separated by commas, rows ended by CRLF, a cell in quotes where it holds a comma, a quote
 * or a line break, and a quote in it doubled.
 */

/**
 * The file begins with it: without it, common spreadsheets read UTF-8 as the computer's old code page, and spoil every
 * name with an accent. RFC 4180 says nothing of it; our import drops it.
 */
export const BYTE_ORDER_MARK = '\uFEFF';

export type Cell = string | number | null;

/** A spreadsheet takes a text that begins so for a formula, and runs it when the file is opened (OWASP, CSV Injection). */
const FORMULA = /^'*[=+\-@\t\r\n]/;
const NEUTRALIZED = /^'+[=+\-@\t\r\n]/;

/**
 * A text that no spreadsheet takes for a formula: one that begins like it gets an apostrophe before it. Numbers are left
 * alone.
 * @example neutralized('=1+1') // "'=1+1"
 */
export const neutralized = (text: string): string => (FORMULA.test(text) ? `'${text}` : text);

/**
 * The text that `neutralized` was given.
 * @example asEntered("'=1+1") // '=1+1'
 */
export const asEntered = (cell: string): string => (NEUTRALIZED.test(cell) ? cell.slice(1) : cell);

/** One row, with its end. */
export const csvRow = (cells: readonly Cell[]): string => `${cells.map(csvCell).join(',')}\r\n`;

function csvCell(cell: Cell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = neutralized(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
