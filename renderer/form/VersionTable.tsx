import type { RequestOutput } from '../../shared-core/contract/requests.ts';
import type { Edit, Editable, EditName, Versions } from '../data/useEdit.ts';
import { DataTable } from '../ui/DataTable.tsx';
import { useWords } from '../words.ts';
import type { FormConflict } from './FormDialog.tsx';

/** How each field of a record is called and shown. */
export type FieldTexts<N extends EditName> = {
  [F in keyof Required<Editable<N>>]: {
    label: string;
    text: (value: NonNullable<Required<Editable<N>>[F]>) => string;
  };
};

/** Every field on which two edits of a record differ, in both versions. */
export function VersionTable<N extends EditName>({
  versions: { base, mine, current },
  fields,
}: {
  versions: Versions<N>;
  fields: FieldTexts<N>;
}) {
  const { say } = useWords();
  const read = (record: object, field: string): unknown => (record as Record<string, unknown>)[field];
  const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);
  const rows = Object.entries<{ label: string; text: (value: never) => string }>(fields).flatMap(
    ([field, { label, text }]) => {
      const [before, now] = [read(base as object, field), read(current as object, field)];
      const typed = field in (mine as object) ? read(mine as object, field) : before;
      if (same(typed, before) && same(now, before)) return [];
      const shown = (value: unknown) =>
        value === null || value === '' ? say('conflict.blank') : text(value as never);
      return [{ field, label, mine: shown(typed), saved: shown(now) }];
    },
  );
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
