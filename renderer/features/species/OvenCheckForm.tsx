import { useState } from 'react';
import { type ConstantMassRule, constantMassRules } from '../../../shared-core/wood/moisture/oven-dry.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField, Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog, fieldsMarked } from '../../form/FormDialog.tsx';
import { TemperatureField } from '../../form/TemperatureField.tsx';
import { readTemperature, type TypedTemperature } from '../../form/wood-temp.ts';
import { useMeter } from '../../stores/meter.ts';
import { useUnits } from '../../stores/settings.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { emptyOvenCheck, type OvenCheckDraft, ovenCheckOf, ovenCheckProblems } from './oven-check-draft.ts';

const ruleOptions = (say: Say): readonly { value: ConstantMassRule; label: string }[] => [
  {
    value: 'EN 13183-1',
    label: say('oven.rule.en', { limitPct: 0.1, hours: constantMassRules['EN 13183-1'].hours }),
  },
  {
    value: 'ASTM D4442',
    label: say('oven.rule.astm', { hours: constantMassRules['ASTM D4442'].hours }),
  },
];

/** Adds a piece that was just read and weighed. */
export function OvenCheckForm({
  species,
  pieces,
  onClose,
}: {
  species: Species;
  /** Marks of the pieces that are there already. */
  pieces: readonly string[];
  onClose: () => void;
}) {
  const units = useUnits();
  const { say } = useWords();
  const [draft, setDraft] = useState<OvenCheckDraft>(() => emptyOvenCheck(pieces, units));
  const [temperature, setTemperature] = useState<TypedTemperature>({ typed: null, unknown: false });
  const [shown, setShown] = useState(false);
  const problems = ovenCheckProblems(draft);
  const woodTemp = readTemperature(temperature, units);
  const field = <K extends keyof OvenCheckDraft>(key: K) => ({
    value: draft[key],
    error: shown && problems[key] ? say(problems[key]) : undefined,
    onValue: (value: OvenCheckDraft[K]) => setDraft({ ...draft, [key]: value }),
  });

  async function save(): Promise<void> {
    setShown(true);
    if (Object.keys(problems).length > 0 || !woodTemp.ok) throw fieldsMarked();
    await bridge().command('ovenChecks.add', ovenCheckOf(draft, species.id, woodTemp.woodTempC));
  }

  return (
    <FormDialog
      title={say('oven.check-piece', { speciesName: species.name })}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
    >
      <p>{say('oven.check-lead')}</p>
      <TextField label={say('oven.mark')} maxLength={20} {...field('piece')} />
      <MeterChoice draft={draft} onDraft={setDraft} />
      <TextField
        label={say(draft.unit === 'pct' ? 'oven.readings-pct' : 'oven.readings-ohm')}
        hint={say('oven.readings-hint')}
        inputMode="text"
        {...field('readings')}
      />
      <TakeLive draft={draft} onDraft={setDraft} />
      <TemperatureField
        value={temperature}
        units={units}
        problem={shown && !woodTemp.ok ? woodTemp.problem : null}
        onValue={setTemperature}
      />
      <div className="form-grid">
        <NumberField label={say('oven.wet-weight')} unit="g" {...field('wetGrams')} />
        <NumberField
          label={say('oven.balance')}
          unit="g"
          hint={say('oven.balance-hint')}
          {...field('balanceGrams')}
        />
      </div>
      <Select label={say('oven.rule')} options={ruleOptions(say)} {...field('rule')} />
      <TextArea label={say('species.note')} {...field('note')} />
    </FormDialog>
  );
}

interface DraftProps {
  draft: OvenCheckDraft;
  onDraft: (draft: OvenCheckDraft) => void;
}

/** Which meter read the piece: checks of one do not correct another. */
function MeterChoice({ draft, onDraft }: DraftProps) {
  const { say } = useWords();
  const state = useMeter((meter) => meter.state);
  const live = useMeter((meter) => meter.live);
  if (state?.meterId == null) return null;
  return (
    <Select
      label={say('oven.meter')}
      hint={say('oven.meter-hint')}
      value={draft.meterId === null ? '' : String(draft.meterId)}
      options={[
        { value: '', label: say('oven.typed') },
        { value: String(state.meterId), label: state.deviceName ?? say('oven.connected-meter') },
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
  const { say, formats } = useWords();
  const live = useMeter((meter) => meter.live);
  if (draft.meterId === null) return null;
  const raw = live?.raw ?? null;
  return (
    <Button
      disabled={raw === null}
      onClick={() => onDraft({ ...draft, readings: `${draft.readings} ${raw}`.trim() })}
    >
      {raw === null || !live
        ? say('oven.no-value')
        : say('oven.take', { shownValue: rawText(raw, live.unit, formats) })}
    </Button>
  );
}
