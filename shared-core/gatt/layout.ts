import { z } from 'zod';
import { longestValueBytes } from './source.ts';

/** Beyond every number that a format of the SIG's holds, times a power of ten of the same table. */
export const MOST = 1e60;

const byteOffsetSchema = z
  .number()
  .int()
  .min(0)
  .max(longestValueBytes - 1);

/** What every layout ends with: value = what is stored × 10^exponent × scale + offset. */
const scaling = {
  exponent: z.number().int().min(-10).max(10),
  scale: z
    .number({ error: 'meter.form.wrong.times' })
    .min(-MOST)
    .max(MOST)
    .refine((scale) => Math.abs(scale) >= 1 / MOST),
  offset: z.number({ error: 'meter.form.wrong.plus' }).min(-MOST).max(MOST),
};
/** Absent where the low byte comes first, as the Bluetooth standard has it; some meters send it last. */
const byteOrder = z.literal('high-first').optional();

/** The code of UTF-8 text in the SIG's format table. */
export const TEXT_FORMAT = 25;

/** A number in one of the SIG's formats. */
export const numberLayoutSchema = z.object({
  kind: z.literal('number'),
  /** A code of the Presentation Format table (4 = uint8, 6 = uint16, 14 = sint16, 20 = float32, 22 = SFLOAT …). */
  format: z
    .number()
    .int()
    .min(1)
    .max(27)
    .refine((format) => format !== TEXT_FORMAT),
  /** First byte of the number in the packet. */
  byteOffset: byteOffsetSchema,
  byteOrder,
  ...scaling,
});
export type NumberLayout = z.infer<typeof numberLayoutSchema>;

/**
 * An integer of any bits. Where the low byte comes first, bit n of the packet is bit n % 8 of byte n / 8, 0 the lowest,
 * and the first bit is the lowest of the integer. Where the high byte comes first, bits are counted from the highest of
 * byte 0 on, and the first is the highest of the integer.
 */
export const bitsLayoutSchema = z.object({
  kind: z.literal('bits'),
  firstBit: z
    .number()
    .int()
    .min(0)
    .max(8 * longestValueBytes - 1),
  bits: z.number().int().min(1).max(64),
  /** Two's complement. */
  signed: z.boolean(),
  byteOrder,
  ...scaling,
});
export type BitsLayout = z.infer<typeof bitsLayoutSchema>;

/** A number in UTF-8 text, such as the first of "12.6 % 21.5 °C". A unit may come after it. */
export const textLayoutSchema = z.object({
  kind: z.literal('text'),
  /** First byte of the text, which goes on to the end of the packet. */
  byteOffset: byteOffsetSchema,
  /** Which number of the text, 1 for the first. What a meter shows in place of one, such as "--.-", counts too. */
  nth: z.number().int().min(1).max(64),
  ...scaling,
});
export type TextLayout = z.infer<typeof textLayoutSchema>;

/** How bytes of a packet become a number. */
export const layoutSchema = z.discriminatedUnion('kind', [
  numberLayoutSchema,
  bitsLayoutSchema,
  textLayoutSchema,
]);
export type Layout = z.infer<typeof layoutSchema>;

/** Something that a packet says, such as its kind or that the meter holds its value. */
export const conditionSchema = z.union([
  z.object({ layout: layoutSchema, equals: z.number().min(-MOST).max(MOST) }),
  /** By a word of its text, such as the "H" of "12.6 % H", with no letter or digit beside it. */
  z.object({
    word: z
      .string()
      .max(16)
      .regex(/^[\p{L}\p{N}]+$/u),
  }),
]);
export type Condition = z.infer<typeof conditionSchema>;

/** Text in a packet, shown as it is. */
export const lettersSchema = z.object({
  kind: z.literal('letters'),
  byteOffset: byteOffsetSchema,
  octets: z.number().int().min(1).max(32),
});
export type Letters = z.infer<typeof lettersSchema>;

/** Whether both make the same number of the same bytes. */
export const isSameLayout = (a: Layout, b: Layout): boolean => textOf(a) === textOf(b);

const textOf = (layout: Layout): string =>
  Object.entries(layout)
    .filter(([, part]) => part !== undefined)
    .map(([name, part]) => `${name} ${part}`)
    .toSorted()
    .join();
