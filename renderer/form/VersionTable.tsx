import type { RequestOutput } from '../../shared-core/contract/requests.ts';
import type { Edit, Editable, EditName, Versions } from '../data/useEdit.ts';
import { DataTable } from '../ui/DataTable.tsx';
import { useWords } from '../words.ts';
import type { FormConflict } from './FormDialog.tsx';

interface FieldText<V, R> {
  label: string;
  /** A value in the record that it is part of. */
  text: (value: V, record: R) => string;
}

/** How each field of a record is called and shown, or with which other field it is. */
export type FieldTexts<N extends EditName> = {
  [F in keyof Required<Editable<N>>]:
    | FieldText<NonNullable<Required<Editable<N>>[F]>, RequestOutput<N>>
    | (keyof Editable<N> & string);
};

/** Every field that this person changed and that was saved otherwise, in both versions. */
export function VersionTable<N extends EditName>({
  versions: { mine, current },
  fields,
}: {
  versions: Versions<N>;
  fields: FieldTexts<N>;
}) {
  const { say } = useWords();
  const texts = fields as Record<string, FieldText<unknown, unknown> | string>;
  const shownWith = (field: string) => (typeof texts[field] === 'string' ? texts[field] : field);
  const rows = [...new Set(Object.keys(mine as object).map(shownWith))].flatMap((field) => {
    const words = texts[field];
    if (words === undefined || typeof words === 'string') return [];
    const textIn = (record: object) => {
      const value = (record as Record<string, unknown>)[field];
      return value === null || value === '' ? say('conflict.blank') : words.text(value, record);
    };
    const theirs = current as object;
    return [{ field, label: words.label, mine: textIn({ ...theirs, ...mine }), saved: textIn(theirs) }];
  });
  return (
    <DataTable
      name={say('conflict.table')}
      rows={rows}
      keyOf={({ field }) => field}
      columns={[
        { id: 'field', head: say('conflict.field'), cell: ({ label }) => label },
        { id: 'mine', head: say('conflict.mine'), cell: ({ mine }) => mine },
        { id: 'saved', head: say('conflict.saved-meanwhile'), cell: ({ saved }) => saved },
      ]}
    />
  );
}

/**
 * What a form shows where another edit came between; null as long as none did.
 * @param refill  fills the form with what was saved meanwhile
 */
export function conflictOf<N extends EditName>(
  edit: Edit<N>,
  fields: FieldTexts<N>,
  refill: (record: RequestOutput<N>) => void,
): FormConflict | null {
  const { versions, keepMine, takeTheirs } = edit;
  return (
    versions && {
      table: <VersionTable versions={versions} fields={fields} />,
      keepMine,
      takeTheirs: () => {
        takeTheirs();
        refill(versions.current);
      },
    }
  );
}
