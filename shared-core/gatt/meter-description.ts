import { z } from 'zod';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';

/** A Bluetooth UUID as noble writes it: lower case, no hyphens, 4 or 32 hex digits. */
export const uuidSchema = z
  .string()
  .regex(/^([0-9a-f]{4}|[0-9a-f]{32})$/, { error: 'meter.form.wrong.characteristic' });

/** Beyond every number that a format of the SIG's holds, times a power of ten of the same table. */
const MOST = 1e60;

/** How the bytes of a characteristic become a number. Numbers are the SIG's format codes where it has one. */
export const valueLayoutSchema = z.object({
  /** A code of the Presentation Format table (4 = uint8, 6 = uint16, 14 = sint16, 20 = float32, 22 = SFLOAT, 25 = UTF-8 …). */
  format: z.number().int().min(1).max(27),
  /** First byte of the value in the notification. */
  byteOffset: z.number().int().min(0).max(511),
  /** Absent where the low byte comes first, as the Bluetooth standard has it; some meters send it last. */
  byteOrder: z.literal('high-first').optional(),
  /** Value = integer × 10^exponent × scale + offset. */
  exponent: z.number().int().min(-10).max(10),
  scale: z
    .number({ error: 'meter.form.wrong.times' })
    .min(-MOST, { error: 'meter.form.wrong.times' })
    .max(MOST, { error: 'meter.form.wrong.times' })
    .refine((scale) => Math.abs(scale) >= 1 / MOST, { error: 'meter.form.wrong.times' }),
  offset: z
    .number({ error: 'meter.form.wrong.plus' })
    .min(-MOST, { error: 'meter.form.wrong.plus' })
    .max(MOST, { error: 'meter.form.wrong.plus' }),
});
export type ValueLayout = z.infer<typeof valueLayoutSchema>;

/** What a meter can show, in its own unit. */
export const meterRangeSchema = z
  .object({
    min: z
      .number({ error: 'meter.form.wrong.lowest' })
      .min(-MOST, { error: 'meter.form.wrong.lowest' })
      .max(MOST, { error: 'meter.form.wrong.lowest' }),
    max: z
      .number({ error: 'meter.form.wrong.highest' })
      .min(-MOST, { error: 'meter.form.wrong.highest' })
      .max(MOST, { error: 'meter.form.wrong.highest' }),
  })
  .refine(({ min, max }) => min < max, { path: ['max'], error: 'meter.form.wrong.order' });

const bytesHexSchema = z
  .string()
  .max(1024)
  .regex(/^([0-9a-f]{2}){0,512}$/);

/** What a meter says of the value that is read, and what it offers: another meter says something else. */
const meterIdentitySchema = z.object({
  /** Its descriptors 0x2904, 0x2901 and 0x2906; null where it has none. */
  presentationFormatHex: bytesHexSchema.nullable(),
  userDescription: z.string().max(512).nullable(),
  validRangeHex: bytesHexSchema.nullable(),
  /** In order. */
  serviceUuids: z.array(uuidSchema).max(128),
});
export type MeterIdentity = z.infer<typeof meterIdentitySchema>;

/**
 * How to read one meter: made by the meter itself (0x2904) or by the user on live bytes.
 * Saved, exported and shared as a file; nothing in it names a product.
 */
export const meterDescriptionSchema = z.object({
  serviceUuid: uuidSchema,
  characteristicUuid: uuidSchema,
  layout: valueLayoutSchema,
  unit: readingUnitSchema,
  range: meterRangeSchema,
  /** Whether the meter described itself or a person set it up. */
  origin: z.enum(['self-described', 'mapped-by-hand']),
  /** What the meter said when this was confirmed; absent in what an earlier Pintally saved. */
  identity: meterIdentitySchema.optional(),
});
export type MeterDescription = z.infer<typeof meterDescriptionSchema>;
