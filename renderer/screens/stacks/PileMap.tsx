import { type KeyboardEvent, useRef, useState } from 'react';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { verdictMarks } from '../../../shared-core/labels/verdict-mark.ts';
import { EndGrain, isEndSaid } from '../../parts/EndGrain.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { VerdictShape, verdictsInOrder } from '../../parts/VerdictBadge.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { endWords } from '../board/end-words.ts';
import './pile-map.css';

const STEPS: Record<string, { up: number; right: number }> = {
  ArrowUp: { up: 1, right: 0 },
  ArrowDown: { up: -1, right: 0 },
  ArrowLeft: { up: 0, right: -1 },
  ArrowRight: { up: 0, right: 1 },
};

/**
 * The pile seen from its end: courses from the bottom up, columns from the left, each board with its call as colour,
 * shape and letter. Arrow keys go over the pile, Enter opens the board. Boards whose place in it nobody said stand beside.
 */
export function PileMap({
  boards,
  probeNext,
}: {
  boards: readonly BoardRow[];
  /** Boards that the plan wants probed next. */
  probeNext: ReadonlySet<number>;
}) {
  const placed = boards.filter(({ course, column }) => course !== null && column !== null);
  const loose = boards.filter(({ course, column }) => course === null || column === null);
  if (placed.length === 0) {
    return (
      <p className="pile-hint">
        Nobody said where in the pile its boards lie. Choose them in the list below and say under “Change …”
        how many lie in a course: the pile is then drawn here.
      </p>
    );
  }
  return (
    <div className="pile">
      <Pile placed={placed} probeNext={probeNext} />
      {loose.length > 0 && (
        <section className="pile-loose" aria-label="Boards whose place in the pile is not said">
          <h3>Place not said</h3>
          <ul>
            {loose.map((board) => (
              <li key={board.id}>
                <BoardEnd board={board} isNext={probeNext.has(board.id)} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Legend hasNext={probeNext.size > 0} hasEnds={boards.some(isEndSaid)} />
    </div>
  );
}

function Pile({ placed, probeNext }: { placed: readonly BoardRow[]; probeNext: ReadonlySet<number> }) {
  const pile = useRef<HTMLTableElement>(null);
  const columns = Math.max(...placed.map(({ column }) => column ?? 1));
  const courses = [...new Set(placed.map(({ course }) => course ?? 1))].sort((a, b) => b - a);
  const [current, setCurrent] = useState<number | null>(null);
  // Where Tab enters the pile: the board that was left last, else the upper left one.
  const first = placed.find(({ course }) => course === courses[0]) ?? placed[0];
  const entry = placed.some(({ id }) => id === current) ? current : first?.id;

  function move(event: KeyboardEvent, from: BoardRow): void {
    const step = STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const next = nextTo(from, step, placed);
    if (next === undefined) return;
    pile.current?.querySelector<HTMLElement>(`[data-board="${next.id}"]`)?.focus();
  }

  return (
    <div className="pile-frame">
      <table ref={pile} className="pile-grid" aria-label="The pile, seen from its end">
        <tbody>
          {courses.map((course) => (
            <tr key={course}>
              <th scope="row">
                <span className="spoken-only">Course </span>
                {course}
              </th>
              {Array.from({ length: columns }, (_, index) => index + 1).map((column) => (
                <td key={column}>
                  {placed
                    .filter((board) => board.course === course && board.column === column)
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
              <th key={index} scope="col">
                <span className="spoken-only">Column </span>
                {index + 1}
              </th>
            ))}
          </tr>
        </tfoot>
      </table>
    </div>
  );
}

/** The nearest board in that direction: in the same course or column first, else the one least out of line. */
function nextTo(
  from: BoardRow,
  { up, right }: { up: number; right: number },
  placed: readonly BoardRow[],
): BoardRow | undefined {
  const away = (board: BoardRow) => ({
    ahead:
      ((board.course ?? 1) - (from.course ?? 1)) * up + ((board.column ?? 1) - (from.column ?? 1)) * right,
    aside: Math.abs(
      up === 0 ? (board.course ?? 1) - (from.course ?? 1) : (board.column ?? 1) - (from.column ?? 1),
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
  const { latest, code } = board;
  const call = latest?.verdict ?? null;
  const pct = latest?.averagePct ?? null;
  const hasEnd = isEndSaid(board);
  return (
    <a
      href={hrefOf({ name: 'board', id: board.id })}
      className={`pile-board ${call === null ? 'pile-unprobed' : `verdict-soft-${call}`} ${isNext ? 'pile-next' : ''}`}
      data-board={board.id}
      tabIndex={isEntry ? 0 : -1}
      {...rest}
    >
      <span className="pile-code">{code}</span>{' '}
      {call === null ? (
        <span className="pile-call">not probed</span>
      ) : (
        <span className={`pile-call verdict-${call}`}>
          <VerdictShape verdict={call} />
          <span aria-hidden="true">{verdictMarks[call].letter}</span>{' '}
          <span className="spoken-only">{verdictMarks[call].word}</span>{' '}
          {pct !== null && <span className="pile-pct">{pctWords(pct)} %</span>}
        </span>
      )}
      {hasEnd && (
        <>
          <EndGrain board={board} /> <span className="spoken-only">{endWords(board)}</span>
        </>
      )}
      {isNext && (
        <>
          {' '}
          <span className="spoken-only">probe next</span>
        </>
      )}
    </a>
  );
}

function Legend({ hasNext, hasEnds }: { hasNext: boolean; hasEnds: boolean }) {
  return (
    <ul className="pile-legend" aria-label="What the marks mean">
      {verdictsInOrder.map((verdict) => (
        <li key={verdict} className={`verdict-${verdict}`}>
          <VerdictShape verdict={verdict} />
          {verdictMarks[verdict].letter} <span>{verdictMarks[verdict].word.toLowerCase()}</span>
        </li>
      ))}
      {hasNext && (
        <li>
          <span className="pile-next-sample" aria-hidden="true" /> <span>probe next</span>
        </li>
      )}
      {hasEnds && (
        <li>
          <span>The ends show rings and bark as they were said; a thick edge is bark still on.</span>
        </li>
      )}
      <li>
        <span>Arrow keys go over the pile; Enter opens a board.</span>
      </li>
    </ul>
  );
}
