import { z } from 'zod';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { bytesOfHex } from '../../../shared-core/gatt/bytes-of-hex.ts';
import { type Layout, numberLayoutSchema, TEXT_FORMAT } from '../../../shared-core/gatt/layout.ts';
import {
  type MeterDescription,
  meterDescriptionSchema,
  meterRangeSchema,
  plainDescription,
} from '../../../shared-core/gatt/meter-description.ts';
import { uuidSchema } from '../../../shared-core/gatt/source.ts';
import {
  decodeLayout,
  formatTakesExponent,
  placeOf,
  readableFormats,
} from '../../../shared-core/gatt/value.ts';
import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField, Select } from '../../form/Field.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { showMeter } from '../../stores/meter.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { Bytes, isIn } from './Bytes.tsx';
import { formatName } from './formats.ts';

const sourceSchema = z.object({ serviceUuid: uuidSchema, characteristicUuid: uuidSchema });
type Source = z.infer<typeof sourceSchema>;
const valueSchema = meterDescriptionSchema.pick({ unit: true }).extend(sourceSchema.shape);

/** A number, or text as one more format. */
const layoutSchema = numberLayoutSchema.omit({ kind: true }).extend({ format: z.number().int() });
type Draft = z.infer<typeof layoutSchema>;
const formatsOffered = [...readableFormats, TEXT_FORMAT];

/** A plain 16-bit value in tenths, to begin with. */
const usualLayout: Draft = { format: 6, byteOffset: 0, exponent: -1, scale: 1, offset: 0 };

function layoutOf({ format, byteOrder, ...rest }: Draft): Layout {
  if (format === TEXT_FORMAT) return { kind: 'text', nth: 1, ...rest };
  return { kind: 'number', format, ...(byteOrder && { byteOrder }), ...rest };
}

function draftOf(description: MeterDescription | null): Draft {
  const value = description?.value;
  if (value?.kind === 'text') return { format: TEXT_FORMAT, ...value };
  return value?.kind === 'number' ? value : usualLayout;
}

function sourceOf(state: MeterState): Source {
  const source = state.description?.source;
  return source?.kind === 'sent' ? source : firstSending(state);
}

const keyOf = ({ serviceUuid, characteristicUuid }: Source) => `${serviceUuid} ${characteristicUuid}`;

/** The characteristic that sends, rather one whose bytes came already. */
function firstSending({ characteristics }: MeterState): Source {
  const sending = characteristics.filter((each) => each.canNotify);
  const first = sending.find((each) => each.lastBytesHex !== null) ?? sending[0];
  return first ?? { serviceUuid: '', characteristicUuid: '' };
}

/** Says once how a meter's bytes are read, on live bytes: the preview must show what the meter's own display shows. */
export function DescribeForm({ state, onDone }: { state: MeterState; onDone: () => void }) {
  const { say } = useWords();
  const { description } = state;
  const value = useDraft(valueSchema, { ...sourceOf(state), unit: description?.unit ?? 'pct' });
  const layout = useDraft(layoutSchema, draftOf(description));
  const range = useDraft(meterRangeSchema, description?.range ?? { min: 0, max: 100 });
  const { unit } = value.draft;
  const format = layout.draft.format ?? usualLayout.format;
  const chosen = state.characteristics.find((each) => keyOf(each) === keyOf(value.draft));

  async function save(): Promise<void> {
    for (const part of [value, layout, range]) part.show();
    if (!value.made || !layout.made || !range.made) return;
    const described = await attempt(
      bridge().command(
        'meter.describe',
        plainDescription({
          source: {
            kind: 'sent',
            serviceUuid: value.made.serviceUuid,
            characteristicUuid: value.made.characteristicUuid,
          },
          value: layoutOf(layout.made),
          unit: value.made.unit,
          range: range.made,
          origin: 'mapped-by-hand',
        }),
      ),
    );
    if (!described) return;
    showMeter(described);
    tellDone(say('meter.form.saved'));
    onDone();
  }

  return (
    <form
      className="column describe-form"
      aria-label={say('meter.form.title')}
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <p>{say('meter.form.how')}</p>
      <Preview hex={chosen?.lastBytesHex ?? null} layout={layout.made && layoutOf(layout.made)} unit={unit} />
      <div className="form-grid">
        <Select
          label={say('meter.form.characteristic')}
          options={[
            ...(chosen
              ? []
              : [{ value: keyOf(value.draft), label: say('meter.form.characteristic-choose') }]),
            ...state.characteristics
              .filter((each) => each.canNotify)
              .map((each) => ({
                value: keyOf(each),
                label: [each.userDescription, each.characteristicUuid].filter(Boolean).join(' · '),
                isName: true,
              })),
          ]}
          error={value.field('serviceUuid').error}
          value={keyOf(value.draft)}
          onValue={(key) => {
            const [serviceUuid = '', characteristicUuid = ''] = key.split(' ');
            value.set({ serviceUuid, characteristicUuid });
          }}
        />
        <Select
          label={say('meter.reading.format')}
          value={format}
          options={formatsOffered.map((code) => ({ value: code, label: say(formatName(code)) }))}
          onValue={(code) => layout.set({ format: code, ...(!formatTakesExponent(code) && { exponent: 0 }) })}
        />
        <NumberField
          label={say('meter.reading.first-byte')}
          hint={say('meter.form.first-byte-hint')}
          {...layout.field('byteOffset')}
        />
        <Select
          label={say('meter.reading.byte-order')}
          options={[
            { value: 'low-first', label: say('meter.reading.low-first') },
            { value: 'high-first', label: say('meter.reading.high-first') },
          ]}
          value={layout.draft.byteOrder ?? 'low-first'}
          onValue={(order) => layout.set({ byteOrder: order === 'high-first' ? order : undefined })}
        />
        <NumberField
          label={say('meter.reading.power')}
          hint={say('meter.form.power-hint')}
          disabled={!formatTakesExponent(format)}
          {...layout.field('exponent')}
        />
        <NumberField label={say('meter.form.times')} {...layout.field('scale')} />
        <NumberField label={say('meter.form.plus')} {...layout.field('offset')} />
        <Select
          label={say('meter.reading.unit')}
          options={[
            { value: 'pct', label: say('meter.reading.unit-pct') },
            { value: 'ohm', label: say('meter.reading.unit-ohm') },
          ]}
          {...value.field('unit')}
        />
        <NumberField label={say('meter.form.lowest')} {...range.field('min')} />
        <NumberField label={say('meter.form.highest')} {...range.field('max')} />
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

/** What the newest bytes of the chosen characteristic would be, read as the form says. */
function Preview({
  hex,
  layout,
  unit,
}: {
  hex: string | null;
  layout: Layout | undefined;
  unit: ReadingUnit;
}) {
  const { say, formats } = useWords();
  if (!layout || !hex) return <Banner>{say('meter.form.preview-none')}</Banner>;
  const preview = decodeLayout(bytesOfHex(hex), layout, { unit });
  return (
    <div className="marked preview" role="status" aria-label={say('meter.form.preview')}>
      <Bytes hex={hex} marked={isIn(placeOf(layout))} />
      <span aria-hidden="true">→</span>
      {preview.ok ? (
        <strong>{rawText(preview.value, unit, formats)}</strong>
      ) : (
        <span>{say(preview.problem)}</span>
      )}
    </div>
  );
}
