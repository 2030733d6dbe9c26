import { defaultRangeExtractor, type Range, useVirtualizer } from '@tanstack/react-virtual';
import {
  type CSSProperties,
  Fragment,
  type KeyboardEvent,
  type ReactNode,
  useDeferredValue,
  useEffect,
  useMemo,
  useRef,
  useState,
} from 'react';
import { flushSync } from 'react-dom';
import { useWords } from '../words.ts';
import { ColumnMenu } from './ColumnMenu.tsx';
import { columnsShown, useColumnChoice, widthOf } from './column-choice.ts';
import { DataRow } from './DataRow.tsx';
import css from './data-table.module.css';
import { focusInRow, hasControls, isForTable, rowByKey, rowOf } from './row-keys.ts';
import { SortHead } from './SortHead.tsx';
import { type Sort, sortedRows } from './sorted-rows.ts';
import { useFrame } from './useFrame.ts';

/** A column of a table, described once. The first column names its row. */
export interface Column<Row> {
  id: string;
  head: string;
  /** For a column of buttons, whose head is only spoken. */
  headSpokenOnly?: boolean;
  cell: (row: Row) => ReactNode;
  /** A second, smaller line. */
  below?: (row: Row) => ReactNode;
  /** What its rows are sorted by; `caller` where whoever gives the rows sorts them. */
  sortBy?: ((row: Row) => string | number | null) | 'caller';
  align?: 'end';
  widthRem?: number;
  /** Whether a person may hide it; it also gives way where the table is too narrow. */
  optional?: boolean;
}

/** Rows that are fetched as they come into sight. */
export interface PagedRows<Row> {
  count: number;
  /** Undefined while it is on its way. */
  rowAt: (index: number) => Row | undefined;
  onRange: (first: number, last: number) => void;
  /** From first to last, both included; undefined where they could not be fetched. */
  fetch: (first: number, last: number) => Promise<readonly Row[] | undefined>;
}

export interface Selection<Row> {
  isSelected: (row: Row) => boolean;
  /** How many are. */
  selected: number;
  onSelect: (rows: readonly Row[], isSelected: boolean) => void;
  /** As its checkbox names it. */
  nameOf: (row: Row) => string;
  /** How many are selected, in a sentence. */
  summary: string;
}

const ROW_PX = 64;
const HEAD_PX = 48;
const ROWS_BEYOND_SIGHT = 12;
/** Up to so many are drawn even out of sight, so that they can be printed and searched. */
const ROWS_ALWAYS_DRAWN = 100;
const TICK_REM = 3.5;
/** A narrower table shows each row as a card, which has the optional columns that a person chose. */
const NARROW_REM = 36;

/**
 * Every table of the window: sortable, selectable, of any length. Long ones draw only the rows in sight. Arrows, Home,
 * End and the page keys move from row to row, Space selects, Enter opens.
 */
