import { useId } from 'react';
import { useWords } from '../words.ts';
import { Button } from './Button.tsx';
import css from './data-table.module.css';

/** Hides and shows the optional columns of a table. */
export function ColumnMenu({
  columns,
  isShown,
  onShown,
}: {
  columns: readonly { id: string; head: string }[];
  isShown: (id: string) => boolean;
  onShown: (id: string, isShown: boolean) => void;
}) {
  const { say } = useWords();
  const id = useId();
  return (
    <>
      <Button popoverTarget={id}>{say('table.columns')}</Button>
      <fieldset id={id} popover="auto" className={css.menu}>
        <legend className="spoken-only">{say('table.columns')}</legend>
        {columns.map((column) => (
          <label key={column.id} className={css.tick}>
            <input
              type="checkbox"
              checked={isShown(column.id)}
              onChange={(event) => onShown(column.id, event.target.checked)}
            />
            {column.head}
          </label>
        ))}
      </fieldset>
    </>
  );
}
