import { type ReactNode, useEffect, useId, useState } from 'react';
import type {
  CheckedCell,
  PageBoard,
  PastLine,
  PastPage,
} from '../../../shared-core/contract/requests/past-rounds.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { megohmsOf } from '../../../shared-core/units/typed-ohms.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { type Message, thicknessOf } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import css from '../../form/typed-grid.module.css';
import { Button } from '../../ui/Button.tsx';
import { shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { aboveOf, cellIn } from './page-draft.ts';
import past from './past-round.module.css';

/** How long nothing is typed in a line before it is checked, ms. */
const CHECK_AFTER_MS = 400;

interface CellWiring {
  'aria-invalid': true | undefined;
  'aria-describedby': string | undefined;
}

/** A board of the page: what was read on it, and what is questionable of that. */
export function PageLine({
  board,
  heads,
  texts,
  unit,
  known,
  hasDay,
  onUse,
  cell,
}: {
  board: PageBoard;
  /** The names of the columns. */
  heads: readonly string[];
  texts: readonly string[];
  unit: ReadingUnit;
  known: PastPage;
  /** Whether the day of the page is given. Without it, the readings are not compared with those of other days. */
  hasDay: boolean;
  /** The value that was meant is typed instead. */
  onUse: (column: number, text: string) => void;
  cell: (column: number, wiring: CellWiring) => ReactNode;
}) {
  const { say, formats } = useWords();
  const id = useId();
  const [marked, setMarked] = useState<ReadonlySet<number>>(new Set());
  const typed = texts.map((text) => cellIn(text, unit));
  const unread = typed.flatMap((each, column) =>
    each !== null && 'problem' in each ? [{ column, problem: each.problem }] : [],
  );
  const raws = typed.map((each) => (each !== null && 'raw' in each ? each.raw : null));
  const asked = useSettled({ ...known, line: { boardId: board.boardId, raws, above: aboveOf(typed) } });
  return (
    <tr>
      <th scope="row">
        <span translate="no">{board.code}</span>{' '}
        <small>
          <span translate="no">{formats.named(board.speciesName)}</span>
          {` · ${formats.thickness(thicknessOf(board))}`}
          {board.remarks.map((remark) => (
            <span key={remark.code} className={past.remark}>
              {say(remark)}
            </span>
          ))}
        </small>
      </th>
      {[...texts.keys()].map((column) => {
        const isUnread = unread.some((each) => each.column === column);
        const isMarked = isUnread || marked.has(column);
        return (
          <td key={column} className={isMarked ? css.marked : undefined}>
            {cell(column, {
              'aria-invalid': isUnread || undefined,
              'aria-describedby': isMarked ? id : undefined,
            })}
          </td>
        );
      })}
      <td id={id} className={css.checks} aria-live="polite">
        {unread.map(({ column, problem }) => (
          <p key={column}>
            <Sign isUsed={false} />{' '}
            {say('past-round.of-columns', { columnNames: heads[column]!, why: problem })}
          </p>
        ))}
        {asked.line.raws.some((raw) => raw !== null) && (
          <Checked
            asked={asked}
            heads={heads}
            hasDay={hasDay}
            raws={raws}
            boardCode={board.code}
            onMarked={setMarked}
            onUse={onUse}
          />
        )}
      </td>
    </tr>
  );
}

/** A mark beside the color. */
const Sign = ({ isUsed }: { isUsed: boolean }) => (
  <span aria-hidden="true" className={isUsed ? css.questionable : css.refused}>
    {isUsed ? '!' : '✕'}
  </span>
);

/** The same for as long as it is not left alone for a moment. */
function useSettled<T>(value: T): T {
  const text = JSON.stringify(value);
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(text), CHECK_AFTER_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return JSON.parse(settled) as T;
}

/** What only the day of a reading tells. */
const OF_ITS_DAY: ReadonlySet<string> = new Set(['jump-since-last-round', 'dry-too-soon', 'wet-too-long']);

/** What is wrong with several cells is said once. */
function remarksOf(cells: readonly CheckedCell[], hasDay: boolean) {
  const remarks = new Map<string, { why: Message; columns: number[]; isUsed: boolean }>();
  for (const { column, suspicions, counts } of cells) {
    for (const { rule, severity, why } of suspicions) {
      if (severity === 'note' || (!hasDay && OF_ITS_DAY.has(rule))) continue;
      const key = JSON.stringify([why, counts]);
      const same = remarks.get(key) ?? { why, columns: [], isUsed: counts };
      remarks.set(key, { ...same, columns: [...same.columns, column] });
    }
  }
  return [...remarks].map(([key, remark]) => ({ key, ...remark }));
}

function Checked({
  asked,
  heads,
  hasDay,
  raws,
  boardCode,
  onMarked,
  onUse,
}: {
  asked: PastPage & { line: PastLine };
  heads: readonly string[];
  hasDay: boolean;
  /** Typed by now: of others, nothing is said. */
  raws: readonly (number | null)[];
  boardCode: string;
  onMarked: (columns: ReadonlySet<number>) => void;
  onUse: (column: number, text: string) => void;
}) {
  const words = useWords();
  const { say, formats } = words;
  const { output, error } = useQuery('pastRounds.check', asked);
  const cells = (output?.cells ?? []).filter(({ column, raw }) => raws[column] === raw);
  const remarks = remarksOf(cells, hasDay);
  const marked = JSON.stringify(remarks.flatMap(({ columns }) => columns));
  useEffect(() => {
    onMarked(new Set(JSON.parse(marked) as number[]));
    return () => onMarked(new Set());
  }, [marked, onMarked]);
  const pctsOf = (areAbove: boolean) =>
    cells.flatMap(({ column, counts, corrected: { mcPct } }) =>
      counts && mcPct !== null && asked.line.above.includes(column) === areAbove ? [mcPct] : [],
    );
  if (error !== null) return <p>{error}</p>;
  return (
    <>
      <Corrected shown={pctsOf(false)} above={pctsOf(true)} />
      {remarks.map(({ key, why, columns, isUsed }) => (
        <p key={key}>
          <Sign isUsed={isUsed} />{' '}
          {say(isUsed ? 'past-round.of-columns' : 'past-round.not-used', {
            columnNames: formats.list(columns.map((column) => heads[column]!)),
            why,
          })}
        </p>
      ))}
      {cells.map((cell) => {
        const meant = meantBy({ ...cell, excluded: null });
        if (meant === null) return null;
        const { column, unit } = cell;
        const isAbove = asked.line.above.includes(column);
        const shownValue = shownText({ raw: meant, unit, isAbove }, words);
        const plain = String(unit === 'ohm' ? megohmsOf(meant) : meant);
        return (
          <Button
            key={column}
            aria-label={say('past-round.use-meant-of', { shownValue, boardCode, column: column + 1 })}
            onClick={() => onUse(column, isAbove ? `>${plain}` : plain)}
          >
            {say('past-round.use-meant', { shownValue })}
          </Button>
        );
      })}
    </>
  );
}

/** What the readings of a line come to, %; of those above the meter’s scale, only that they are more. */
function Corrected({ shown, above }: { shown: readonly number[]; above: readonly number[] }) {
  const { say } = useWords();
  if (shown.length + above.length === 0) return null;
  const correctedInterval = { minPct: Math.min(...shown), maxPct: Math.max(...shown) };
  const abovePct = Math.min(...above);
  return (
    <p className="soft">
      {above.length === 0
        ? say('past-round.corrected', { correctedInterval })
        : shown.length === 0
          ? say('past-round.corrected-above', { abovePct })
          : say('past-round.corrected-both', { correctedInterval, abovePct })}
    </p>
  );
}
