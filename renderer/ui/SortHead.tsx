import type { Column } from './DataTable.tsx';
import css from './data-table.module.css';
import type { Sort } from './sorted-rows.ts';

/** The head of a column; a button where its rows can be sorted by it. */
export function SortHead<Row>({
  column: { id, head, headSpokenOnly, sortBy, align },
  sort,
  onSort,
}: {
  column: Column<Row>;
  sort: Sort | null;
  onSort: (sort: Sort) => void;
}) {
  const direction = sort?.id !== id ? 'none' : sort.descending ? 'descending' : 'ascending';
  return (
    <th scope="col" aria-sort={sortBy && direction} className={align && css.end}>
      {sortBy ? (
        <button
          type="button"
          className={`marked ${css.sort}`}
          onClick={() => onSort({ id, descending: direction === 'ascending' })}
        >
          {head}
          <svg viewBox="0 0 10 16" aria-hidden="true" className={css[direction]}>
            <path d="M5 1 9 6H1z" />
            <path d="M5 15 1 10h8z" />
          </svg>
        </button>
      ) : (
        <span className={headSpokenOnly ? 'spoken-only' : undefined}>{head}</span>
      )}
    </th>
  );
}
