import { z } from 'zod';
import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { bytesOfHex } from '../../../shared-core/gatt/bytes-of-hex.ts';
import {
  bitsLayoutSchema,
  type Layout,
  numberLayoutSchema,
  TEXT_FORMAT,
  textLayoutSchema,
} from '../../../shared-core/gatt/layout.ts';
import {
  type MeterDescription,
  meterDescriptionSchema,
  meterRangeSchema,
  plainDescription,
} from '../../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import { fromOf, isFrom, keyOfFrom } from '../../../shared-core/gatt/source.ts';
import { formatTakesExponent, placeOf, readableFormats } from '../../../shared-core/gatt/value.ts';
import { bridge } from '../../data/bridge.ts';
import { NumberField, Select } from '../../form/Field.tsx';
import { type Fields, useDraft } from '../../form/useDraft.ts';
import { showMeter } from '../../stores/meter.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { useWatching } from '../../stores/watching.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { Bytes, hexOf, isIn } from './Bytes.tsx';
import { formatName } from './formats.ts';
import { placesToChoose, type ShownPlace } from './watched-places.ts';

const valueSchema = meterDescriptionSchema.pick({ unit: true }).extend({
  placeKey: z.string().min(1, { error: 'meter.form.wrong.characteristic' }),
});

/** Beside the SIG's codes: bits that are none of its formats. */
const BITS_FORMAT = 0;
const formatsOffered = [...readableFormats, BITS_FORMAT, TEXT_FORMAT];

/** What every kind of layout has, in one form. */
const layoutSchema = numberLayoutSchema.omit({ kind: true }).extend({
  format: z.number().int(),
  firstBit: bitsLayoutSchema.shape.firstBit,
  bits: bitsLayoutSchema.shape.bits,
  signed: z.boolean(),
  nth: textLayoutSchema.shape.nth,
});
type Draft = z.infer<typeof layoutSchema>;

/** A plain 16-bit value in tenths, to begin with. */
const usualLayout: Draft = {
  format: 6,
  byteOffset: 0,
  firstBit: 0,
  bits: 12,
  signed: false,
  nth: 1,
  exponent: -1,
  scale: 1,
  offset: 0,
};

function layoutOf({ format, byteOffset, byteOrder, firstBit, bits, signed, nth, ...scaling }: Draft): Layout {
  if (format === TEXT_FORMAT) return { kind: 'text', byteOffset, nth, ...scaling };
  const ordered = { ...(byteOrder && { byteOrder }), ...scaling };
  if (format === BITS_FORMAT) return { kind: 'bits', firstBit, bits, signed, ...ordered };
  return { kind: 'number', format, byteOffset, ...ordered };
}

function draftOf(description: MeterDescription | null): Draft {
  const value = description?.value;
  switch (value?.kind) {
    case 'text':
      return { ...usualLayout, ...value, format: TEXT_FORMAT };
    case 'bits':
      return { ...usualLayout, ...value, format: BITS_FORMAT };
    case 'number':
      return { ...usualLayout, ...value };
    default:
      return usualLayout;
  }
}

/** Where a description reads; else one whose bytes came already. */
function firstPlace(
  places: readonly ShownPlace[],
  { characteristics }: MeterState,
  description: MeterDescription | null,
): ShownPlace | undefined {
  if (description !== null) return places.find(({ source }) => isFrom(description.source, fromOf(source)));
  const heard = ({ key, packets }: ShownPlace) =>
    packets.length > 0 ||
    characteristics.some((each) => each.lastBytesHex !== null && keyOfOffered(each) === key);
  return places.find(heard) ?? places[0];
}

const keyOfOffered = ({ serviceUuid, characteristicUuid }: MeterState['characteristics'][number]) =>
  keyOfFrom({ kind: 'characteristic', serviceUuid, characteristicUuid });

/**
 * Says once how a meter's bytes are read, on live bytes: the preview must show what the meter's own display shows.
 * @param from  how they are read now, or may be; null to begin with nothing
 */
