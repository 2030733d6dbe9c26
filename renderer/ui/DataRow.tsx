import { memo, type ReactNode, type Ref, type RefObject, useLayoutEffect, useRef } from 'react';
import { useWords } from '../words.ts';
import type { Column, Selection } from './DataTable.tsx';
import css from './data-table.module.css';
import { focusInRow } from './row-keys.ts';

/** One row of a table; its first column is its head. */
export function DataRow<Row>({
  ref,
  index,
  row,
  columns,
  href,
  selection,
  onTick,
  isTabStop,
  onFocus,
}: {
  ref: Ref<HTMLTableRowElement>;
  index: number;
  /** Undefined while it is on its way. */
  row: Row | undefined;
  columns: readonly Column<Row>[];
  href: string | undefined;
  selection: Selection<Row> | undefined;
  /** @param isRange  whether all from the last one ticked are meant */
  onTick: (index: number, isSelected: boolean, isRange: boolean) => void;
  /** Whether Tab stops here: at one row of the table only, and arrows lead to the others. */
  isTabStop: boolean;
  onFocus: () => void;
}) {
  const { say } = useWords();
  const link = useRef<HTMLAnchorElement>(null);
  const isHere = row !== undefined;
  const isSelected = isHere && selection?.isSelected(row);
  // Someone came here before the row did.
  useLayoutEffect(() => {
    const waiting = document.activeElement;
    if (isHere && waiting instanceof HTMLTableRowElement && waiting.dataset.index === String(index)) {
      focusInRow(waiting);
    }
  }, [isHere, index]);
  const tabIndex = isTabStop ? 0 : -1;
  return (
    <tr
      ref={ref}
      data-index={index}
      aria-rowindex={index + 2}
      tabIndex={-1}
      className={[isSelected && css.selected, href && css.leads].filter(Boolean).join(' ') || undefined}
      onFocus={onFocus}
      onClick={({ target }) => {
        const pressed = (target as Element).closest('a, button, label, input, summary');
        if (!pressed && getSelection()?.isCollapsed !== false) link.current?.click();
      }}
    >
      {isHere && selection && (
        <td>
          <label className={`marked ${css.tick}`}>
            <input
              type="checkbox"
              aria-label={say('table.select-row', { rowName: selection.nameOf(row) })}
              checked={isSelected ?? false}
              tabIndex={tabIndex}
              onChange={({ target, nativeEvent }) =>
                onTick(index, target.checked, (nativeEvent as MouseEvent).shiftKey)
              }
            />
          </label>
        </td>
      )}
      {!isHere && <td>{say('table.row-coming')}</td>}
      {isHere && <Cells row={row} columns={columns} href={href} link={link} tabIndex={tabIndex} />}
    </tr>
  );
}

interface CellsProps<Row> {
  row: Row;
  columns: readonly Column<Row>[];
  href: string | undefined;
  link: RefObject<HTMLAnchorElement | null>;
  tabIndex: number;
}

function CellsOfRow<Row>({ row, columns, href, link, tabIndex }: CellsProps<Row>): ReactNode {
  function inRow(column: Column<Row>): ReactNode {
    const below = column.below?.(row);
    return (
      <>
        {column === columns[0] && href !== undefined ? (
          <a ref={link} href={href} tabIndex={tabIndex}>
            {column.cell(row)}
          </a>
        ) : (
          column.cell(row)
        )}
        {below && <small>{below}</small>}
      </>
    );
  }
  return columns.map((column, place) =>
    place === 0 ? (
      <th key={column.id} scope="row" className={css.name}>
        {inRow(column)}
      </th>
    ) : (
      <td
        key={column.id}
        data-head={column.headSpokenOnly ? '' : column.head}
        className={column.align && css.end}
      >
        {inRow(column)}
      </td>
    ),
  );
}

/** Drawn again only where the row is another, or its columns are: a change elsewhere in the list draws no other row again. */
const Cells = memo(CellsOfRow) as typeof CellsOfRow;
