import { type ClipboardEvent, type CSSProperties, type KeyboardEvent, useRef, useState } from 'react';
import {
  MOST_COLUMNS,
  type PageBoard,
  type PastPage,
} from '../../../shared-core/contract/requests/past-rounds.ts';
import { pageSpots } from '../../../shared-core/probing/readings/page-spots.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import { spotName } from '../../../shared-core/probing/readings/spots.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { LengthField } from '../../form/MeasureFields.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { arrowCell, type Cell, nextCell } from './grid-moves.ts';
import { PageLine } from './PageLine.tsx';
import { filled, type PageDraft, pastedCells, textAt, withCell } from './page-draft.ts';
import css from './past-round.module.css';

/** The page itself: boards down, readings across. */
export function PageGrid({
  boards,
  page,
  onChange,
  unit,
  pins,
  depthProblems,
  known,
  onEnd,
}: {
  boards: readonly PageBoard[];
  page: PageDraft;
  onChange: (changed: Partial<PageDraft>) => void;
  unit: ReadingUnit;
  /** Of the meter; null where unknown. */
  pins: Pins | null;
  /** Of each column's depth. */
  depthProblems: readonly (string | null)[];
  /** What holds for the whole page. */
  known: PastPage;
  /** Enter was pressed in the last cell. */
  onEnd: () => void;
}) {
  const { say } = useWords();
  const table = useRef<HTMLTableElement>(null);
  const [beyond, setBeyond] = useState(0);
  const { columns, enterMoves } = page;
  const open = boards.filter(({ isSawnLater }) => !isSawnLater);
  const rowOf = new Map(open.map(({ boardId }, row) => [boardId, row]));
  const size = { rows: open.length, columns };
  const columnNumbers = Array.from({ length: columns }, (_, column) => column);
  const spotsOf = (board: PageBoard) => pageSpots(board, pins, known.depths).spots;

  function focus({ row, column }: Cell): void {
    const cell = table.current?.querySelector<HTMLInputElement>(`[data-cell="${row} ${column}"]`);
    cell?.focus();
    cell?.select();
  }
  function type(boardId: number, column: number, text: string): void {
    onChange({ texts: { ...page.texts, [boardId]: withCell(page.texts[boardId], column, text) } });
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
  function paste(event: ClipboardEvent, boardId: number, column: number): void {
    const block = pastedCells(event.clipboardData.getData('text'));
    if (block === null) return;
    event.preventDefault();
    const ids = open.map((board) => board.boardId);
    const made = filled(page, ids, { boardId, column }, block, MOST_COLUMNS);
    onChange({ texts: made.page.texts, columns: made.page.columns });
    setBeyond(made.beyond);
  }

  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be scrolled by keys. */}
      <section className={css.scroll} tabIndex={0} aria-label={say('past-round.grid')}>
        <table className={css.grid} style={{ '--columns': columns } as CSSProperties} ref={table}>
          <thead>
            <tr>
              <th scope="col">{say('past-round.board')}</th>
              {columnNumbers.map((column) => (
                <th scope="col" key={column}>
                  {headOf(column)}
                  {page.depth === 'typed' && (
                    <LengthField
                      label={
                        <span className="spoken-only">
                          {say('past-round.depth-of', { column: column + 1 })}
                        </span>
                      }
                      value={page.depthsMm[column] ?? null}
                      error={depthProblems[column] ?? null}
                      onValue={(mm) =>
                        onChange({
                          depthsMm: columnNumbers.map((each) =>
                            each === column ? mm : (page.depthsMm[each] ?? null),
                          ),
                        })
                      }
                    />
                  )}
                </th>
              ))}
              <th scope="col">{say('past-round.checks')}</th>
            </tr>
          </thead>
          <tbody>
            {boards.map((board) => {
              const { boardId, code: boardCode } = board;
              const row = rowOf.get(boardId);
              const spots = spotsOf(board);
              return (
                <PageLine
                  key={boardId}
                  board={board}
                  texts={columnNumbers.map((column) => textAt(page, boardId, column))}
                  unit={unit}
                  known={known}
                  hasDay={page.day !== null}
                  onUse={(column, text) => type(boardId, column, text)}
                  cell={(column, wiring) => (
                    <input
                      {...wiring}
                      className={css.cell}
                      inputMode="decimal"
                      autoComplete="off"
                      aria-label={
                        known.depths[column] === 'unknown'
                          ? say('past-round.cell-unknown', { boardCode, column: column + 1 })
                          : say('past-round.cell', {
                              boardCode,
                              column: column + 1,
                              spot: say(spotName(spots[column]!.planned)),
                            })
                      }
                      disabled={row === undefined}
                      data-cell={row === undefined ? undefined : `${row} ${column}`}
                      value={textAt(page, boardId, column)}
                      onChange={({ target }) => type(boardId, column, target.value)}
                      onFocus={({ target }) => target.select()}
                      onKeyDown={(event) => row !== undefined && press(event, { row, column })}
                      onPaste={(event) => paste(event, boardId, column)}
                    />
                  )}
                />
              );
            })}
          </tbody>
        </table>
      </section>
      {beyond > 0 && <Banner kind="caution">{say('past-round.pasted-beyond', { values: beyond })}</Banner>}
      <Actions>
        {columns < MOST_COLUMNS && (
          <Button onClick={() => onChange({ columns: columns + 1 })}>{say('past-round.more-columns')}</Button>
        )}
        {columns > 1 && open.every(({ boardId }) => textAt(page, boardId, columns - 1) === '') && (
          <Button onClick={() => onChange({ columns: columns - 1 })}>
            {say('past-round.fewer-columns')}
          </Button>
        )}
        <span className="soft">{say('past-round.paste-hint')}</span>
      </Actions>
    </>
  );

  /** Its depth, where that is the same on all boards. */
  function headOf(column: number): string {
    if (known.depths[column] === 'unknown') return say('past-round.column', { column: column + 1 });
    const depths = new Set(open.map((board) => spotsOf(board)[column]!.planned.spot.depth));
    const [depth] = depths;
    return depths.size === 1 && depth !== undefined
      ? say('past-round.column-depth', { depth, column: column + 1 })
      : say('past-round.column', { column: column + 1 });
  }
}
