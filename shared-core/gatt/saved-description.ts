import { z } from 'zod';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';
import { type Layout, numberLayoutSchema, TEXT_FORMAT } from './layout.ts';
import {
  meterDescriptionSchema,
  meterIdentitySchema,
  meterRangeSchema,
  plainDescription,
} from './meter-description.ts';
import { uuidSchema } from './source.ts';
import { formatTakesExponent } from './value.ts';

const { byteOffset, byteOrder, exponent, scale, offset } = numberLayoutSchema.shape;

/** Version 1, which had no number: one characteristic that sends, and one number or text in it. */
export const version1Schema = z.object({
  serviceUuid: uuidSchema,
  characteristicUuid: uuidSchema,
  layout: z.object({
    format: z.number().int().min(1).max(27),
    byteOffset,
    byteOrder,
    exponent,
    scale,
    offset,
  }),
  unit: readingUnitSchema,
  range: meterRangeSchema,
  origin: z.enum(['self-described', 'mapped-by-hand']),
  identity: meterIdentitySchema.optional(),
});

/** The same in version 2: the same bytes make the same value. */
export function ofVersion1({
  serviceUuid,
  characteristicUuid,
  layout,
  ...rest
}: z.infer<typeof version1Schema>) {
  const source = { kind: 'sent', serviceUuid, characteristicUuid } as const;
  return plainDescription({ source, value: layoutOf(layout), ...rest });
}

function layoutOf({
  format,
  byteOffset,
  byteOrder,
  exponent,
  scale,
  offset,
}: z.infer<typeof version1Schema>['layout']): Layout {
  if (format === TEXT_FORMAT) return { kind: 'text', byteOffset, nth: 1, exponent: 0, scale, offset };
  return {
    kind: 'number',
    format,
    byteOffset,
    ...(byteOrder && { byteOrder }),
    // It was ignored where the format takes none.
    exponent: formatTakesExponent(format) ? exponent : 0,
    scale,
    offset,
  };
}

/** A description as this or an earlier Pintally saved it. */
export const savedDescriptionSchema = z.union([meterDescriptionSchema, version1Schema.transform(ofVersion1)]);
