import { useId, useState } from 'react';
import { resistanceCurves } from '../../../shared-core/wood/species/catalogue.ts';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../bridge.ts';
import { NumberField, Select, TextArea, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { type SpeciesDraft, speciesOf, speciesProblems } from './species-draft.ts';

const curveOptions = [
  { value: '', label: 'None: correct for temperature only' },
  ...Array.from(resistanceCurves, ([value, curve]) => ({ value, label: curve.name })).sort((a, b) =>
    a.label.localeCompare(b.label, 'en'),
  ),
];

/** Asks for a wood's names and figures; what is not known stays empty. A new wood where `id` is null. */
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
  const [draft, setDraft] = useState(start);
  const [shown, setShown] = useState(false);
  const groups = useId();
  const problems = speciesProblems(draft);
  const field = <K extends keyof SpeciesDraft>(key: K) => ({
    value: draft[key],
    error: shown ? problems[key] : undefined,
    onValue: (value: SpeciesDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  async function save(): Promise<void> {
    setShown(true);
    if (Object.keys(problems).length > 0) throw fieldsMarked();
    const taken = new Set(allSpecies.map((species) => species.id));
    await bridge().command('species.save', speciesOf(draft, id ?? newSpeciesId(draft.name, taken)));
  }

  return (
    <FormDialog title={title} saveWords="Save the wood" onSave={save} onClose={onClose}>
      <TextField label="Name" {...field('name')} />
      <div className="form-grid">
        <TextField label="Botanical name" {...field('botanicalName')} />
        <TextField label="Group" hint="The bay it is filed in." list={groups} {...field('group')} />
      </div>
      <datalist id={groups}>
        {Array.from(new Set(allSpecies.map((species) => species.group)), (group) => (
          <option key={group} value={group} />
        ))}
      </datalist>
      <TextField
        label="Other names"
        hint="Parted by commas; a search finds the wood by them."
        {...field('aliases')}
      />
      <NumberField
        label="Basic specific gravity"
        hint="Oven-dry mass over green volume, relative to water."
        {...field('basicSpecificGravity')}
      />
      <div className="form-grid">
        <NumberField label="Radial shrinkage" unit="%" {...field('radialPct')} />
        <NumberField label="Tangential shrinkage" unit="%" {...field('tangentialPct')} />
        <NumberField label="Volumetric shrinkage" unit="%" {...field('volumetricPct')} />
      </div>
      <div className="form-grid">
        <NumberField label="Change per 1 % MC, radial" {...field('changeRadial')} />
        <NumberField label="Change per 1 % MC, tangential" {...field('changeTangential')} />
      </div>
      <Select
        label="Resistance curve"
        hint="A close relative’s curve is better than none; your own oven-dry checks are better than either."
        options={curveOptions}
        {...field('curveId')}
      />
      <div className="form-grid">
        <NumberField label="Linear coefficient a" {...field('linearA')} />
        <NumberField label="Linear coefficient b" {...field('linearB')} />
      </div>
      <TextArea label="Note" hint="Where the figures are from, and what is missing." {...field('note')} />
    </FormDialog>
  );
}
