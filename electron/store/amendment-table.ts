import { z } from 'zod';
import { noteSchema, rowIdSchema } from '../../shared-core/contract/yard.ts';
import { type Exclusion, exclusionSchema } from '../../shared-core/probing/readings/exclusion.ts';
import { probeTempSchema, spotSchema } from '../../shared-core/probing/readings/reading.ts';
import { instantSchema } from '../../shared-core/time.ts';
import { type Columns, rowAppender } from './columns.ts';
import { parsedOnce } from './parsed-once.ts';
import { readFields, valueIn } from './read-json.ts';
import { holds, isUndone } from './undone-rows.ts';
import type { Db } from './yard-file.ts';

/** What is only ever added to and may yet be corrected, each with the column that names it. */
const columnOf = {
  reading: 'reading_id',
  ovenCheck: 'oven_check_id',
  ovenWeight: 'oven_weight_id',
  sampleCut: 'sample_cut_id',
  sampleWeight: 'sample_weight_id',
};
export type Amendable = keyof typeof columnOf;

/** What can be corrected of a reading; of everything else, whether it is excluded. */
const amendmentsSchema = z
  .object({
    /** Null: included again. */
    excluded: exclusionSchema.nullable(),
    takenAt: instantSchema,
    /** In the unit in which it was saved. */
    raw: z.number(),
    /** The meter showed only that it is more: than what was saved (true), or than a value to which it was corrected. */
    isAbove: z.boolean().or(z.number()),
    /** Of a plan that was made since, in which the same spot has another number. */
    spotIndex: z.number().int().nonnegative(),
    /** Everything about the spot but its depth, where that is amended too. */
    spot: spotSchema,
    /** `as-saved`: what was said of it was undone. */
    depthMm: spotSchema.shape.depthMm.or(z.literal('as-saved')),
    /** Of the meter that it was taken with; null where unknown. */
    meterProfileId: rowIdSchema.nullable(),
    woodTempC: z.number().nullable(),
    /** What a probe measured at the reading: it holds until a person gives the temperature of the board or the reading. */
    probe: probeTempSchema,
    /** The UUID of the reading that it was on another board, which says whether it was moved. Whatever is not corrected of it is of that one, and its time always. */
    movedFrom: z.uuid(),
    /** Empty: it was deleted. */
    note: noteSchema,
  })
  .partial();
export type Amendments = z.infer<typeof amendmentsSchema>;

/** In the place of a value that the disk damaged: it fits no field. */
const UNREADABLE = '{"unreadable":true}';

/**
 * SQL for what holds now of all amended fields of a row, as JSON; to be read by `amendmentsOf`. A row whose act was undone
 * is excluded for that.
 * @param row  its alias
 */
export const amended = (what: Amendable, row: string): string => `
  (SELECT iif(${isUndone(row)}, '{"excluded":{"code":"undone"}}',
    (SELECT json_group_object(k.field, iif(json_valid(k.value), json(k.value), json('${UNREADABLE}')) ORDER BY k.id)
      FROM amendment k WHERE k.${columnOf[what]} = ${row}.id AND ${holds('k')})))`;

/** SQL for whether a reading is no slip (`isSlip`), by what the file says of it. @param reading  its alias */
export const isNoSlip = (reading: string): string =>
  `(SELECT coalesce((SELECT ${valueIn('k.value', '$.code')} FROM amendment k WHERE k.reading_id = ${reading}.id
     AND k.field = 'excluded' AND ${holds('k')} ORDER BY k.id DESC LIMIT 1), '') NOT IN ('undone-in-round', 'replaced', 'moved'))`;

/**
 * The newest of each field: of two values under one name in an object, JSON.parse takes the later. Where the disk damaged
 * whether something is excluded, it is, until a person decides; `isDamaged` where it damaged anything else.
 */
export const amendmentsOf = parsedOnce((text: string): Amendments & { isDamaged?: true } => {
  const given = JSON.parse(text) as Record<string, unknown>;
  const read = readFields(amendmentsSchema, text);
  const unreadable = Object.keys(given).filter((field) => !(field in read));
  return {
    ...read,
    ...(unreadable.includes('excluded') ? { excluded: { code: 'damaged' } } : {}),
    ...(unreadable.some((field) => field !== 'excluded') ? { isDamaged: true } : {}),
  };
});

/** Why the row is excluded; null where it counts. */
export const exclusionOf = (text: string): Exclusion | null => amendmentsOf(text).excluded ?? null;

interface Amendment extends Record<Amendable, number | null> {
  field: keyof Amendments;
  /** JSON. */
  value: string;
  at: string;
}
const columns: Columns<Amendment> = { ...columnOf, field: 'field', value: 'value', at: 'at' };
const nothing = { reading: null, ovenCheck: null, ovenWeight: null, sampleCut: null, sampleWeight: null };

/** Corrections of what was measured: the newest of a field holds, and what was measured stays as it was. */
export function amendmentWrites(db: Db) {
  const append = rowAppender(db, 'amendment', columns);
  function amend<F extends keyof Amendments>(
    what: Amendable,
    id: number,
    field: F,
    value: Amendments[F],
    at: string,
  ): void {
    append({ ...nothing, [what]: id, field, value: JSON.stringify(value), at });
  }
  return {
    amendReading: <F extends keyof Amendments>(
      readingId: number,
      field: F,
      value: NonNullable<Amendments[F]> | Extract<Amendments[F], null>,
      at: string,
    ): void => amend('reading', readingId, field, value, at),
    /** Leaves something measured out, or includes it again where `why` is null. */
    exclude: (what: Amendable, id: number, why: Exclusion | null, at: string): void =>
      amend(what, id, 'excluded', why, at),
  };
}
