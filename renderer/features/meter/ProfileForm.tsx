import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { type MeterProfile, unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { ProfileFields } from './ProfileFields.tsx';
import { profileDraft, profileDraftSchema } from './profile-draft.ts';

const metersNow = () => bridge().query('meters.list', {});

/** Asks what a meter's values mean and what its pins reach; of a new hand meter where `meter` is null. */
export function ProfileForm(props: {
  meter: MeterOfYard | null;
  /** The round in which it was asked: its readings get the answer, too. */
  roundId?: number;
  onClose: () => void;
}) {
  const { output } = useQuery('species.list', {});
  return output && <Form {...props} allSpecies={output} />;
}

function Form({
  meter,
  roundId = null,
  onClose,
  allSpecies,
}: {
  meter: MeterOfYard | null;
  roundId?: number | null;
  onClose: () => void;
  allSpecies: readonly Species[];
}) {
  const { say } = useWords();
  const edit = useEdit('meters.edit', meter);
  const draftOf = ({ name, profile }: { name: string; profile: MeterProfile | null }) =>
    profileDraft({ name, profile: profile ?? unknownProfile }, allSpecies);
  const answers = useDraft(
    profileDraftSchema(allSpecies),
    draftOf(meter ?? { name: say('meter-profile.usual-name'), profile: null }),
    edit.theirs && draftOf(edit.theirs),
  );

  async function save(): Promise<void> {
    const made = answers.read();
    if (meter === null) {
      const before = (await metersNow()).find(({ isTypedFrom }) => isTypedFrom);
      const { readings } = await bridge().command('meters.add', { ...made, roundId });
      // With readings it stays: they are moved from it one by one.
      if (readings === 0) await tellAdded(made.name, before);
      return;
    }
    const before = edit.theirs ?? edit.base;
    const saved = await edit.save(made);
    const moved =
      roundId === null
        ? null
        : await bridge().command('meters.updateEarlier', { meterId: meter.id, roundId });
    // Before anybody was asked there was nothing to go back to.
    if (!saved || !before?.profile || saved.version === before.version) return;
    const { name, profile } = before;
    tellUndoable(say('meters.edited', { meterName: saved.name }), async () => {
      if (moved && moved.readings > 0) await bridge().command('readings.undoSetMeter', { act: moved.act });
      const changed = meter.kind === 'typed' ? { name, profile } : { profile };
      return bridge().command('meters.edit', { id: meter.id, basedOn: saved.version, changed });
    });
  }

  /** Undone, values are typed from the meter before again. */
  async function tellAdded(meterName: string, before: MeterOfYard | undefined): Promise<void> {
    const added = (await metersNow()).findLast(({ kind }) => kind === 'typed');
    if (!added) return;
    tellUndoable(say('meters.added', { meterName }), async () => {
      await bridge().command('meters.delete', { meterId: added.id });
      if (before) await bridge().command('meters.typeFrom', { meterId: before.id });
    });
  }

  return (
    <FormDialog
      title={meter ? say('meter-profile.title', { meterName: meter.name }) : say('meter-profile.title-new')}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
      conflict={edit.conflict((saved) => answers.refill(draftOf(saved)))}
    >
      <ProfileFields
        answers={answers}
        allSpecies={allSpecies}
        hasName={meter === null || meter.kind === 'typed'}
        hasScale={meter?.unit !== 'ohm'}
      />
    </FormDialog>
  );
}