export function DataTable<Row>({
  name,
  caption,
  columns,
  columnsName,
  rows,
  keyOf,
  hrefOf,
  selection,
  sort: callersSort,
  fill = false,
  actions,
}: {
  /** For screen readers. */
  name: string;
  caption?: ReactNode;
  columns: readonly Column<Row>[];
  /** Under which a person's choice among the optional columns is remembered. */
  columnsName?: string;
  rows: readonly Row[] | PagedRows<Row>;
  keyOf: (row: Row) => string | number;
  /** Where a row leads. */
  hrefOf?: (row: Row) => string;
  selection?: Selection<Row>;
  /** Where the caller sorts. */
  sort?: { sort: Sort | null; onSort: (sort: Sort) => void };
  /** Whether it fills the rest of the window's height. */
  fill?: boolean;
  /** What can be done with all rows, or the selected ones. */
  actions?: ReactNode;
}) {
  const { frame, widthRem, topPx, scrolls } = useFrame();
  const isNarrow = widthRem < NARROW_REM;
  const [ownSort, setOwnSort] = useState<Sort | null>(null);
  const { sort, onSort } = callersSort ?? { sort: ownSort, onSort: setOwnSort };
  const [choice, choose] = useColumnChoice(columnsName);
  const tickRem = selection ? TICK_REM : 0;
  const roomRem = isNarrow ? 0 : widthRem - tickRem;
  const shown = useMemo(() => columnsShown(columns, choice, roomRem), [columns, choice, roomRem]);
  const sorted = 'rowAt' in rows ? null : sortedRows(rows, columns, sort);
  const source: PagedRows<Row> =
    'rowAt' in rows
      ? rows
      : {
          count: rows.length,
          rowAt: (index) => sorted?.[index],
          onRange: () => undefined,
          fetch: async (first, last) => sorted?.slice(first, last + 1),
        };
  const { count, rowAt, onRange } = source;
  const [active, setActive] = useState(0);
  const tabStop = Math.min(active, count - 1);
  // A list that becomes short, as by a search, first shows the rows in sight.
  const isFew = count <= ROWS_ALWAYS_DRAWN;
  const areAllDrawn = useDeferredValue(isFew, false) && isFew;
  const virtual = useVirtualizer({
    count,
    getScrollElement: () => frame.current,
    estimateSize: () => ROW_PX,
    overscan: ROWS_BEYOND_SIGHT,
    scrollPaddingEnd: HEAD_PX,
    rangeExtractor: (range) => (areAllDrawn ? [...Array(range.count).keys()] : rowsInSight(range, tabStop)),
  });
  const first = Math.max(0, (virtual.range?.startIndex ?? 0) - ROWS_BEYOND_SIGHT);
  const last = Math.min(count - 1, (virtual.range?.endIndex ?? 0) + ROWS_BEYOND_SIGHT);
  useEffect(() => {
    onRange(first, last);
  }, [onRange, first, last]);

  const lastTicked = useRef(0);
  const [selecting, setSelecting] = useState(false);
  async function select(from: number, to: number, isSelected: boolean): Promise<void> {
    const [low, high] = from < to ? [from, to] : [to, from];
    const single = low === high ? rowAt(low) : undefined;
    setSelecting(true);
    const found = single === undefined ? await source.fetch(low, high) : [single];
    setSelecting(false);
    if (found) selection?.onSelect(found, isSelected);
  }
  function tick(index: number, isSelected: boolean, isRange: boolean): void {
    void select(isRange ? lastTicked.current : index, index, isSelected);
    lastTicked.current = index;
  }

  function onKeyDown(event: KeyboardEvent<HTMLElement>): void {
    const body = event.currentTarget.querySelector('tbody');
    if (!isForTable(event) || !body || !hasControls(body)) return;
    const target = event.target as HTMLElement;
    const at = rowOf(target);
    const inSight = virtual.range ?? { startIndex: 0, endIndex: 0 };
    const to = rowByKey(
      event.key,
      at ?? inSight.startIndex - 1,
      count,
      inSight.endIndex - inSight.startIndex,
    );
    const row = at === null ? undefined : rowAt(at);
    if (to !== null) {
      event.preventDefault();
      flushSync(() => setActive(to));
      virtual.scrollToIndex(to);
      const drawn = body.querySelector<HTMLElement>(`tr[data-index="${to}"]`);
      if (drawn) focusInRow(drawn, target.closest('th, td') ?? undefined);
    } else if (at !== null && row && event.key === ' ' && selection && target.tagName === 'A') {
      event.preventDefault();
      tick(at, !selection.isSelected(row), event.shiftKey);
    } else if (row && event.key === 'Enter' && hrefOf && target.tagName === 'INPUT') {
      location.assign(hrefOf(row));
    }
  }

  const optional = columns.filter((column) => column.optional);
  /** Cards that are all drawn: the page scrolls, and no frame cuts one in half. */
  const isShort = isNarrow && isFew;
  const isFixed = columns.some((column) => column.widthRem !== undefined);
  let endPx = 0;
  return (
    <div className={`column ${css.whole}`}>
      {(selection || actions || columnsName) && (
        <div className={css.bar}>
          {selection && <p role="status">{selection.summary}</p>}
          {actions}
          {columnsName && optional.length > 0 && (
            <ColumnMenu
              columns={optional}
              isShown={(id) => shown.some((each) => each.id === id)}
              onShown={choose}
            />
          )}
        </div>
      )}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys move the focus among the controls that are in it. */}
      <div
        ref={frame}
        className={`${css.frame} ${fill ? css.fill : ''} ${isShort ? css.short : ''}`}
        style={{ '--top': `${topPx}px` } as CSSProperties}
        {...(scrolls && { role: 'group', tabIndex: 0, 'aria-label': name })}
        onKeyDown={onKeyDown}
      >
        <table
          aria-label={caption ? undefined : name}
          aria-rowcount={count + 1}
          className={isNarrow ? css.cards : css.table}
          style={
            isNarrow || !isFixed ? {} : { tableLayout: 'fixed', minWidth: `${widthOf(shown) + tickRem}rem` }
          }
        >
          {caption && <caption>{caption}</caption>}
          {isFixed && !isNarrow && (
            <colgroup>
              {selection && <col style={{ width: `${TICK_REM}rem` }} />}
              {shown.map(({ id, widthRem }) => (
                <col key={id} style={{ width: widthRem && `${widthRem}rem` }} />
              ))}
            </colgroup>
          )}
          <thead>
            <tr aria-rowindex={1}>
              {selection && (
                <th scope="col">
                  <AllTick
                    isNamed={isNarrow}
                    isSome={selection.selected > 0}
                    isAll={selection.selected > 0 && selection.selected >= count}
                    disabled={selecting}
                    onAll={(isSelected) => void select(0, count - 1, isSelected)}
                  />
                </th>
              )}
              {shown.map((column) => (
                <SortHead key={column.id} column={column} sort={sort} onSort={onSort} />
              ))}
            </tr>
          </thead>
          <tbody>
            {virtual.getVirtualItems().map(({ index, start, end }) => {
              const skippedPx = start - endPx;
              endPx = end;
              const row = rowAt(index);
              return (
                // A row that comes later takes the place, and the focus, of the one that waits for it.
                <Fragment key={row === undefined || !sorted ? index : keyOf(row)}>
                  <RowsOutOfSight heightPx={skippedPx} />
                  <DataRow
                    ref={virtual.measureElement}
                    index={index}
                    row={row}
                    columns={shown}
                    href={row && hrefOf?.(row)}
                    isTabStop={index === tabStop}
                    onFocus={() => setActive(index)}
                    selection={selection}
                    onTick={tick}
                  />
                </Fragment>
              );
            })}
            <RowsOutOfSight heightPx={virtual.getTotalSize() - endPx} />
          </tbody>
        </table>
      </div>
    </div>
  );
}

