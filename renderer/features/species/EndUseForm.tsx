import type { EndUseRow } from '../../../shared-core/contract/requests/catalog.ts';
import { newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';
import { type EndUse, newEndUseSchema } from '../../../shared-core/wood/species/end-use.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { Checkbox, NumberField, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { type Draft, useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
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
  note: '',
  source: '',
};

/** Without the mark of what nobody looked up, which is for the methods page. */
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
  const { say } = useWords();
  const edit = useEdit('endUses.edit', endUse);
  const theirs = edit.theirs && draftOfUse(edit.theirs);
  const { draft, set, field, read, refill } = useDraft(
    newEndUseSchema,
    endUse ? draftOfUse(endUse) : start,
    theirs,
  );

  async function save(): Promise<void> {
    const made = read();
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
      conflict={edit.conflict((saved) => refill(draftOfUse(saved)))}
    >
      {endUse && <p>{say('use.effect')}</p>}
      <TextField label={say('species.name')} {...field('name')} />
      <div className="form-grid">
        <NumberField label={say('use.lowest')} unit="%" {...field('minPct')} />
        <NumberField label={say('use.highest')} unit="%" {...field('maxPct')} />
      </div>
      <NumberField
        label={say('use.tolerance')}
        unit={say('use.points')}
        hint={say('use.tolerance-hint')}
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
      <TextArea label={say('species.note')} {...field('note')} />
      <TextArea label={say('species.source')} {...field('source')} />
    </FormDialog>
  );
}
