import { useState } from 'react';
import { newOvenCheckSchema } from '../../../shared-core/contract/oven-checks.ts';
import { parseDecimals } from '../../../shared-core/units/decimal.ts';
import { megohmsOf, ohmsOfMegohms } from '../../../shared-core/units/typed-ohms.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { constantMassRules } from '../../../shared-core/wood/moisture/oven-dry.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { NumberField, Select, TextArea, TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { TemperatureField, useWoodTemp } from '../../form/TemperatureField.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useMeter } from '../../stores/meter.ts';
import { useUnits } from '../../stores/settings.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

const pieceSchema = newOvenCheckSchema.omit({ woodTempC: true });

/** Of a balance that is fine enough (common practice, no source). */
const USUAL_STEP_GRAMS = 0.1;

/** Numbers typed in a row, in the meter's unit: %, or megohms as Ω. */
const readingsIn = (text: string, unit: ReadingUnit): number[] =>
  parseDecimals(text).map((typed) => (unit === 'ohm' ? ohmsOfMegohms(typed) : typed));

/** A mark that continues those there are. */
function nextMark(pieces: readonly string[]): string {
  let number = pieces.length + 1;
  while (pieces.includes(String(number))) number++;
  return String(number);
}

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
  const { draft, set, field, read } = useDraft(pieceSchema, {
    speciesId: species.id,
    piece: nextMark(pieces),
    meterId: null,
    unit: 'pct',
    readings: [],
    wetGrams: null,
    balanceGrams: USUAL_STEP_GRAMS,
    rule: units === 'imperial' ? 'ASTM D4442' : 'EN 13183-1',
    note: '',
  });
  const [typed, setTyped] = useState('');
  const answer = useWoodTemp({ woodTempC: null, unknown: false });
  const connectedId = useMeter(({ state }) => state?.meterId);
  const { error, onBlur } = field('readings');
  const { 'EN 13183-1': en, 'ASTM D4442': astm } = constantMassRules;
  const type = (text: string): void => {
    setTyped(text);
    set({ readings: readingsIn(text, draft.unit) });
  };

  return (
    <FormDialog
      title={say('oven.check-piece', { speciesName: species.name })}
      saveWords={say('common.save')}
      onSave={() => {
        answer.show();
        return bridge().command('ovenChecks.add', { ...read(), woodTempC: answer.read() });
      }}
      onClose={onClose}
    >
      <p>{say('oven.check-lead')}</p>
      <TextField label={say('oven.mark')} maxLength={20} {...field('piece')} />
      <MeterChoice
        meterId={draft.meterId}
        onMeter={(meterId, unit) => set({ meterId, unit, readings: readingsIn(typed, unit) })}
      />
      <TextField
        label={say(draft.unit === 'pct' ? 'oven.readings-pct' : 'oven.readings-ohm')}
        hint={say('oven.readings-hint')}
        inputMode="text"
        {...{ error, onBlur }}
        value={typed}
        onValue={type}
      />
      {draft.meterId !== null && draft.meterId === connectedId && (
        <TakeLive onValue={(raw) => type(`${typed} ${draft.unit === 'ohm' ? megohmsOf(raw) : raw}`.trim())} />
      )}
      <TemperatureField answer={answer} />
      <div className="form-grid">
        <NumberField label={say('oven.wet-weight')} unit="g" {...field('wetGrams')} />
        <NumberField
          label={say('oven.balance')}
          unit="g"
          hint={say('oven.balance-hint')}
          {...field('balanceGrams')}
        />
      </div>
      <Select
        label={say('oven.rule')}
        options={[
          { value: 'EN 13183-1', label: say('oven.rule.en', { limitPct: 0.1, hours: en.hours }) },
          { value: 'ASTM D4442', label: say('oven.rule.astm', { hours: astm.hours }) },
        ]}
        {...field('rule')}
      />
      <TextArea label={say('species.note')} {...field('note')} />
    </FormDialog>
  );
}

/** Which meter read the piece: checks of one do not correct another. A hand meter's values are typed, as those of no meter. */
function MeterChoice({
  meterId,
  onMeter,
}: {
  meterId: number | null;
  onMeter: (meterId: number | null, unit: ReadingUnit) => void;
}) {
  const { say } = useWords();
  const { output } = useQuery('meters.list', {});
  const state = useMeter((meter) => meter.state);
  const live = useMeter((meter) => meter.live);
  const handMeters = output?.filter(({ kind, id }) => kind === 'typed' && id !== state?.meterId) ?? [];
  const connected =
    state?.meterId == null
      ? []
      : [{ value: state.meterId, label: state.deviceName ?? say('oven.connected-meter') }];
  if (connected.length + handMeters.length === 0) return null;
  const unitOf = (chosen: number | null): ReadingUnit => {
    const handMeter = handMeters.find(({ id }) => id === chosen);
    if (handMeter) return handMeter.unit ?? 'pct';
    return (chosen !== null && (state?.description?.unit ?? live?.unit)) || 'pct';
  };
  return (
    <Select
      label={say('oven.meter')}
      hint={say('oven.meter-hint')}
      value={meterId}
      options={[
        { value: null, label: say('oven.typed') },
        ...handMeters.map(({ id, name }) => ({ value: id, label: name, isName: true })),
        ...connected,
      ]}
      onValue={(chosen) => onMeter(chosen, unitOf(chosen))}
    />
  );
}

/** Takes the live value of the chosen meter into the row of readings. */
function TakeLive({ onValue }: { onValue: (raw: number) => void }) {
  const { say, formats } = useWords();
  const live = useMeter((meter) => meter.live);
  const raw = live?.raw ?? null;
  return (
    <Button disabled={raw === null} onClick={() => raw !== null && onValue(raw)}>
      {raw === null || !live
        ? say('oven.no-value')
        : say('oven.take', { shownValue: rawText(raw, live.unit, formats) })}
    </Button>
  );
}
