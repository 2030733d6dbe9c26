import type { Column } from './DataTable.tsx';

export interface Sort {
  /** Of the column. */
  id: string;
  descending: boolean;
}

/** Rows by a column, numbers in names by their value; rows without a value come last either way. */
export function sortedRows<Row>(
  rows: readonly Row[],
  columns: readonly Column<Row>[],
  sort: Sort | null,
): readonly Row[] {
  const sortBy = columns.find(({ id }) => id === sort?.id)?.sortBy;
  if (!sort || typeof sortBy !== 'function') return rows;
  const order = sort.descending ? -1 : 1;
  return rows.toSorted((one, other) => {
    const [a, b] = [sortBy(one), sortBy(other)];
    if (a === null || b === null) return Number(a === null) - Number(b === null);
    if (typeof a === 'number' && typeof b === 'number') return order * (a - b);
    return order * String(a).localeCompare(String(b), undefined, { numeric: true });
  });
}
