import { useState } from 'react';
import type { Use } from '../../../shared-core/probing/assessment.ts';
import { newWoodId } from '../../../shared-core/wood/derive-wood.ts';
import { bridge } from '../../bridge.ts';
import { NumberField, TextArea, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { emptyUseDraft, problemsOfUse, savedUse, type UseDraft } from './use-draft.ts';

/** Asks for a use and its limits; for a new one, begun with `start`, where `use` is null. */
export function UseForm({
  use,
  start = emptyUseDraft,
  uses,
  onClose,
}: {
  use: Use | null;
  start?: UseDraft;
  uses: readonly Use[];
  onClose: () => void;
}) {
  const [draft, setDraft] = useState<UseDraft>(use ?? start);
  const [shown, setShown] = useState(false);
  const problems = problemsOfUse(draft);
  const field = <K extends keyof UseDraft>(key: K) => ({
    value: draft[key],
    error: shown ? problems[key] : undefined,
    onValue: (value: UseDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  async function save(): Promise<void> {
    setShown(true);
    // Ids of uses are made as those of woods are.
    const id = use?.id ?? newWoodId(draft.name, new Set(uses.map((other) => other.id)));
    const made = savedUse(draft, id);
    if (!made) throw fieldsMarked();
    await bridge().call('uses.save', made);
  }

  return (
    <FormDialog
      title={use ? `Change ${use.name}` : 'Add a use'}
      saveWords={use ? 'Save the use' : 'Add the use'}
      onSave={save}
      onClose={onClose}
    >
      {use && <p>Boards meant for it are judged again with the new limits.</p>}
      <TextField label="Name" {...field('name')} />
      <div className="form-grid">
        <NumberField label="Average from" unit="% MC" {...field('minPct')} />
        <NumberField label="Average to" unit="% MC" {...field('maxPct')} />
      </div>
      <NumberField
        label="Core at most above shell by"
        unit="% MC"
        hint="A board that is dry outside and wet inside moves when it is cut."
        {...field('maxShellCorePct')}
      />
      <TextArea label="Note" {...field('note')} />
    </FormDialog>
  );
}
