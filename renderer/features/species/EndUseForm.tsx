import { useState } from 'react';
import type { EndUseRow } from '../../../shared-core/contract/requests/catalog.ts';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { NumberField, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { conflictOf, type FieldTexts } from '../../form/VersionTable.tsx';
import { useWords } from '../../words.ts';
import { draftOfUse, type EndUseDraft, emptyUseDraft, problemsOfUse, savedUse } from './end-use-draft.ts';

/** Edits a use and its limits; adds a new one, begun with `start`, where `endUse` is null. */
export function EndUseForm({
  endUse,
  start = emptyUseDraft,
  endUses,
  onClose,
}: {
  endUse: EndUseRow | null;
  start?: EndUseDraft;
  endUses: readonly EndUse[];
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const [draft, setDraft] = useState<EndUseDraft>(endUse ? draftOfUse(endUse) : start);
  const [shown, setShown] = useState(false);
  const problems = problemsOfUse(draft);
  const field = <K extends keyof EndUseDraft>(key: K) => ({
    value: draft[key],
    error: shown && problems[key] ? say(problems[key]) : undefined,
    onValue: (value: EndUseDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  const edit = useEdit('endUses.edit', endUse);
  const fields: FieldTexts<'endUses.edit'> = {
    name: { label: say('species.name'), text: (name) => name },
    minPct: { label: say('use.lowest'), text: formats.percent },
    maxPct: { label: say('use.highest'), text: formats.percent },
    maxShellCorePct: { label: say('use.shell-core'), text: formats.points },
    note: { label: say('species.note'), text: (note) => note },
    source: { label: say('species.source'), text: (source) => source },
  };

  async function save(): Promise<void> {
    setShown(true);
    // Ids of uses are made as those of species are.
    const id = endUse?.id ?? newSpeciesId(draft.name, new Set(endUses.map((other) => other.id)));
    const made = savedUse(draft, id);
    if (!made) throw fieldsMarked();
    if (edit.base) await edit.save(made, savedUse(draftOfUse(edit.base), id));
    else await bridge().command('endUses.add', made);
  }

  return (
    <FormDialog
      title={endUse ? say('use.edit', { useName: endUse.name }) : say('use.add')}
      saveWords={say(endUse ? 'common.save' : 'common.add')}
      onSave={save}
      onClose={onClose}
      conflict={conflictOf(edit, fields, (saved) => setDraft(draftOfUse(saved)))}
    >
      {endUse && <p>{say('use.effect')}</p>}
      <TextField label={say('species.name')} {...field('name')} />
      <div className="form-grid">
        <NumberField label={say('use.lowest')} unit="%" {...field('minPct')} />
        <NumberField label={say('use.highest')} unit="%" {...field('maxPct')} />
      </div>
      <NumberField
        label={say('use.shell-core')}
        unit={say('use.points')}
        hint={say('use.shell-core-hint')}
        {...field('maxShellCorePct')}
      />
      <TextArea label={say('species.note')} {...field('note')} />
      <TextArea label={say('species.source')} {...field('source')} />
    </FormDialog>
  );
}
