import type { ImportChoices } from '../../../shared-core/contract/import.ts';
import { MOST_REFUSED_SHOWN } from '../../../shared-core/contract/requests/imports.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { TextField } from '../../form/Field.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import css from './import.module.css';

/** Rows that do not go in, each with its reasons: its cells can be corrected, or it is left out. */
export function RefusedRows({
  checked: { refused, refusedRows, leftOut },
  from,
  choices: { fixes, leftOut: out },
  heads,
  onChoices: set,
  onFrom,
}: {
  checked: RequestOutput<'imports.check'>;
  /** How many of them come before those that are shown. */
  from: number;
  choices: ImportChoices;
  heads: readonly string[];
  onChoices: (changed: Partial<ImportChoices>) => void;
  onFrom: (from: number) => void;
}) {
  const { say } = useWords();
  return (
    <>
      {leftOut > 0 && (
        <Actions>
          <p>{say('import.left-out', { rows: leftOut })}</p>
          <Button onClick={() => set({ leftOut: [] })}>{say('import.take-back-in')}</Button>
        </Actions>
      )}
      {refused > 0 && <h3>{say('import.refused', { rows: refused })}</h3>}
      {refused > refusedRows.length && (
        <Actions>
          <Button disabled={from === 0} onClick={() => onFrom(Math.max(0, from - MOST_REFUSED_SHOWN))}>
            {say('import.refused-before')}
          </Button>
          <span role="status">
            {say('import.refused-shown', { first: from + 1, last: from + refusedRows.length, refused })}
          </span>
          <Button
            disabled={from + refusedRows.length >= refused}
            onClick={() => onFrom(from + MOST_REFUSED_SHOWN)}
          >
            {say('import.refused-after')}
          </Button>
        </Actions>
      )}
      <ul className={css.rows}>
        {refusedRows.map(({ row, cells, problems }) => (
          <li key={row}>
            <strong>{say('import.line', { line: row + 1 })}</strong>
            {problems.map(({ column, problem }) =>
              column === null || column < 0 ? (
                <p key={JSON.stringify(problem)}>{say(problem)}</p>
              ) : (
                <TextField
                  key={column}
                  label={heads[column] || say('import.column', { number: column + 1 })}
                  error={say(problem)}
                  value={cells[column] ?? ''}
                  onValue={(text) =>
                    set({
                      fixes: [
                        ...fixes.filter((fix) => fix.row !== row || fix.column !== column),
                        { row, column, text },
                      ],
                    })
                  }
                />
              ),
            )}
            <Actions>
              <Button
                kind="quiet"
                aria-label={say('import.leave-out-line', { line: row + 1 })}
                onClick={() => set({ leftOut: [...out, row] })}
              >
                {say('import.leave-out')}
              </Button>
            </Actions>
          </li>
        ))}
      </ul>
    </>
  );
}
