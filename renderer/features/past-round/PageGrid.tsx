import { type CSSProperties, useState } from 'react';
import {
  MOST_COLUMNS,
  type PageBoard,
  type PastPage,
} from '../../../shared-core/contract/requests/past-rounds.ts';
import { pageSpots } from '../../../shared-core/probing/readings/page-spots.ts';
import type { Pins } from '../../../shared-core/probing/readings/pins.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { LengthField } from '../../form/MeasureFields.tsx';
import css from '../../form/typed-grid.module.css';
import { useGridCells } from '../../form/useGridCells.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { PageLine } from './PageLine.tsx';
import { filled, type PageDraft, textAt, withCell } from './page-draft.ts';

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
  const [beyond, setBeyond] = useState(0);
  const { columns, enterMoves } = page;
  const columnNumbers = Array.from({ length: columns }, (_, column) => column);
  // What was typed into a line before the day was can be taken out again.
  const open = boards.filter(
    ({ isLater, boardId }) =>
      !isLater || columnNumbers.some((column) => textAt(page, boardId, column) !== ''),
  );
  const rowOf = new Map(open.map(({ boardId }, row) => [boardId, row]));
  const size = { rows: open.length, columns };
  const spotsOf = (board: PageBoard) => pageSpots(board, pins, known.depths).spots;

  function type(boardId: number, column: number, text: string): void {
    onChange({ texts: { ...page.texts, [boardId]: withCell(page.texts[boardId], column, text) } });
  }
  const { table, wiring } = useGridCells({
    size,
    enterMoves,
    onEnd,
    onPaste: ({ row, column }, block) => {
      const ids = open.map((board) => board.boardId);
      const made = filled(page, ids, { boardId: ids[row]!, column }, block, MOST_COLUMNS);
      onChange({ texts: made.page.texts, columns: made.page.columns });
      setBeyond(made.beyond);
    },
  });

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
                  heads={columnNumbers.map(headOf)}
                  texts={columnNumbers.map((column) => textAt(page, boardId, column))}
                  unit={unit}
                  known={known}
                  hasDay={page.day !== null}
                  onUse={(column, text) => type(boardId, column, text)}
                  cell={(column, marks) => (
                    <input
                      {...marks}
                      className={css.cell}
                      inputMode="decimal"
                      autoComplete="off"
                      aria-label={
                        known.depths[column] === 'unknown'
                          ? say('past-round.cell-unknown', { boardCode, column: column + 1 })
                          : say('past-round.cell', {
                              boardCode,
                              column: column + 1,
                              depth: spots[column]!.planned.spot.depth,
                            })
                      }
                      disabled={row === undefined}
                      value={textAt(page, boardId, column)}
                      onChange={({ target }) => type(boardId, column, target.value)}
                      {...(row !== undefined && wiring({ row, column }))}
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