/** The rows in sight and the one that has the focus, which would be lost with its row. */
function rowsInSight(range: Range, tabStop: number): number[] {
  return [...new Set([...defaultRangeExtractor(range), Math.max(0, tabStop)])].sort((a, b) => a - b);
}

/** Takes the place of rows that are not drawn. */
function RowsOutOfSight({ heightPx }: { heightPx: number }) {
  if (heightPx <= 0) return null;
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: it cannot be focused.
    <tr aria-hidden="true">
      <td style={{ height: heightPx, padding: 0, border: 0 }} />
    </tr>
  );
}

/** Selects all rows, or none. */
function AllTick({
  isNamed,
  isSome,
  isAll,
  disabled,
  onAll,
}: {
  /** Whether its name is beside it. */
  isNamed: boolean;
  isSome: boolean;
  isAll: boolean;
  disabled: boolean;
  onAll: (isSelected: boolean) => void;
}) {
  const { say } = useWords();
  return (
    <label className={`marked ${css.tick}`}>
      <input
        ref={(input) => {
          if (input) input.indeterminate = isSome && !isAll;
        }}
        type="checkbox"
        checked={isAll}
        disabled={disabled}
        onChange={() => onAll(!isAll)}
      />
      <span className={isNamed ? undefined : 'spoken-only'}>{say('table.select-all')}</span>
    </label>
  );
}
