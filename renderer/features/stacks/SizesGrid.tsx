import { type CSSProperties, useEffect, useId, useState } from 'react';
import { LONGEST_CODE } from '../../../shared-core/contract/board-code.ts';
import { longLengthUnit, shortLengthUnit } from '../../../shared-core/units/length.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Checkbox } from '../../form/Field.tsx';
import css from '../../form/typed-grid.module.css';
import { useGridCells } from '../../form/useGridCells.ts';
import { useUnits } from '../../stores/settings.ts';
import { Banner } from '../../ui/Banner.tsx';
import { dayOf } from '../../ui/days.ts';
import { useWords } from '../../words.ts';
import {
  type Pasted,
  pastedSizes,
  SIZE_COLUMNS,
  type SizedBoard,
  type TypedSizes,
  withSize,
} from './board-sizes.ts';

/** The IDs, widths and lengths of several boards, as they are listed on paper. */
export function SizesGrid({
  boards,
  typed,
  onTyped,
  areRight,
  onRight,
}: {
  boards: readonly SizedBoard[];
  typed: TypedSizes;
  /** What is typed now, and of how many boards. */
  onTyped: (typed: TypedSizes, boards: number) => void;
  /** Whether unusual sizes were looked over. */
  areRight: boolean;
  onRight: (areRight: boolean) => void;
}) {
  const { say } = useWords();
  const units = useUnits();
  const id = useId();
  const [answer, setAnswer] = useState<Pasted | { problem: Message } | null>(null);
  const [isPasted, setPasted] = useState(false);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const { table, focus, wiring } = useGridCells({
    size: { rows: boards.length, columns: SIZE_COLUMNS.length },
    enterMoves: 'down',
    onEnd: () => table.current?.closest('form')?.querySelector<HTMLElement>('[type=submit]')?.focus(),
    onPaste: (cell, block) => {
      const pasted = pastedSizes(typed, boards.length, cell, block, dayOf(new Date()));
      setAnswer(pasted);
      if ('problem' in pasted) return;
      onTyped(pasted.typed, pasted.boards);
      setPasted(true);
    },
  });
  const { output: taken } = useQuery('boards.withCodes', {
    codes: boards.map(({ code }) => code).filter((code) => code.length <= LONGEST_CODE),
  });
  const stackOf = new Map(taken?.map(({ code, stackName }) => [code, stackName]));
  // The button that opened the grid is gone, and the focus with it.
  // biome-ignore lint/correctness/useExhaustiveDependencies: only when it opens.
  useEffect(() => focus({ row: 0, column: 0 }), []);
  const heads = [
    say('board.id'),
    say('stacks.size-width', { unitName: shortLengthUnit(units) }),
    say('stacks.size-length', { unitName: longLengthUnit(units) }),
  ];
  const cell = (row: number, column: number, board: SizedBoard) => {
    const { code } = board;
    const isWrong = problemAt(row, column, board) !== null;
    const keys = wiring({ row, column });
    return (
      <input
        {...keys}
        className={column === 0 ? `${css.cell} ${css.text}` : css.cell}
        inputMode={column === 0 ? 'text' : 'decimal'}
        autoComplete="off"
        aria-label={say('stacks.size-cell', { boardNumber: row + 1, columnName: heads[column]! })}
        aria-invalid={isWrong || undefined}
        aria-describedby={isWrong || questionAt(row, column, board) ? `${id}-${row}` : undefined}
        placeholder={column === 0 ? code : undefined}
        value={typed[row]?.[column] ?? ''}
        onChange={({ target }) => onTyped(withSize(typed, { row, column }, target.value), boards.length)}
        onBlur={() => setLeft((before) => new Set(before).add(`${row} ${column}`))}
      />
    );
  };
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls can be scrolled by keys. */}
      <section className={css.scroll} tabIndex={0} aria-label={say('stacks.sizes')}>
        <table
          ref={table}
          className={`${css.grid} ${css.beside}`}
          style={{ '--columns': SIZE_COLUMNS.length - 1 } as CSSProperties}
        >
          <thead>
            <tr>
              {heads.map((head) => (
                <th scope="col" key={head}>
                  {head}
                </th>
              ))}
              <th scope="col">{say('past-round.checks')}</th>
            </tr>
          </thead>
          <tbody>
            {boards.map((board, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is a line of the grid, whatever its ID.
              <tr key={row}>
                <th scope="row">{cell(row, 0, board)}</th>
                {[1, 2].map((column) => (
                  <td key={column} className={problemAt(row, column, board) ? css.marked : undefined}>
                    {cell(row, column, board)}
                  </td>
                ))}
                <td id={`${id}-${row}`} className={css.checks} aria-live="polite">
                  {SIZE_COLUMNS.map((name, column) => {
                    const problem = problemAt(row, column, board);
                    const question = questionAt(row, column, board);
                    const found = problem ?? question;
                    return (
                      found && (
                        <p key={name}>
                          <span aria-hidden="true" className={problem ? css.refused : css.questionable}>
                            {problem ? '✕' : '?'}
                          </span>{' '}
                          {say(found)}
                        </p>
                      )
                    );
                  })}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {answer && 'problem' in answer && <Banner kind="problem">{say(answer.problem)}</Banner>}
      {answer && 'leftOut' in answer && answer.leftOut.length > 0 && (
        <Banner kind="caution">
          {answer.leftOut.map((sentence) => (
            <p key={sentence.code}>{say(sentence)}</p>
          ))}
        </Banner>
      )}
      {boards.some(({ questions }) => questions.some((question) => question !== null)) && (
        <Checkbox label={say('stacks.sizes-right')} checked={areRight} onChecked={onRight} />
      )}
      <p className="soft">{say('stacks.sizes-hint')}</p>
    </>
  );

  /** What is pasted is marked at once, what is typed once it was left, and an ID that nobody typed always. */
  function isShown(row: number, column: number): boolean {
    const isBlank = (typed[row]?.[column] ?? '').trim() === '';
    return isPasted || left.has(`${row} ${column}`) || (column === 0 && isBlank);
  }
  function problemAt(row: number, column: number, { code, problems }: SizedBoard): Message | null {
    if (!isShown(row, column)) return null;
    const stackName = column === 0 ? stackOf.get(code) : undefined;
    return (
      problems[column] ??
      (stackName === undefined ? null : message('stacks.size-taken', { boardCode: code, stackName }))
    );
  }
  function questionAt(row: number, column: number, { questions }: SizedBoard): Message | null {
    return isShown(row, column) ? questions[column]! : null;
  }
}
