import { useId } from 'react';
import type { SpeciesRow } from '../../../shared-core/contract/requests/catalog.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { NumberField, Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { asSaved, inWords } from './built-in-texts.ts';
import { draftOfSpecies, type SpeciesDraft, speciesDraftSchema } from './species-draft.ts';

const curveOptions = (named: (name: string) => string) =>
  Array.from(resistanceCurves, ([value, curve]) => ({
    value,
    label: named(curve.name),
    isName: true,
  })).sort((a, b) => a.label.localeCompare(b.label));

/** Edits a species' names and figures; what is not known stays empty. A new one, begun with `start`, where `species` is null. */
export function SpeciesForm({
  title,
  species,
  start,
  onClose,
}: {
  title: string;
  species: SpeciesRow | null;
  start: SpeciesDraft;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const edit = useEdit('species.edit', species);
  const shown = (draft: SpeciesDraft) => inWords(draft, formats.named);
  const theirs = edit.theirs && shown(draftOfSpecies(edit.theirs));
  const { field, read, refill } = useDraft(speciesDraftSchema, shown(start), theirs);
  const groups = useId();
  const allSpecies = useQuery('species.list', {}).output ?? [];

  async function save(): Promise<void> {
    const made = asSaved(read(), edit.base ?? start, formats.named, [
      ...allSpecies.map(({ group }) => group),
      start.group,
    ]);
    if (edit.base) {
      const { isDamaged } = edit.base;
      await edit.save(made, isDamaged ? null : speciesDraftSchema.parse(draftOfSpecies(edit.base)));
    } else {
      const id = newSpeciesId(made.name, new Set(allSpecies.map((each) => each.id)));
      await bridge().command('species.add', { ...made, id });
    }
  }

  return (
    <FormDialog
      title={title}
      saveWords={say(species ? 'common.save' : 'common.add')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict((saved) => refill(shown(draftOfSpecies(saved))))}
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
        {Array.from(new Set(allSpecies.map((each) => each.group)), (group) => (
          <option key={group} value={formats.named(group)} translate="no" />
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
        options={[{ value: '', label: say('species.curve-none') }, ...curveOptions(formats.named)]}
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
