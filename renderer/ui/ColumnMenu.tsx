import { useId } from 'react';
import { Checkbox } from '../form/Field.tsx';
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
      <fieldset id={id} popover="auto" className={`popover ${css.menu}`}>
        <legend className="spoken-only">{say('table.columns')}</legend>
        {columns.map((column) => (
          <Checkbox
            key={column.id}
            label={column.head}
            checked={isShown(column.id)}
            onChecked={(shown) => onShown(column.id, shown)}
          />
        ))}
      </fieldset>
    </>
  );
}
