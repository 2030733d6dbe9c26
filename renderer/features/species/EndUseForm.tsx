import { useState } from 'react';
import type { EndUseRow } from '../../../shared-core/contract/requests/catalog.ts';
import { cautionsOfReady } from '../../../shared-core/probing/calls/cautions.ts';
import { HARM } from '../../../shared-core/probing/calls/decide.ts';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import { type EndUse, newEndUseSchema } from '../../../shared-core/wood/species/end-use.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Checkbox, NumberField, Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { type Draft, useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { asSaved, inWords } from './built-in-texts.ts';
import { sourceShown } from './source-shown.ts';

/** What a new use begins with. */
export const emptyUse: Draft<EndUse> = {
  id: 'new',
  name: '',
  minPct: null,
  maxPct: null,
  tolerancePoints: 2,
  minIsAdvice: false,
  maxShellCorePct: 2,
  cautions: [],
  note: '',
  source: '',
};

/** Without the mark of what was not checked against a page, which is for the methods page. */
const draftOfUse = (endUse: EndUse): EndUse => ({ ...endUse, source: sourceShown(endUse.source) });

/** Edits a use and its limits; adds a new one, begun with `start`, where `endUse` is null. */
export function EndUseForm({
  endUse,
  start = emptyUse,
  onClose,
}: {
  endUse: EndUseRow | null;
  start?: Draft<EndUse>;
  onClose: () => void;
}) {
  const { say, formats } = useWords();
  const edit = useEdit('endUses.edit', endUse);
  const shown = (draft: Draft<EndUse>) => inWords(draft, formats.named);
  const theirs = edit.theirs && shown(draftOfUse(edit.theirs));
  const { draft, set, field, read, refill } = useDraft(
    newEndUseSchema,
    shown(endUse ? draftOfUse(endUse) : start),
    theirs,
  );

  async function save(): Promise<void> {
    const made = asSaved(read(), edit.base ?? start, formats.named);
    if (edit.base) await edit.save(made, edit.base.isDamaged ? null : draftOfUse(edit.base));
    else {
      // Ids of uses are made as those of species are.
      const endUses = await bridge().query('endUses.list', {});
      const id = newSpeciesId(made.name, new Set(endUses.map((other) => other.id)));
      await bridge().command('endUses.add', { ...made, id });
    }
  }

  return (
    <FormDialog
      title={endUse ? say('use.edit', { useName: endUse.name }) : say('use.add')}
      saveWords={say(endUse ? 'common.save' : 'common.add')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict((saved) => refill(shown(draftOfUse(saved))))}
    >
      {endUse ? <p>{say('use.effect')}</p> : start === emptyUse && <BeginWith onChosen={set} />}
      <TextField label={say('species.name')} {...field('name')} />
      <div className="form-grid">
        <NumberField label={say('use.lowest')} unit="%" {...field('minPct')} />
        <NumberField label={say('use.highest')} unit="%" {...field('maxPct')} />
      </div>
      <NumberField
        label={say('use.tolerance')}
        unit={say('use.points')}
        hint={say('use.tolerance-hint', { oneIn: 1 / HARM })}
        {...field('tolerancePoints')}
      />
      <Checkbox
        label={say('use.drier-serves')}
        hint={say('use.drier-serves-hint')}
        checked={draft.minIsAdvice ?? false}
        onChecked={(minIsAdvice) => set({ minIsAdvice })}
      />
      <NumberField
        label={say('use.shell-core')}
        unit={say('use.points')}
        hint={say('use.shell-core-hint')}
        {...field('maxShellCorePct')}
      />
      {(['structural', 'firewood'] as const).map((caution) => (
        <Checkbox
          key={caution}
          label={say('use.caution', { caution })}
          hint={cautionsOfReady([caution])
            .map((each) => say(each))
            .join(' ')}
          checked={draft.cautions?.includes(caution) ?? false}
          onChecked={(isOn) => {
            const others = (draft.cautions ?? []).filter((each) => each !== caution);
            set({ cautions: isOn ? [...others, caution] : others });
          }}
        />
      ))}
      <TextArea label={say('species.note')} {...field('note')} />
      <TextArea label={say('species.source')} {...field('source')} />
    </FormDialog>
  );
}

/** A copy of a use keeps what that asks for and what it cautions of; its name, note and source are its own. */
function BeginWith({ onChosen }: { onChosen: (begun: Partial<EndUse>) => void }) {
  const { say, formats } = useWords();
  const [chosen, setChosen] = useState<string | null>(null);
  const endUses = useQuery('endUses.list', {}).output ?? [];
  return (
    <Select
      label={say('use.begin-with')}
      value={chosen}
      options={[
        { value: null, label: say('use.begin-blank') },
        ...endUses.map(({ id, name }) => ({ value: id, label: formats.named(name), isName: true })),
      ]}
      onValue={(id) => {
        setChosen(id);
        const from = endUses.find((each) => each.id === id);
        if (!from) return;
        const { minPct, maxPct, tolerancePoints, minIsAdvice, maxShellCorePct, cautions } = from;
        onChosen({ minPct, maxPct, tolerancePoints, minIsAdvice, maxShellCorePct, cautions });
      }}
    />
  );
}
