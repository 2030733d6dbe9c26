import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { type MeterProfile, unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../data/bridge.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';
import { ProfileFields } from './ProfileFields.tsx';
import { profileDraft, profileDraftSchema } from './profile-draft.ts';

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
      await bridge().command('meters.add', { ...made, roundId });
      return;
    }
    await edit.save(made);
    if (roundId !== null) await bridge().command('meters.updateEarlier', { meterId: meter.id, roundId });
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
