import { z } from 'zod';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';
import { conditionSchema, layoutSchema, lettersSchema, MOST } from './layout.ts';
import { bytesHexSchema, sourceSchema, uuidSchema } from './source.ts';

/** What a meter can show, in its own unit. */
export const meterRangeSchema = z
  .object({
    min: z.number({ error: 'meter.form.wrong.lowest' }).min(-MOST).max(MOST),
    max: z.number({ error: 'meter.form.wrong.highest' }).min(-MOST).max(MOST),
  })
  .refine(({ min, max }) => min < max, { path: ['max'], error: 'meter.form.wrong.order' });

/** What a meter says of the value that is read, and what it offers: another meter says something else. */
export const meterIdentitySchema = z.object({
  /** Its descriptors 0x2904, 0x2901 and 0x2906; null where it has none. */
  presentationFormatHex: bytesHexSchema.nullable(),
  userDescription: z.string().max(512).nullable(),
  validRangeHex: bytesHexSchema.nullable(),
  /** In order. */
  serviceUuids: z.array(uuidSchema).max(128),
});
export type MeterIdentity = z.infer<typeof meterIdentitySchema>;

/** A write that makes the meter send, once it is connected. */
export const startSchema = z.object({
  serviceUuid: uuidSchema,
  characteristicUuid: uuidSchema,
  bytesHex: bytesHexSchema,
  /** Whether the meter is asked to say that it has it. */
  withResponse: z.boolean(),
});
export type Start = z.infer<typeof startSchema>;

/** What a packet holds beside the value; null for what it does not. */
const fieldsSchema = z.object({
  /** When the meter holds its value, as after its button was pressed. */
  hold: conditionSchema.nullable(),
  /** Charge of its battery, %. */
  batteryPct: layoutSchema.nullable(),
  /** Temperature of the wood or of its probe, °C. */
  tempC: layoutSchema.nullable(),
  /** What it is set to for the species: its own number or word, and what that was when it was described. */
  species: z
    .object({
      at: z.discriminatedUnion('kind', [...layoutSchema.options, lettersSchema]),
      expected: z.string().max(64).nullable(),
    })
    .nullable(),
});
export type MeterFields = z.infer<typeof fieldsSchema>;

export const DESCRIPTION_VERSION = 2;

/**
 * How to read one meter: made by the meter itself (0x2904) or by the user on live bytes.
 * Saved, exported and shared as a file; nothing in it names a product.
 */
export const meterDescriptionSchema = z.object({
  version: z.literal(DESCRIPTION_VERSION),
  source: sourceSchema,
  start: startSchema.nullable(),
  /** What a packet must say to hold the value, where packets of several kinds come from one source. */
  match: conditionSchema.nullable(),
  value: layoutSchema,
  fields: fieldsSchema,
  unit: readingUnitSchema,
  range: meterRangeSchema,
  /** Whether the meter described itself or a person set it up. */
  origin: z.enum(['self-described', 'mapped-by-hand']),
  /** What the meter said when this was confirmed; absent where it was not connected to, or not asked yet. */
  identity: meterIdentitySchema.optional(),
});
export type MeterDescription = z.infer<typeof meterDescriptionSchema>;

export const NO_FIELDS: MeterFields = { hold: null, batteryPct: null, tempC: null, species: null };

/** The description of packets that come by themselves and hold the value alone. */
export const plainDescription = (
  of: Pick<MeterDescription, 'source' | 'value' | 'unit' | 'range' | 'origin' | 'identity'>,
): MeterDescription => ({ version: DESCRIPTION_VERSION, start: null, match: null, fields: NO_FIELDS, ...of });
