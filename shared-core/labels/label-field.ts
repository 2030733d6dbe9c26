import { z } from 'zod';

/** What a label can show of its board. Its ID is always one of them. */
export const labelFieldSchema = z.enum([
  'code',
  'call',
  'mc',
  'day',
  'species',
  'size',
  'thickness',
  'use',
  'target',
  'likely',
  'shell-core',
  'stack',
  'place',
  'sawn',
  'log',
]);
export type LabelField = z.infer<typeof labelFieldSchema>;

/** The most important first, which is also the order on the label: what has no room is left out from the end. */
export const labelFieldsSchema = z
  .array(labelFieldSchema)
  .max(labelFieldSchema.options.length)
  .refine((fields) => fields.includes('code') && new Set(fields).size === fields.length);

export const usualFields: readonly LabelField[] = [
  'code',
  'call',
  'mc',
  'day',
  'species',
  'size',
  'use',
  'likely',
  'shell-core',
];

/** The fields with one taken in at the end, or left out; the ID stays. */
export function withField(fields: readonly LabelField[], field: LabelField, isIn: boolean): LabelField[] {
  const others = fields.filter((each) => each !== field);
  if (field === 'code') return [...fields];
  return isIn ? [...others, field] : others;
}

/** The fields with one moved by a place towards the beginning (-1) or the end (1); where there is no place, as they were. */
export function movedField(fields: readonly LabelField[], field: LabelField, by: -1 | 1): LabelField[] {
  const from = fields.indexOf(field);
  const to = from + by;
  if (from < 0 || to < 0 || to >= fields.length) return [...fields];
  const moved = fields.filter((each) => each !== field);
  moved.splice(to, 0, field);
  return moved;
}
