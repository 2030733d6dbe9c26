import type { OfferedCharacteristic } from '../../../shared-core/contract/meter.ts';
import {
  type MeterDescription,
  meterDescriptionSchema,
} from '../../../shared-core/gatt/meter-description.ts';
import { type DecodedValue, decodeValue, formatTakesExponent } from '../../../shared-core/gatt/value.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature, temperatureFromC } from '../../../shared-core/units/temperature.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { bytesOfHex } from './hex.ts';

/** What the form holds: numbers as `NumberField` gives them (null empty, NaN not a number). */
export interface DescriptionForm {
  /** "service characteristic"; empty before one was chosen. */
  characteristic: string;
  format: number;
  byteOffset: number | null;
  byteOrder: 'low-first' | 'high-first';
  exponent: number | null;
  scale: number | null;
  offset: number | null;
  unit: MeterDescription['unit'];
  /** Key of the basis species' curve; empty where it is not known. */
  basisCurveId: string;
  /** In the person's own unit. */
  basisTemp: number | null;
  min: number | null;
  max: number | null;
}

export const keyOf = ({
  serviceUuid,
  characteristicUuid,
}: Pick<MeterDescription, 'serviceUuid' | 'characteristicUuid'>) => `${serviceUuid} ${characteristicUuid}`;

/** Where many meters' scales are made for, °C: a warm workshop. Only a start for the form. */
const USUAL_BASIS_TEMP_C = 20;

/** The form as it opens: what is known already, else a plain 16-bit value in tenths of a percent. */
export function startForm(
  description: MeterDescription | null,
  offered: readonly OfferedCharacteristic[],
  units: DisplayUnits,
): DescriptionForm {
  const sending = offered.filter((each) => each.canNotify);
  const first = sending.find((each) => each.lastBytesHex !== null) ?? sending[0];
  return {
    characteristic: description ? keyOf(description) : first ? keyOf(first) : '',
    format: description?.layout.format ?? 6,
    byteOffset: description?.layout.byteOffset ?? 0,
    byteOrder: description?.layout.byteOrder ?? 'low-first',
    exponent: description?.layout.exponent ?? -1,
    scale: description?.layout.scale ?? 1,
    offset: description?.layout.offset ?? 0,
    unit: description?.unit ?? 'pct',
    basisCurveId: description?.basis?.curveId ?? '',
    basisTemp: temperatureFromC(description?.basis?.tempC ?? USUAL_BASIS_TEMP_C, units),
    min: description?.range.min ?? 0,
    max: description?.range.max ?? 100,
  };
}

export type FormProblems = Partial<Record<keyof DescriptionForm, Message>>;

const isNumber = (value: number | null): value is number => value !== null && !Number.isNaN(value);

const layoutOrder = ({ byteOrder }: DescriptionForm) => (byteOrder === 'high-first' ? { byteOrder } : {});

/** The description in the form, or what is wrong with it, field by field. */
export function readForm(
  form: DescriptionForm,
  units: DisplayUnits,
): { ok: true; description: MeterDescription } | { ok: false; problems: FormProblems } {
  const problems: FormProblems = {};
  const [serviceUuid = '', characteristicUuid = ''] = form.characteristic.split(' ');
  if (form.characteristic === '') problems.characteristic = message('meter.form.wrong.characteristic');
  const wholeIn = (field: 'byteOffset' | 'exponent', lowest: number, highest: number) => {
    const value = form[field];
    if (!isNumber(value) || !Number.isInteger(value) || value < lowest || value > highest) {
      problems[field] = message('meter.form.wrong.whole', { lowest, highest });
    }
  };
  wholeIn('byteOffset', 0, 511);
  if (formatTakesExponent(form.format)) wholeIn('exponent', -10, 10);
  if (!isNumber(form.scale) || form.scale === 0) problems.scale = message('meter.form.wrong.times');
  if (!isNumber(form.offset)) problems.offset = message('meter.form.wrong.plus');
  if (!isNumber(form.min)) problems.min = message('meter.form.wrong.lowest');
  if (!isNumber(form.max)) problems.max = message('meter.form.wrong.highest');
  if (isNumber(form.min) && isNumber(form.max) && form.min >= form.max) {
    problems.max = message('meter.form.wrong.order');
  }
  const hasBasis = form.unit === 'pct' && form.basisCurveId !== '';
  if (hasBasis && !isNumber(form.basisTemp)) {
    problems.basisTemp = message('meter.form.wrong.basis-temp');
  }
  if (Object.keys(problems).length > 0) return { ok: false, problems };

  const parsed = meterDescriptionSchema.safeParse({
    serviceUuid,
    characteristicUuid,
    layout: {
      format: form.format,
      byteOffset: form.byteOffset,
      ...layoutOrder(form),
      exponent: formatTakesExponent(form.format) ? form.exponent : 0,
      scale: form.scale,
      offset: form.offset,
    },
    unit: form.unit,
    basis: hasBasis
      ? { curveId: form.basisCurveId, tempC: celsiusFromTemperature(form.basisTemp ?? Number.NaN, units) }
      : null,
    range: { min: form.min, max: form.max },
    origin: 'mapped-by-hand',
  });
  // The one bound that is not asked for above is the basis temperature's.
  return parsed.success
    ? { ok: true, description: parsed.data }
    : {
        ok: false,
        problems: {
          basisTemp: message('meter.form.wrong.basis-temp-range', { lowTempC: -20, highTempC: 60 }),
        },
      };
}

/** What the newest bytes of the chosen characteristic would be, read this way; null before any came. */
export function previewOf(
  form: DescriptionForm,
  offered: readonly OfferedCharacteristic[],
): DecodedValue | null {
  const hex = offered.find((each) => keyOf(each) === form.characteristic)?.lastBytesHex;
  const { byteOffset, exponent, scale, offset } = form;
  if (!hex || !isNumber(byteOffset) || !isNumber(scale) || !isNumber(offset)) return null;
  return decodeValue(bytesOfHex(hex), {
    layout: {
      format: form.format,
      byteOffset,
      ...layoutOrder(form),
      exponent: isNumber(exponent) ? exponent : 0,
      scale,
      offset,
    },
    unit: form.unit,
    origin: 'mapped-by-hand',
  });
}
