import { type CSSProperties, type KeyboardEvent, useRef, useState } from 'react';
import { nextInStack } from '../../../shared-core/contract/next-in-stack.ts';
import type { BoardRow, StackRow } from '../../../shared-core/contract/yard.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { isEndKnown } from '../../ui/EndGrain.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { BoardEnd } from './BoardEnd.tsx';
import css from './stack-drawing.module.css';

/** As many boards as the machine hands over at once, and more than a person can look over. */
const MOST_DRAWN = 500;
/** More columns than this need a wider drawing. */
const USUAL_COLUMNS = 6;

/** The stack as it lies, with the boards to probe next outlined. Boards without a layer are listed below it. */
export function StackDrawing({ stack: { id: stackId, topCover } }: { stack: StackRow }) {
  const boards = useQuery('boards.list', { stackId, search: '', offset: 0, limit: MOST_DRAWN });
  const plan = useQuery('stacks.plan', { id: stackId, certainty: 0.9 });
  const { say } = useWords();
  const next = new Set(plan.output?.next.map(({ boardId }) => boardId));
  return (
    <Sheet title={say('stacks.from-its-end')}>
      <Await of={[boards]}>
        {({ rows, total }) => {
          const placed = rows.filter(({ layer, column }) => layer !== null && column !== null);
          const loose = rows.filter((board) => !placed.includes(board));
          return (
            <>
              {placed.length === 0 ? (
                <p className="soft">{say('stacks.drawing-missing')}</p>
              ) : (
                <Layers placed={placed} next={next} isCovered={topCover === 'covered'} />
              )}
              {placed.length > 0 && loose.length > 0 && (
                <section aria-label={say('stacks.without-layer')}>
                  <h3>{say('stacks.without-layer')}</h3>
                  <ul className={css.loose}>
                    {loose.map((board) => (
                      <li key={board.id}>
                        <BoardEnd board={board} isNext={next.has(board.id)} />
                      </li>
                    ))}
                  </ul>
                </section>
              )}
              <p className="soft">
                {placed.some(({ id }) => next.has(id)) && (
                  <>
                    <span className={css.sample} aria-hidden="true" /> {say('stack-plan.next')}.{' '}
                  </>
                )}
                {topCover === 'sun' && say('stacks.top-in-sun')}{' '}
                {placed.some(isEndKnown) && say('stacks.ends-drawn')}{' '}
                {total > MOST_DRAWN && say('stacks.drawn-only', { drawn: MOST_DRAWN, boards: total })}
              </p>
            </>
          );
        }}
      </Await>
    </Sheet>
  );
}

/** Layers from the bottom up, columns from the left. Arrow keys move over them, Enter opens a board. */
function Layers({
  placed,
  next,
  isCovered,
}: {
  placed: readonly BoardRow[];
  next: ReadonlySet<number>;
  isCovered: boolean;
}) {
  const { say } = useWords();
  const table = useRef<HTMLTableElement>(null);
  const most = Math.max(...placed.map(({ column }) => column ?? 1));
  const columns = Array.from({ length: most }, (_, index) => index + 1);
  const layers = [...new Set(placed.map(({ layer }) => layer ?? 1))].sort((a, b) => b - a);
  const [current, setCurrent] = useState<number | null>(null);
  // Where Tab enters the stack: the board that was left last, else the upper left one.
  const first = placed.find(({ layer }) => layer === layers[0]) ?? placed[0];
  const entry = placed.some(({ id }) => id === current) ? current : first?.id;

  function onKeyDown(event: KeyboardEvent, from: BoardRow): void {
    const to = nextInStack(event.key, from, placed);
    if (event.key.startsWith('Arrow')) event.preventDefault();
    if (to) table.current?.querySelector<HTMLElement>(`[data-board="${to.id}"]`)?.focus();
  }

  return (
    <div className={css.frame} data-wide={most > USUAL_COLUMNS || undefined}>
      <div className={css.whole} style={{ '--columns': most } as CSSProperties}>
        {isCovered && <div className={css.cover} />}
        <table
          ref={table}
          className={css.layers}
          data-ends={placed.some(isEndKnown) || undefined}
          aria-label={say('stacks.from-its-end')}
          aria-description={say('stacks.arrow-keys')}
        >
          <colgroup>
            <col />
          </colgroup>
          <thead className="spoken-only">
            <tr>
              <td />
              {columns.map((column) => (
                <th key={column} scope="col">
                  {say('stacks.column', { column })}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {layers.map((layer) => (
              <tr key={layer}>
                <th scope="row" aria-label={say('stacks.layer', { layer })}>
                  {layer}
                </th>
                {columns.map((column) => (
                  <td key={column}>
                    {placed
                      .filter((board) => board.layer === layer && board.column === column)
                      .map((board) => (
                        <BoardEnd
                          key={board.id}
                          board={board}
                          isNext={next.has(board.id)}
                          isEntry={board.id === entry}
                          onFocus={() => setCurrent(board.id)}
                          onKeyDown={(event) => onKeyDown(event, board)}
                        />
                      ))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
        <div className={css.bolsters}>
          <span />
          <span />
        </div>
      </div>
    </div>
  );
}
