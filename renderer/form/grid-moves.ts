/** A cell of a grid: the row is one that can be typed into. */
export interface Cell {
  row: number;
  column: number;
}
export type Size = { rows: number; columns: number };

/**
 * The cell after one, or before it, in the order in which a page is read: down its columns, or across its rows.
 * @returns null past the last cell, or before the first
 */
export function nextCell(
  { row, column }: Cell,
  { rows, columns }: Size,
  moves: 'down' | 'across',
  by: 1 | -1,
): Cell | null {
  const index = (moves === 'down' ? column * rows + row : row * columns + column) + by;
  if (index < 0 || index >= rows * columns) return null;
  return moves === 'down'
    ? { row: index % rows, column: Math.floor(index / rows) }
    : { row: Math.floor(index / columns), column: index % columns };
}

/** Where an arrow key leads from a cell; null where it moves the cursor within, or there is no cell. */
export function arrowCell(
  key: string,
  { row, column }: Cell,
  { rows, columns }: Size,
  cursor: { atStart: boolean; atEnd: boolean },
): Cell | null {
  const to =
    key === 'ArrowUp'
      ? { row: row - 1, column }
      : key === 'ArrowDown'
        ? { row: row + 1, column }
        : key === 'ArrowLeft' && cursor.atStart
          ? { row, column: column - 1 }
          : key === 'ArrowRight' && cursor.atEnd
            ? { row, column: column + 1 }
            : null;
  if (to === null || to.row < 0 || to.row >= rows || to.column < 0 || to.column >= columns) return null;
  return to;
}

/** Cells copied from a spreadsheet, row by row; null for a single one, which goes where the cursor is. */
export function pastedCells(text: string): string[][] | null {
  const rows = text
    .replace(/\r\n?/g, '\n')
    .replace(/\n$/, '')
    .split('\n')
    .map((row) => row.split('\t'));
  return rows.length === 1 && rows[0]!.length === 1 ? null : rows;
}
