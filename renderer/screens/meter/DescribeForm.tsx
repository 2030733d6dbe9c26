import { useState } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { formatTakesExponent, octetsOfFormat } from '../../../shared-core/gatt/value.ts';
import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { resistanceCurves } from '../../../shared-core/wood/species/catalogue.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Actions, Button } from '../../parts/Button.tsx';
import { NumberField, Select } from '../../parts/Field.tsx';
import { rawWords } from '../../parts/McValue.tsx';
import { showMeter } from '../../stores/meter.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Bytes } from './Bytes.tsx';
import {
  type DescriptionForm,
  type FormProblems,
  keyOf,
  previewOf,
  readForm,
  startForm,
} from './description-form.ts';
import { formatWords, readableFormats } from './formats.ts';

/** Says once how a meter's bytes are read, on live bytes: the preview must show what the meter's own display shows. */
export function DescribeForm({ state, onDone }: { state: MeterState; onDone: () => void }) {
  const units = useUnits();
  const [form, setForm] = useState(() => startForm(state.description, state.characteristics, units));
  const [problems, setProblems] = useState<FormProblems>({});
  const set =
    <K extends keyof DescriptionForm>(field: K) =>
    (value: DescriptionForm[K]) =>
      setForm((before) => ({ ...before, [field]: value }));

  async function save(): Promise<void> {
    const read = readForm(form, units);
    setProblems(read.ok ? {} : read.problems);
    if (!read.ok) return;
    const described = await attempt(bridge().command('meter.describe', read.description));
    if (!described) return;
    showMeter(described);
    tellDone('The meter is described. It is remembered for the next time it is met.');
    onDone();
  }

  return (
    <form
      className="describe-form"
      aria-label="Describe the meter"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>
        Push the pins into a board, look at the meter’s own display, and change what is below until the
        preview shows the same.
      </p>
      <Preview form={form} state={state} />
      <div className="form-grid">
        <Select
          label="Characteristic"
          value={form.characteristic}
          error={problems.characteristic}
          options={[
            ...(form.characteristic === '' ? [{ value: '', label: 'Choose one' }] : []),
            ...state.characteristics
              .filter((each) => each.canNotify)
              .map((each) => ({
                value: keyOf(each),
                label: [each.userDescription, each.characteristicUuid].filter(Boolean).join(' · '),
              })),
          ]}
          onValue={set('characteristic')}
        />
        <Select
          label="Format"
          value={String(form.format)}
          options={readableFormats.map((format) => ({ value: String(format), label: formatWords(format) }))}
          onValue={(value) => set('format')(Number(value))}
        />
        <NumberField
          label="First byte of the value"
          hint="0 is the first."
          value={form.byteOffset}
          error={problems.byteOffset}
          onValue={set('byteOffset')}
        />
        <NumberField
          label="Power of ten"
          hint="−1 where 126 means 12.6."
          value={form.exponent}
          error={problems.exponent}
          disabled={!formatTakesExponent(form.format)}
          onValue={set('exponent')}
        />
        <NumberField label="Times" value={form.scale} error={problems.scale} onValue={set('scale')} />
        <NumberField label="Plus" value={form.offset} error={problems.offset} onValue={set('offset')} />
        <Select
          label="It is"
          value={form.unit}
          options={[
            { value: 'pct', label: '% moisture content' },
            { value: 'ohm', label: 'resistance in ohms' },
          ]}
          onValue={set('unit')}
        />
        <NumberField
          label="Smallest it can show"
          value={form.min}
          error={problems.min}
          onValue={set('min')}
        />
        <NumberField label="Largest it can show" value={form.max} error={problems.max} onValue={set('max')} />
        {form.unit === 'pct' && (
          <>
            <Select
              label="Wood its scale was made for"
              hint="It stands in the meter’s manual."
              value={form.basisCurveId}
              options={[
                { value: '', label: 'Not known' },
                ...[...resistanceCurves].map(([id, curve]) => ({ value: id, label: curve.name })),
              ]}
              onValue={set('basisCurveId')}
            />
            {form.basisCurveId !== '' && (
              <NumberField
                label="At a wood temperature of"
                unit={temperatureUnit(units)}
                value={form.basisTemp}
                error={problems.basisTemp}
                onValue={set('basisTemp')}
              />
            )}
          </>
        )}
      </div>
      <Actions>
        <Button type="submit" kind="main">
          Read it this way
        </Button>
        {state.phase !== 'needs-description' && <Button onClick={onDone}>Leave it as it was</Button>}
      </Actions>
    </form>
  );
}

/** What the newest bytes would be, read as the form says. */
function Preview({ form, state }: { form: DescriptionForm; state: MeterState }) {
  const preview = previewOf(form, state.characteristics);
  const hex = state.characteristics.find((each) => keyOf(each) === form.characteristic)?.lastBytesHex;
  if (preview === null || !hex) {
    return <Banner>No bytes have come from this characteristic yet, so there is nothing to preview.</Banner>;
  }
  return (
    <div className="preview" role="status" aria-label="Preview">
      <Bytes hex={hex} from={form.byteOffset ?? 0} count={octetsOfFormat(form.format)} />
      <span aria-hidden="true">→</span>
      {preview.ok ? <strong>{rawWords(preview.value, form.unit)}</strong> : <span>{preview.why}</span>}
    </div>
  );
}
