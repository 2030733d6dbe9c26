import { type KeyboardEvent, useRef, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { CallShape, callsInOrder } from '../../ui/CallBadge.tsx';
import { EndGrain, isEndKnown } from '../../ui/EndGrain.tsx';
import { useWords } from '../../words.ts';
import { endWords } from '../board/end-words.ts';
import './stack-drawing.css';

const STEPS: Record<string, { up: number; right: number }> = {
  ArrowUp: { up: 1, right: 0 },
  ArrowDown: { up: -1, right: 0 },
  ArrowLeft: { up: 0, right: -1 },
  ArrowRight: { up: 0, right: 1 },
};

/**
 * The stack seen from its end: layers from the bottom up, columns from the left, each board with its call as color,
 * shape and letter. Arrow keys move over it, Enter opens the board. Boards without a layer are listed below.
 */
export function StackDrawing({
  boards,
  probeNext,
}: {
  boards: readonly BoardRow[];
  /** Boards that the plan names to be probed next. */
  probeNext: ReadonlySet<number>;
}) {
  const { say } = useWords();
  const placed = boards.filter(({ layer, column }) => layer !== null && column !== null);
  const loose = boards.filter(({ layer, column }) => layer === null || column === null);
  if (placed.length === 0) {
    return <p className="stack-hint">{say('stacks.drawing-missing')}</p>;
  }
  return (
    <div className="stack">
      <StackGrid placed={placed} probeNext={probeNext} />
      {loose.length > 0 && (
        <section className="stack-loose" aria-label={say('stacks.without-layer')}>
          <h3>{say('stacks.without-layer')}</h3>
          <ul>
            {loose.map((board) => (
              <li key={board.id}>
                <BoardEnd board={board} isNext={probeNext.has(board.id)} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Legend hasNext={probeNext.size > 0} hasEnds={boards.some(isEndKnown)} />
    </div>
  );
}

function StackGrid({ placed, probeNext }: { placed: readonly BoardRow[]; probeNext: ReadonlySet<number> }) {
  const { say } = useWords();
  const grid = useRef<HTMLTableElement>(null);
  const columns = Math.max(...placed.map(({ column }) => column ?? 1));
  const layers = [...new Set(placed.map(({ layer }) => layer ?? 1))].sort((a, b) => b - a);
  const [current, setCurrent] = useState<number | null>(null);
  // Where Tab enters the stack: the board that was left last, else the upper left one.
  const first = placed.find(({ layer }) => layer === layers[0]) ?? placed[0];
  const entry = placed.some(({ id }) => id === current) ? current : first?.id;

  function move(event: KeyboardEvent, from: BoardRow): void {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = nextTo(from, step, placed);
    if (next === undefined) return;
    grid.current?.querySelector<HTMLElement>(`[data-board="${next.id}"]`)?.focus();
  }

  return (
    <div className="stack-frame">
      <table ref={grid} className="stack-grid" aria-label={say('stacks.from-its-end')}>
        <tbody>
          {layers.map((layer) => (
            <tr key={layer}>
              <th scope="row" aria-label={say('stacks.layer', { layer })}>
                {layer}
              </th>
              {Array.from({ length: columns }, (_, index) => index + 1).map((column) => (
                <td key={column}>
                  {placed
                    .filter((board) => board.layer === layer && board.column === column)
                    .map((board) => (
                      <BoardEnd
                        key={board.id}
                        board={board}
                        isNext={probeNext.has(board.id)}
                        isEntry={board.id === entry}
                        onFocus={() => setCurrent(board.id)}
                        onKeyDown={(event) => move(event, board)}
                      />
                    ))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td />
            {Array.from({ length: columns }, (_, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a column is its number.
              <th key={index} scope="col" aria-label={say('stacks.column', { column: index + 1 })}>
                {index + 1}
              </th>
            ))}
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

/** The nearest board in that direction: in the same layer or column first, else the one least out of line. */
function nextTo(
  from: BoardRow,
  { up, right }: { up: number; right: number },
  placed: readonly BoardRow[],
): BoardRow | undefined {
  const away = (board: BoardRow) => ({
    ahead: ((board.layer ?? 1) - (from.layer ?? 1)) * up + ((board.column ?? 1) - (from.column ?? 1)) * right,
    aside: Math.abs(
      up === 0 ? (board.layer ?? 1) - (from.layer ?? 1) : (board.column ?? 1) - (from.column ?? 1),
    ),
  });
  return placed
    .filter((board) => away(board).ahead > 0 && (up !== 0 || away(board).aside === 0))
    .toSorted((a, b) => {
      const [near, far] = [away(a), away(b)];
      return near.ahead - far.ahead || near.aside - far.aside;
    })[0];
}

/** A board's end with its ID, its call and its moisture content; opens the board. */
function BoardEnd({
  board,
  isNext,
  isEntry = true,
  ...rest
}: {
  board: BoardRow;
  isNext: boolean;
  /** Whether Tab stops here. */
  isEntry?: boolean;
  onFocus?: () => void;
  onKeyDown?: (event: KeyboardEvent) => void;
}) {
  const { say, formats } = useWords();
  const { latest, code } = board;
  const call = latest?.call ?? null;
  const pct = latest?.averagePct ?? null;
  const hasEnd = isEndKnown(board);
  return (
    <a
      href={hrefOf({ name: 'board', id: board.id })}
      className={`stack-board ${call === null ? 'stack-unprobed' : `call-soft-${call}`} ${isNext ? 'stack-next' : ''}`}
      data-board={board.id}
      tabIndex={isEntry ? 0 : -1}
      {...rest}
    >
      <span className="stack-code" translate="no">
        {code}
      </span>{' '}
      {call === null ? (
        <span className="stack-call">{say('stacks.not-probed')}</span>
      ) : (
        <span className={`stack-call call-${call}`}>
          <CallShape call={call} />
          <span aria-hidden="true">{say(`call.letter-${call}`)}</span>{' '}
          <span className="spoken-only">{say(`call.${call}`)}</span>{' '}
          {pct !== null && <span className="stack-pct">{formats.mc(pct)}</span>}
        </span>
      )}
      {hasEnd && (
        <>
          <EndGrain board={board} /> <span className="spoken-only">{endWords(board, say)}</span>
        </>
      )}
      {isNext && (
        <>
          {' '}
          <span className="spoken-only">{say('stacks.probe-next')}</span>
        </>
      )}
    </a>
  );
}

function Legend({ hasNext, hasEnds }: { hasNext: boolean; hasEnds: boolean }) {
  const { say } = useWords();
  return (
    <ul className="stack-legend" aria-label={say('stacks.marks')}>
      {callsInOrder.map((call) => (
        <li key={call} className={`call-${call}`}>
          <CallShape call={call} />
          {say(`call.letter-${call}`)} <span>{say(`call.${call}`)}</span>
        </li>
      ))}
      {hasNext && (
        <li>
          <span className="stack-next-sample" aria-hidden="true" /> <span>{say('stacks.probe-next')}</span>
        </li>
      )}
      {hasEnds && (
        <li>
          <span>{say('stacks.ends-drawn')}</span>
        </li>
      )}
      <li>
        <span>{say('stacks.arrow-keys')}</span>
      </li>
    </ul>
  );
}
