import { useState } from 'react';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { bridge } from '../../bridge.ts';
import { NumberField, TextArea, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { type EndUseDraft, emptyUseDraft, problemsOfUse, savedUse } from './end-use-draft.ts';

/** Asks for a use and its limits; for a new one, begun with `start`, where `use` is null. */
export function EndUseForm({
  endUse,
  start = emptyUseDraft,
  endUses,
  onClose,
}: {
  endUse: EndUse | null;
  start?: EndUseDraft;
  endUses: readonly EndUse[];
  onClose: () => void;
}) {
  const [draft, setDraft] = useState<EndUseDraft>(endUse ?? start);
  const [shown, setShown] = useState(false);
  const problems = problemsOfUse(draft);
  const field = <K extends keyof EndUseDraft>(key: K) => ({
    value: draft[key],
    error: shown ? problems[key] : undefined,
    onValue: (value: EndUseDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  async function save(): Promise<void> {
    setShown(true);
    // Ids of uses are made as those of woods are.
    const id = endUse?.id ?? newSpeciesId(draft.name, new Set(endUses.map((other) => other.id)));
    const made = savedUse(draft, id);
    if (!made) throw fieldsMarked();
    await bridge().command('endUses.save', made);
  }

  return (
    <FormDialog
      title={endUse ? `Change ${endUse.name}` : 'Add a use'}
      saveWords={endUse ? 'Save the use' : 'Add the use'}
      onSave={save}
      onClose={onClose}
    >
      {endUse && <p>Boards meant for it are judged again with the new limits.</p>}
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
