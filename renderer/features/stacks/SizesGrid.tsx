import { type CSSProperties, useId, useState } from 'react';
import { longLengthUnit, shortLengthUnit } from '../../../shared-core/units/length.ts';
import css from '../../form/typed-grid.module.css';
import { useGridCells } from '../../form/useGridCells.ts';
import { useUnits } from '../../stores/settings.ts';
import { Banner } from '../../ui/Banner.tsx';
import { useWords } from '../../words.ts';
import { pastedSizes, SIZE_COLUMNS, type SizedBoard, type TypedSizes, withSize } from './board-sizes.ts';

/** The IDs, widths and lengths of several boards, as they are listed on paper. */
export function SizesGrid({
  boards,
  typed,
  onTyped,
}: {
  boards: readonly SizedBoard[];
  typed: TypedSizes;
  /** What is typed now, and of how many boards. */
  onTyped: (typed: TypedSizes, boards: number) => void;
}) {
  const { say } = useWords();
  const units = useUnits();
  const id = useId();
  const [beyond, setBeyond] = useState(0);
  const [isPasted, setPasted] = useState(false);
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const { table, wiring } = useGridCells({
    size: { rows: boards.length, columns: SIZE_COLUMNS.length },
    enterMoves: 'down',
    onEnd: () => table.current?.closest('form')?.querySelector<HTMLElement>('[type=submit]')?.focus(),
    onPaste: (cell, block) => {
      const pasted = pastedSizes(typed, boards.length, cell, block);
      onTyped(pasted.typed, pasted.boards);
      setBeyond(pasted.beyond);
      setPasted(true);
    },
  });
  const heads = [
    say('board.id'),
    say('stacks.size-width', { unitName: shortLengthUnit(units) }),
    say('stacks.size-length', { unitName: longLengthUnit(units) }),
  ];
  const cell = (row: number, column: number, { code, problems }: SizedBoard) => {
    const isWrong = isMarked(row, column, problems);
    const keys = wiring({ row, column });
    return (
      <input
        {...keys}
        className={column === 0 ? `${css.cell} ${css.text}` : css.cell}
        inputMode={column === 0 ? 'text' : 'decimal'}
        autoComplete="off"
        aria-label={say('stacks.size-cell', { boardNumber: row + 1, columnName: heads[column]! })}
        aria-invalid={isWrong || undefined}
        aria-describedby={isWrong ? `${id}-${row}` : undefined}
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
                  <td key={column} className={isMarked(row, column, board.problems) ? css.marked : undefined}>
                    {cell(row, column, board)}
                  </td>
                ))}
                <td id={`${id}-${row}`} className={css.checks} aria-live="polite">
                  {board.problems.map(
                    (problem, column) =>
                      problem !== null &&
                      isMarked(row, column, board.problems) && (
                        <p key={heads[column]}>
                          <span aria-hidden="true" className={css.refused}>
                            ✕
                          </span>{' '}
                          {say(problem)}
                        </p>
                      ),
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {beyond > 0 && <Banner kind="caution">{say('past-round.pasted-beyond', { values: beyond })}</Banner>}
      <p className="soft">{say('stacks.sizes-hint')}</p>
    </>
  );

  /** What is pasted is marked at once, what is typed once it was left. */
  function isMarked(row: number, column: number, problems: SizedBoard['problems']): boolean {
    return problems[column] !== null && (isPasted || left.has(`${row} ${column}`));
  }
}
