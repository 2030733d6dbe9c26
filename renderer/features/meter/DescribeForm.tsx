import { useState } from 'react';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { formatTakesExponent, octetsOfFormat, readableFormats } from '../../../shared-core/gatt/value.ts';
import { temperatureUnit } from '../../../shared-core/units/temperature.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField, Select } from '../../form/Field.tsx';
import { showMeter } from '../../stores/meter.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { Bytes } from './Bytes.tsx';
import {
  type DescriptionForm,
  type FormProblems,
  keyOf,
  previewOf,
  readForm,
  startForm,
} from './description-form.ts';
import { formatName } from './formats.ts';

/** Says once how a meter's bytes are read, on live bytes: the preview must show what the meter's own display shows. */
export function DescribeForm({ state, onDone }: { state: MeterState; onDone: () => void }) {
  const units = useUnits();
  const { say } = useWords();
  const [form, setForm] = useState(() => startForm(state.description, state.characteristics, units));
  const [problems, setProblems] = useState<FormProblems>({});
  /** What a field needs to show and change one part of the description. */
  const field = <K extends keyof DescriptionForm>(key: K) => ({
    value: form[key],
    error: problems[key] ? say(problems[key]) : null,
    onValue: (value: DescriptionForm[K]) => setForm((before) => ({ ...before, [key]: value })),
  });

  async function save(): Promise<void> {
    const read = readForm(form, units);
    setProblems(read.ok ? {} : read.problems);
    if (!read.ok) return;
    const described = await attempt(bridge().command('meter.describe', read.description));
    if (!described) return;
    showMeter(described);
    tellDone(say('meter.form.saved'));
    onDone();
  }

  return (
    <form
      className="describe-form"
      aria-label={say('meter.form.title')}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>{say('meter.form.how')}</p>
      <Preview form={form} state={state} />
      <div className="form-grid">
        <Select
          label={say('meter.form.characteristic')}
          options={[
            ...(form.characteristic === ''
              ? [{ value: '', label: say('meter.form.characteristic-choose') }]
              : []),
            ...state.characteristics
              .filter((each) => each.canNotify)
              .map((each) => ({
                value: keyOf(each),
                label: [each.userDescription, each.characteristicUuid].filter(Boolean).join(' · '),
                isName: true,
              })),
          ]}
          {...field('characteristic')}
        />
        <Select
          label={say('meter.reading.format')}
          value={String(form.format)}
          options={readableFormats.map((format) => ({
            value: String(format),
            label: say(formatName(format)),
          }))}
          onValue={(value) => field('format').onValue(Number(value))}
        />
        <NumberField
          label={say('meter.reading.first-byte')}
          hint={say('meter.form.first-byte-hint')}
          {...field('byteOffset')}
        />
        <Select
          label={say('meter.reading.byte-order')}
          options={[
            { value: 'low-first', label: say('meter.reading.low-first') },
            { value: 'high-first', label: say('meter.reading.high-first') },
          ]}
          {...field('byteOrder')}
        />
        <NumberField
          label={say('meter.reading.power')}
          hint={say('meter.form.power-hint')}
          disabled={!formatTakesExponent(form.format)}
          {...field('exponent')}
        />
        <NumberField label={say('meter.form.times')} {...field('scale')} />
        <NumberField label={say('meter.form.plus')} {...field('offset')} />
        <Select
          label={say('meter.reading.unit')}
          options={[
            { value: 'pct', label: say('meter.reading.unit-pct') },
            { value: 'ohm', label: say('meter.reading.unit-ohm') },
          ]}
          {...field('unit')}
        />
        <NumberField label={say('meter.form.lowest')} {...field('min')} />
        <NumberField label={say('meter.form.highest')} {...field('max')} />
        {form.unit === 'pct' && (
          <>
            <Select
              label={say('meter.form.basis')}
              hint={say('meter.form.basis-hint')}
              options={[
                { value: '', label: say('meter.form.basis-unknown') },
                ...[...resistanceCurves].map(([id, curve]) => ({
                  value: id,
                  label: curve.name,
                  isName: true,
                })),
              ]}
              {...field('basisCurveId')}
            />
            {form.basisCurveId !== '' && (
              <NumberField
                label={say('meter.form.basis-temp')}
                unit={temperatureUnit(units)}
                {...field('basisTemp')}
              />
            )}
          </>
        )}
      </div>
      <Actions>
        <Button type="submit" kind="main">
          {say('meter.form.save')}
        </Button>
        {state.phase !== 'needs-description' && <Button onClick={onDone}>{say('common.cancel')}</Button>}
      </Actions>
    </form>
  );
}

/** What the newest bytes would be, read as the form says. */
function Preview({ form, state }: { form: DescriptionForm; state: MeterState }) {
  const { say, formats } = useWords();
  const preview = previewOf(form, state.characteristics);
  const hex = state.characteristics.find((each) => keyOf(each) === form.characteristic)?.lastBytesHex;
  if (preview === null || !hex) {
    return <Banner>{say('meter.form.preview-none')}</Banner>;
  }
  return (
    <div className="preview" role="status" aria-label={say('meter.form.preview')}>
      <Bytes hex={hex} from={form.byteOffset ?? 0} count={octetsOfFormat(form.format)} />
      <span aria-hidden="true">→</span>
      {preview.ok ? (
        <strong>{rawText(preview.value, form.unit, formats)}</strong>
      ) : (
        <span>{say(preview.problem)}</span>
      )}
    </div>
  );
}
