import { useState } from 'react';
import { z } from 'zod';
import type { Column } from './DataTable.tsx';

/** What a choice of columns needs to know of each. */
type ColumnWidth = Pick<Column<never>, 'id' | 'widthRem' | 'optional'>;

const choiceSchema = z.record(z.string(), z.boolean());
type Choice = z.infer<typeof choiceSchema>;

/** The width of a column that names none. */
const USUAL_WIDTH_REM = 9;

export const widthOf = (columns: readonly ColumnWidth[]): number =>
  columns.reduce((sum, { widthRem = USUAL_WIDTH_REM }) => sum + widthRem, 0);

/** The columns to show: what a person chose holds; of the others, the last optional ones give way until all fit. */
export function columnsShown<C extends ColumnWidth>(
  columns: readonly C[],
  choice: Choice,
  roomRem: number,
): C[] {
  const shown = columns.filter(({ id, optional }) => !optional || choice[id] !== false);
  for (const column of shown.toReversed()) {
    if (widthOf(shown) <= roomRem) break;
    if (column.optional && choice[column.id] === undefined) shown.splice(shown.indexOf(column), 1);
  }
  return shown;
}

/** A person's choice of columns, remembered in this window's browser under a name. */
export function useColumnChoice(name: string | undefined): [Choice, (id: string, isShown: boolean) => void] {
  const key = `pintally.columns.${name}`;
  const [choice, setChoice] = useState<Choice>(() => {
    try {
      return choiceSchema.parse(JSON.parse(localStorage.getItem(key) ?? '{}'));
    } catch {
      return {};
    }
  });
  return [
    choice,
    (id, isShown) => {
      const changed = { ...choice, [id]: isShown };
      setChoice(changed);
      localStorage.setItem(key, JSON.stringify(changed));
    },
  ];
}
