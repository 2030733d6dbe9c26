import { useState } from 'react';
import type { MeterOfYard } from '../../../shared-core/contract/meter.ts';
import { type MeterProfile, unknownProfile } from '../../../shared-core/probing/readings/meter-profile.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { bridge } from '../../data/bridge.ts';
import { newestAct } from '../../data/own-acts.ts';
import { useEdit } from '../../data/useEdit.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Choice } from '../../form/Choice.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellDone, tellUndoable } from '../../stores/notices.ts';
import { chosenForTyping, useTypingMeter } from '../../stores/typing-meter.ts';
import { useYard } from '../../stores/yard.ts';
import { useWords } from '../../words.ts';
import { ProfileFields } from './ProfileFields.tsx';
import { profileDraft, profileDraftSchema } from './profile-draft.ts';

/** Asks what a meter's values mean and what its pins reach; of a new hand meter where `meter` is null. */
export function ProfileForm(props: {
  meter: MeterOfYard | null;
  /** The round in which it was asked: its readings get the answer, too. */
  roundId?: number;
  /** It is added to be read from next. */
  isForRound?: boolean;
  onClose: () => void;
}) {
  const { output } = useQuery('species.list', {});
  const meters = useQuery('meters.list', {}).output;
  return output && meters && <Form {...props} allSpecies={output} meters={meters} />;
}

/** The usual name, with a number where a meter has it. */
function freeName(meters: readonly MeterOfYard[], say: Say): string {
  const taken = new Set(meters.map(({ name }) => name.toLowerCase()));
  let number = 1;
  const usual = () => say('meter-profile.usual-name', { number });
  while (taken.has(usual().toLowerCase())) number += 1;
  return usual();
}

function Form({
  meter,
  roundId = null,
  isForRound = false,
  onClose,
  allSpecies,
  meters,
}: {
  meter: MeterOfYard | null;
  roundId?: number | null;
  isForRound?: boolean;
  onClose: () => void;
  allSpecies: readonly Species[];
  meters: readonly MeterOfYard[];
}) {
  const { say } = useWords();
  const inUse = useTypingMeter() ?? null;
  const edit = useEdit('meters.edit', meter);
  const yard = useYard(({ info }) => info?.uuid ?? null);
  const [used, setUsed] = useState<'yes' | 'no'>(isForRound ? 'yes' : 'no');
  const draftOf = ({ name, profile }: { name: string; profile: MeterProfile | null }) =>
    profileDraft({ name, profile: profile ?? unknownProfile }, allSpecies);
  const answers = useDraft(
    profileDraftSchema(allSpecies),
    draftOf(meter ?? { name: freeName(meters, say), profile: null }),
    edit.theirs && draftOf(edit.theirs),
  );

  const newName = answers.draft.name.trim();

  async function save(): Promise<void> {
    const made = answers.read();
    if (meter === null) {
      const { name: meterName } = made;
      const isTypedFrom = inUse === null || used === 'yes';
      const { meterId } = await bridge().command('meters.add', { ...made, roundId, isTypedFrom });
      if (isTypedFrom) chosenForTyping(meterId);
      tellDone(
        isTypedFrom
          ? say('meters.added', { meterName })
          : say('meters.added-aside', { meterName, usedName: inUse.name }),
      );
      return;
    }
    const before = edit.theirs ?? edit.base;
    const doneBefore = newestAct('done', yard);
    const saved = await edit.save(made);
    const editing = newestAct('done', yard);
    const moved =
      roundId === null
        ? null
        : await bridge().command('meters.updateEarlier', { meterId: meter.id, roundId });
    // Before anybody was asked there was nothing to go back to.
    if (!saved || !before?.profile || saved.version === before.version) return;
    tellUndoable(say('meters.edited', { meterName: saved.name }), async (work) => {
      if (moved && moved.readings > 0) await bridge().command('acts.undo', { act: moved.act, work });
      if (editing !== null && editing !== doneBefore)
        await bridge().command('acts.undo', { act: editing, work });
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
        hasScale={meter?.kind === 'typed' || meter?.unit !== 'ohm'}
        mayBeOhms={meter === null || meter.kind === 'typed'}
      />
      {meter === null && inUse !== null && (
        <Choice
          label={say('meters.used-now')}
          value={used}
          options={[
            { value: 'yes', label: newName || say('meters.used-new'), isName: newName !== '' },
            { value: 'no', label: say('meters.used-before', { usedName: inUse.name }) },
          ]}
          onValue={setUsed}
        />
      )}
    </FormDialog>
  );
}
