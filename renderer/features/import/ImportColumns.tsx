import {
  type ColumnChoice,
  type DayOrder,
  dayOrderSchema,
  dayRoles,
  type ImportChoices,
  isDatedRole,
  rolesOf,
  unitsOf,
} from '../../../shared-core/contract/import.ts';
import { dayIn } from '../../../shared-core/import/cells.ts';
import { DateField } from '../../form/DateField.tsx';
import { Checkbox, Select } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import type { ReadTable } from './ImportScreen.tsx';
import css from './import.module.css';

/** What each column holds, with its first cells beside it. */
export function ImportColumns({
  choices: { kind, columns },
  shown: { heads, sample },
  onColumn,
}: {
  choices: ImportChoices;
  shown: Pick<ReadTable, 'heads' | 'sample'>;
  onColumn: (index: number, changed: Partial<ColumnChoice>) => void;
}) {
  const { say, formats } = useWords();
  const today = formats.localDay(new Date());
  const hasDay = columns.some(({ role }) => role === 'day');
  /** The first date of a column as it is read, with its month as a word. */
  function dateRead(cells: readonly string[], order: DayOrder): string | null {
    for (const cell of cells) {
      const readOn = dayIn(cell, order, today)?.day;
      if (readOn !== undefined) return say('import.date-read', { cellTypedText: cell, readOn });
    }
    return null;
  }
  return (
    <ul className={css.columns}>
      {columns.map((column, index) => {
        const { role, unit, order, on, fillDown } = column;
        const head = heads[index] || say('import.column', { number: index + 1 });
        const units = unitsOf[role];
        // A table may name its columns again further down.
        const cells = sample
          .map((row) => row.cells[index] ?? '')
          .filter((cell) => cell !== '' && cell !== heads[index]);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a column has nothing else to be known by.
          <li key={index} className={css.column}>
            <Select
              label={<span translate="no">{head}</span>}
              hint={<span translate="no">{cells.slice(0, 3).join(' · ')}</span>}
              value={role}
              options={rolesOf[kind].map((value) => ({ value, label: say(`import.role.${value}`) }))}
              onValue={(value) =>
                onColumn(index, {
                  role: value,
                  unit: unitsOf[value]?.[0] ?? null,
                  order: dayRoles.includes(value) ? (order ?? 'ymd') : null,
                })
              }
            />
            {units && (
              <Select
                label={say('import.unit-of', { head })}
                value={unit}
                options={units.map((value) => ({ value, label: say(`import.unit.${value}`) }))}
                onValue={(value) => onColumn(index, { unit: value })}
              />
            )}
            {dayRoles.includes(role) && (
              <Select
                label={say('import.order-of', { head })}
                hint={order && dateRead(cells, order)}
                value={order}
                options={[
                  ...(order === null ? [{ value: null, label: say('import.order-open') }] : []),
                  ...dayOrderSchema.options.map((value) => ({
                    value,
                    label: say(`import.order.${value}`),
                  })),
                ]}
                onValue={(value) => onColumn(index, { order: value })}
              />
            )}
            {kind === 'boards' && ((role === 'reading' && !hasDay) || (isDatedRole(role) && on !== null)) && (
              <DateField
                label={say('import.read-on', { head })}
                value={on}
                onValue={(value) => onColumn(index, { on: value })}
              />
            )}
            {role !== 'unused' && role !== 'reading' && (
              <Checkbox
                label={say('import.fill-down')}
                aria-label={say('import.fill-down-of', { head })}
                checked={fillDown}
                onChecked={(value) => onColumn(index, { fillDown: value })}
              />
            )}
          </li>
        );
      })}
    </ul>
  );
}
