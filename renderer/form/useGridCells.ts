import { type ClipboardEvent, type FocusEvent, type KeyboardEvent, useRef } from 'react';
import { arrowCell, type Cell, nextCell, pastedCells, type Size } from './grid-moves.ts';

/**
 * The keys of a grid of text fields: Enter goes on, arrows go from cell to cell, and cells of a spreadsheet can be pasted.
 *
 * @param onEnd    Enter was pressed in the last cell
 * @param onPaste  several cells were pasted, row by row, the first into that cell
 */
export function useGridCells({
  size,
  enterMoves,
  onEnd,
  onPaste,
}: {
  size: Size;
  enterMoves: 'down' | 'across';
  onEnd: () => void;
  onPaste: (cell: Cell, block: string[][]) => void;
}) {
  const table = useRef<HTMLTableElement>(null);

  function focus({ row, column }: Cell): void {
    const cell = table.current?.querySelector<HTMLInputElement>(`[data-cell="${row} ${column}"]`);
    cell?.focus();
    cell?.select();
  }
  function press(event: KeyboardEvent<HTMLInputElement>, cell: Cell): void {
    if (event.ctrlKey || event.metaKey || event.altKey || event.nativeEvent.isComposing) return;
    if (event.key === 'Enter') {
      event.preventDefault();
      const to = nextCell(cell, size, enterMoves, event.shiftKey ? -1 : 1);
      if (to) focus(to);
      else if (!event.shiftKey) onEnd();
      return;
    }
    if (event.shiftKey) return;
    const { selectionStart, selectionEnd, value } = event.currentTarget;
    // Just come to, all of it is selected: an arrow goes on.
    const isAll = selectionStart === 0 && selectionEnd === value.length;
    const cursor = {
      atStart: isAll || (selectionStart === 0 && selectionEnd === 0),
      atEnd: isAll || (selectionStart === value.length && selectionEnd === value.length),
    };
    const to = arrowCell(event.key, cell, size, cursor);
    if (to === null) return;
    event.preventDefault();
    focus(to);
  }
  return {
    table,
    focus,
    /** What the text field of a cell needs. */
    wiring: (cell: Cell) => ({
      'data-cell': `${cell.row} ${cell.column}`,
      onFocus: ({ target }: FocusEvent<HTMLInputElement>) => target.select(),
      onKeyDown: (event: KeyboardEvent<HTMLInputElement>) => press(event, cell),
      onPaste: (event: ClipboardEvent<HTMLInputElement>) => {
        const block = pastedCells(event.clipboardData.getData('text'));
        if (block === null) return;
        event.preventDefault();
        onPaste(cell, block);
      },
    }),
  };
}
