import type { Species } from '../../../shared-core/wood/species/species.ts';
import { Choice } from '../../form/Choice.tsx';
import { NumberField, Select, TextField } from '../../form/Field.tsx';
import { LengthField, TempField } from '../../form/MeasureFields.tsx';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import type { Fields } from '../../form/useDraft.ts';
import { Unfold } from '../../ui/Unfold.tsx';
import { useWords } from '../../words.ts';
import { type Answer, type ProfileDraft, USUAL_PINS_MM, USUAL_SCALE_TEMP_C } from './profile-draft.ts';

/** What a meter is set to, whether it corrects for temperature, and its pins. */
export function ProfileFields({
  answers,
  allSpecies,
  hasName,
  hasScale,
  mayBeOhms,
}: {
  answers: Fields<ProfileDraft>;
  allSpecies: readonly Species[];
  hasName: boolean;
  /** False of one that sends ohms. */
  hasScale: boolean;
  /** Whether values of it may be typed in ohms. */
  mayBeOhms: boolean;
}) {
  const { say } = useWords();
  return (
    <>
      {hasName && <TextField label={say('meter-profile.name')} {...answers.field('name')} />}
      {hasScale && <ScaleFields {...{ answers, allSpecies, mayBeOhms }} />}
      <PinFields answers={answers} />
      <Unfold words={say('meter-profile.more')}>
        <NumberField
          label={say('meter-profile.accuracy')}
          unit={say('meter-profile.accuracy-unit')}
          hint={say('meter-profile.accuracy-hint')}
          {...answers.field('accuracyPct')}
        />
      </Unfold>
    </>
  );
}

function ScaleFields({
  answers: { draft, field },
  allSpecies,
  mayBeOhms,
}: {
  answers: Fields<ProfileDraft>;
  allSpecies: readonly Species[];
  mayBeOhms: boolean;
}) {
  const { say } = useWords();
  const { value: scale, onValue: setScale } = field('scale');
  return (
    <>
      <Choice
        label={say('meter-profile.scale')}
        value={scale ?? 'unknown'}
        options={[
          { value: 'usual', label: say('meter-profile.scale.usual') },
          { value: 'species', label: say('meter-profile.scale.species') },
          ...(mayBeOhms ? [{ value: 'ohms' as const, label: say('meter-profile.scale.ohms') }] : []),
          { value: 'unknown', label: say('meter-profile.unknown') },
        ]}
        onValue={setScale}
      />
      {scale === 'species' && (
        <SpeciesField label={say('meter-profile.species')} allSpecies={allSpecies} {...field('speciesId')} />
      )}
      {scale !== 'ohms' && (
        <AnswerField
          label={say('meter-profile.compensates')}
          yes={say('meter-profile.compensates.yes')}
          no={say('meter-profile.compensates.no')}
          {...field('compensates')}
        />
      )}
      {scale === 'species' && draft.compensates !== 'yes' && (
        <TempField
          label={say('meter-profile.scale-temp')}
          hint={say('meter-profile.scale-temp-hint', { usualTempC: USUAL_SCALE_TEMP_C })}
          {...field('scaleTempC')}
        />
      )}
    </>
  );
}

function PinFields({ answers: { draft, field } }: { answers: Fields<ProfileDraft> }) {
  const { say, formats } = useWords();
  return (
    <>
      <Select
        label={say('meter-profile.pins')}
        {...field('pins')}
        options={[
          { value: 'unknown', label: say('meter-profile.unknown') },
          ...USUAL_PINS_MM.map((mm) => ({ value: String(mm), label: formats.shortLength(mm) })),
          { value: 'other', label: say('meter-profile.pins-other') },
        ]}
      />
      {draft.pins === 'other' && <LengthField label={say('meter-profile.pin-length')} {...field('pinsMm')} />}
      <AnswerField
        label={say('meter-profile.insulated')}
        yes={say('meter-profile.insulated.yes')}
        no={say('meter-profile.insulated.no')}
        {...field('insulated')}
      />
    </>
  );
}

function AnswerField({
  label,
  yes,
  no,
  value,
  onValue,
}: {
  label: string;
  yes: string;
  no: string;
  value: Answer | null;
  onValue: (value: Answer) => void;
}) {
  const { say } = useWords();
  return (
    <Choice
      label={label}
      value={value ?? 'unknown'}
      options={[
        { value: 'yes', label: yes },
        { value: 'no', label: no },
        { value: 'unknown', label: say('meter-profile.unknown') },
      ]}
      onValue={onValue}
    />
  );
}
