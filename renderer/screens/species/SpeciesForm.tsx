import { useId, useState } from 'react';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../bridge.ts';
import { NumberField, Select, TextArea, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { useWords } from '../../words.ts';
import { type SpeciesDraft, speciesOf, speciesProblems } from './species-draft.ts';

const curveOptions = Array.from(resistanceCurves, ([value, curve]) => ({ value, label: curve.name })).sort(
  (a, b) => a.label.localeCompare(b.label, 'en'),
);

/** Edits a species' names and figures; what is not known stays empty. A new species where `id` is null. */
export function SpeciesForm({
  title,
  id,
  start,
  allSpecies,
  onClose,
}: {
  title: string;
  id: string | null;
  start: SpeciesDraft;
  allSpecies: readonly Species[];
  onClose: () => void;
}) {
  const { say } = useWords();
  const [draft, setDraft] = useState(start);
  const [shown, setShown] = useState(false);
  const groups = useId();
  const problems = speciesProblems(draft);
  const field = <K extends keyof SpeciesDraft>(key: K) => ({
    value: draft[key],
    error: shown && problems[key] ? say(problems[key]) : undefined,
    onValue: (value: SpeciesDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  async function save(): Promise<void> {
    setShown(true);
    if (Object.keys(problems).length > 0) throw fieldsMarked();
    const taken = new Set(allSpecies.map((species) => species.id));
    await bridge().command('species.save', speciesOf(draft, id ?? newSpeciesId(draft.name, taken)));
  }

  return (
    <FormDialog
      title={title}
      saveWords={say(id === null ? 'common.add' : 'common.save')}
      onSave={save}
      onClose={onClose}
    >
      <TextField label={say('species.name')} {...field('name')} />
      <div className="form-grid">
        <TextField label={say('species.botanical-name')} {...field('botanicalName')} />
        <TextField
          label={say('species.group')}
          hint={say('species.group-hint')}
          list={groups}
          {...field('group')}
        />
      </div>
      <datalist id={groups}>
        {Array.from(new Set(allSpecies.map((species) => species.group)), (group) => (
          <option key={group} value={group} />
        ))}
      </datalist>
      <TextField
        label={say('species.other-names')}
        hint={say('species.other-names-hint')}
        {...field('aliases')}
      />
      <NumberField
        label={say('species.specific-gravity')}
        hint={say('species.specific-gravity-hint')}
        {...field('basicSpecificGravity')}
      />
      <div className="form-grid">
        <NumberField label={say('species.radial')} unit="%" {...field('radialPct')} />
        <NumberField label={say('species.tangential')} unit="%" {...field('tangentialPct')} />
        <NumberField label={say('species.volumetric')} unit="%" {...field('volumetricPct')} />
      </div>
      <div className="form-grid">
        <NumberField
          label={say('species.change-radial')}
          hint={say('species.change-hint')}
          {...field('changeRadial')}
        />
        <NumberField
          label={say('species.change-tangential')}
          hint={say('species.change-hint')}
          {...field('changeTangential')}
        />
      </div>
      <Select
        label={say('species.curve')}
        hint={say('species.curve-hint')}
        options={[{ value: '', label: say('species.curve-none') }, ...curveOptions]}
        {...field('curveId')}
      />
      <div className="form-grid">
        <NumberField label={say('species.linear-a')} {...field('linearA')} />
        <NumberField label={say('species.linear-b')} {...field('linearB')} />
      </div>
      <TextArea label={say('species.note')} {...field('note')} />
      <TextArea label={say('species.source')} hint={say('species.source-hint')} {...field('source')} />
    </FormDialog>
  );
}
