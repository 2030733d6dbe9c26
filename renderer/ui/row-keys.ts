import type { KeyboardEvent } from 'react';

/** What of a row can take the focus. */
const CONTROLS = ':any-link,button,input,select,textarea';

/** Where a key leads from row `at`, of so many; null for a key that does not move between rows. */
export function rowByKey(key: string, at: number, rows: number, rowsInSight: number): number | null {
  const to: Record<string, number> = {
    ArrowDown: at + 1,
    ArrowUp: at - 1,
    PageDown: at + rowsInSight,
    PageUp: at - rowsInSight,
    Home: 0,
    End: rows - 1,
  };
  const row = to[key];
  return row === undefined || rows === 0 ? null : Math.max(0, Math.min(rows - 1, row));
}

/** The index of the row that the element is in; null where it is in none. */
export function rowOf(element: Element): number | null {
  const index = element.closest<HTMLElement>('tr[data-index]')?.dataset.index;
  return index === undefined ? null : Number(index);
}

/** Whether a key pressed there means the table, and not the field that the person is in. */
export const isForTable = ({ target, ctrlKey, metaKey, altKey, defaultPrevented }: KeyboardEvent): boolean =>
  !(ctrlKey || metaKey || altKey || defaultPrevented) &&
  target instanceof Element &&
  target.closest('thead, input:not([type=checkbox]), select, textarea') === null;

/** Focuses a control of the row: the one in that cell, else the row's link, else its first. */
export function focusInRow(row: HTMLElement, cell?: Element): void {
  const place = cell ? [...(cell.parentElement?.children ?? [])].indexOf(cell) : -1;
  const control =
    row.children[place]?.querySelector<HTMLElement>(CONTROLS) ??
    row.querySelector<HTMLElement>('th a') ??
    row.querySelector<HTMLElement>(CONTROLS);
  (control ?? row).focus({ preventScroll: true });
}

/** Whether the rows have anything to focus. */
export const hasControls = (body: Element): boolean => body.querySelector(CONTROLS) !== null;