export function DescribeForm({
  state,
  from,
  onDone,
}: {
  state: MeterState;
  from: MeterDescription | null;
  onDone: () => void;
}) {
  const { say } = useWords();
  const heard = useWatching((watching) => watching.places);
  const places = placesToChoose(state, heard, from?.source ?? null);
  const value = useDraft(valueSchema, {
    placeKey: firstPlace(places, state, from)?.key ?? '',
    unit: from?.unit ?? 'pct',
  });
  const layout = useDraft(layoutSchema, draftOf(from));
  const range = useDraft(meterRangeSchema, from?.range ?? { min: 0, max: 100 });
  const { unit } = value.draft;
  const chosen = places.find(({ key }) => key === value.draft.placeKey);
  const description = chosen && descriptionAt(chosen);

  /** What else is known of its packets stays where they come from the same place. */
  function descriptionAt(place: ShownPlace): MeterDescription | undefined {
    if (!layout.made || unit === null) return undefined;
    const made = plainDescription({
      source: place.source,
      value: layoutOf(layout.made),
      unit,
      range: range.made ?? { min: 0, max: 100 },
      origin: 'mapped-by-hand',
    });
    if (from === null || !isFrom(from.source, fromOf(place.source))) return made;
    const { source, start, match, fields } = from;
    return { ...made, source, start, match, fields };
  }

  async function save(): Promise<void> {
    for (const part of [value, layout, range]) part.show();
    if (!value.made || !range.made || !description) return;
    const described = await attempt(bridge().command('meter.describe', description));
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
      <Preview hex={chosen ? newestHex(chosen, state, description) : null} description={description} />
      <div className="form-grid">
        <Select
          label={say('meter.form.characteristic')}
          options={[
            ...(chosen ? [] : [{ value: '', label: say('meter.form.characteristic-choose') }]),
            ...places.map(({ key, name, source }) => ({
              value: key,
              label: [
                typeof name === 'string' ? name : say(name),
                'characteristicUuid' in source ? source.characteristicUuid : null,
              ]
                .filter(Boolean)
                .join(' · '),
              isName: true,
            })),
          ]}
          error={value.field('placeKey').error}
          value={value.draft.placeKey}
          onValue={(placeKey) => value.set({ placeKey })}
        />
        <LayoutFields layout={layout} />
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
        <Button onClick={onDone}>{say('common.cancel')}</Button>
      </Actions>
    </form>
  );
}

/** Where in the packet the number is, and how it is made. */
function LayoutFields({ layout }: { layout: Fields<Draft> }) {
  const { say } = useWords();
  const format = layout.draft.format ?? usualLayout.format;
  const isBits = format === BITS_FORMAT;
  const takesExponent = isBits || format === TEXT_FORMAT || formatTakesExponent(format);
  return (
    <>
      <Select
        label={say('meter.reading.format')}
        value={format}
        options={formatsOffered.map((code) => ({
          value: code,
          label: code === BITS_FORMAT ? say('meter.form.bits-format') : say(formatName(code)),
        }))}
        onValue={(code) => layout.set({ format: code, ...(!formatTakesExponent(code) && { exponent: 0 }) })}
      />
      {isBits ? (
        <>
          <NumberField label={say('meter.reading.first-bit')} {...layout.field('firstBit')} />
          <NumberField label={say('meter.form.bits')} {...layout.field('bits')} />
        </>
      ) : (
        <NumberField
          label={say('meter.reading.first-byte')}
          hint={say('meter.form.first-byte-hint')}
          {...layout.field('byteOffset')}
        />
      )}
      {format === TEXT_FORMAT ? (
        <NumberField label={say('meter.reading.nth')} {...layout.field('nth')} />
      ) : (
        <Select
          label={say('meter.reading.byte-order')}
          options={[
            { value: 'low-first', label: say('meter.reading.low-first') },
            { value: 'high-first', label: say('meter.reading.high-first') },
          ]}
          value={layout.draft.byteOrder ?? 'low-first'}
          onValue={(order) => layout.set({ byteOrder: order === 'high-first' ? order : undefined })}
        />
      )}
      <NumberField
        label={say('meter.reading.power')}
        hint={say('meter.form.power-hint')}
        disabled={!takesExponent}
        {...layout.field('exponent')}
      />
      <NumberField label={say('meter.form.times')} {...layout.field('scale')} />
      <NumberField label={say('meter.form.plus')} {...layout.field('offset')} />
    </>
  );
}

/** The newest bytes of a place that have the value; null where none came. */
function newestHex(
  { key, packets }: ShownPlace,
  { characteristics }: MeterState,
  description: MeterDescription | undefined,
): string | null {
  const newest = packets.findLast(
    ({ bytes }) => description === undefined || decodePacket(bytes, description).value !== null,
  );
  if (newest) return hexOf(newest.bytes);
  return characteristics.find((each) => keyOfOffered(each) === key)?.lastBytesHex ?? null;
}

/** What the newest bytes would be, read as the form says. */
function Preview({ hex, description }: { hex: string | null; description: MeterDescription | undefined }) {
  const { say, formats } = useWords();
  const preview = hex !== null && description && decodePacket(bytesOfHex(hex), description).value;
  if (!preview) return <Banner>{say('meter.form.preview-none')}</Banner>;
  return (
    <div className="marked preview" role="status" aria-label={say('meter.form.preview')}>
      <Bytes hex={hex} marked={isIn(placeOf(description.value))} />
      <span aria-hidden="true">→</span>
      {preview.ok ? (
        <strong>{rawText(preview.value, description.unit, formats)}</strong>
      ) : (
        <span>{say(preview.problem)}</span>
      )}
    </div>
  );
}
