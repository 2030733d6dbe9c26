import { useState } from 'react';
import type { ConstantMassRule } from '../../../shared-core/wood/moisture/oven-dry.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../bridge.ts';
import { Button } from '../../parts/Button.tsx';
import { NumberField, Select, TextArea, TextField } from '../../parts/Field.tsx';
import { FormDialog, fieldsMarked } from '../../parts/FormDialog.tsx';
import { rawWords } from '../../parts/McValue.tsx';
import { useMeter } from '../../stores/meter.ts';
import { useUnits } from '../../stores/settings.ts';
import { readTemperature, TemperatureField, type TypedTemperature } from '../round/TemperatureField.tsx';
import { emptyOvenCheck, type OvenCheckDraft, ovenCheckOf, ovenCheckProblems } from './oven-check-draft.ts';

const ruleOptions: readonly { value: ConstantMassRule; label: string }[] = [
  { value: 'EN 13183-1', label: 'EN 13183-1: 0.1 % of the mass in 2 h' },
  { value: 'ASTM D4442', label: 'ASTM D4442: twice the balance’s step in 3 h' },
];

/** Asks for a piece that was just read and weighed. */
export function OvenCheckForm({
  species,
  pieces,
  onClose,
}: {
  species: Species;
  /** Marks of the pieces there are. */
  pieces: readonly string[];
  onClose: () => void;
}) {
  const units = useUnits();
  const [draft, setDraft] = useState<OvenCheckDraft>(() => emptyOvenCheck(pieces, units));
  const [temperature, setTemperature] = useState<TypedTemperature>({ typed: null, unknown: false });
  const [shown, setShown] = useState(false);
  const problems = ovenCheckProblems(draft);
  const woodTemp = readTemperature(temperature, units);
  const field = <K extends keyof OvenCheckDraft>(key: K) => ({
    value: draft[key],
    error: shown ? problems[key] : undefined,
    onValue: (value: OvenCheckDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  async function save(): Promise<void> {
    setShown(true);
    if (Object.keys(problems).length > 0 || !woodTemp.ok) throw fieldsMarked();
    await bridge().command('ovenChecks.add', ovenCheckOf(draft, species.id, woodTemp.woodTempC));
  }

  return (
    <FormDialog
      title={`Check a piece of ${species.name}`}
      saveWords="Keep the check"
      onSave={save}
      onClose={onClose}
    >
      <p>
        Read it, then weigh it at once, before it goes into the oven. What is kept here is not changed later;
        a check that went wrong is set aside.
      </p>
      <TextField label="Mark on the piece" maxLength={20} {...field('piece')} />
      <MeterChoice draft={draft} onDraft={setDraft} />
      <TextField
        label={draft.unit === 'pct' ? 'Readings, % as the meter shows' : 'Readings, Ω'}
        hint="Two or three of the same piece, with spaces between them. Caution: pins are sharp; push them away from your other hand."
        inputMode="text"
        {...field('readings')}
      />
      <TakeLive draft={draft} onDraft={setDraft} />
      <TemperatureField
        value={temperature}
        units={units}
        error={shown && !woodTemp.ok ? woodTemp.sentence : null}
        onValue={setTemperature}
      />
      <div className="form-grid">
        <NumberField label="Wet mass" unit="g" {...field('wetGrams')} />
        <NumberField
          label="Smallest step of the balance"
          unit="g"
          hint="The finer, the smaller a piece may be."
          {...field('balanceGrams')}
        />
      </div>
      <Select label="It is dry when it loses no more than" options={ruleOptions} {...field('rule')} />
      <TextArea label="Note" {...field('note')} />
    </FormDialog>
  );
}

interface DraftProps {
  draft: OvenCheckDraft;
  onDraft: (draft: OvenCheckDraft) => void;
}

/** Which meter read the piece: checks of one say nothing of another. */
function MeterChoice({ draft, onDraft }: DraftProps) {
  const state = useMeter((meter) => meter.state);
  const live = useMeter((meter) => meter.live);
  if (state?.meterId == null) return null;
  return (
    <Select
      label="Read with"
      hint="Checks made with one meter correct the readings of that meter only."
      value={draft.meterId === null ? '' : String(draft.meterId)}
      options={[
        { value: '', label: 'A meter that is read by eye' },
        { value: String(state.meterId), label: state.deviceName ?? 'The connected meter' },
      ]}
      onValue={(value) =>
        onDraft({
          ...draft,
          meterId: value === '' ? null : Number(value),
          unit: value === '' ? 'pct' : (state.description?.unit ?? live?.unit ?? 'pct'),
        })
      }
    />
  );
}

/** Puts the live value of the chosen meter into the row of readings. */
function TakeLive({ draft, onDraft }: DraftProps) {
  const live = useMeter((meter) => meter.live);
  if (draft.meterId === null) return null;
  const raw = live?.raw ?? null;
  return (
    <Button
      disabled={raw === null}
      onClick={() => onDraft({ ...draft, readings: `${draft.readings} ${raw}`.trim() })}
    >
      {raw === null || !live ? 'No value: push the pins in' : `Take ${rawWords(raw, live.unit)}`}
    </Button>
  );
}
