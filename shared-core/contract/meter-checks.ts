import { z } from 'zod';
import { exclusionSchema } from '../probing/readings/exclusion.ts';
import type { Reading } from '../probing/readings/reading.ts';
import { instantSchema } from '../time.ts';
import { readingUnitSchema } from '../wood/moisture/corrected.ts';
import { woodTempSchema } from './round.ts';
import { says } from './validation.ts';
import { nameSchema, rowIdSchema, versionSchema } from './yard.ts';

/** When the start of a round asks for a check of its meter. */
export const checkEverySchema = z.enum(['round', 'day', 'month', 'never']);
export type CheckEvery = z.infer<typeof checkEverySchema>;

const within = (least: number, most: number, wrong: { error: string }) =>
  z.number(wrong).min(least, wrong).max(most, wrong);

/** What a block or a resistor can be: % of a scale for wood, and Ω as wood between two pins has them, and more. */
export const expectedSchemas = {
  pct: within(1, 100, says('test-block.value-pct-wrong')),
  ohm: within(1e3, 1e12, says('test-block.value-ohm-wrong')),
};
/** What a meter may be off by: points of one that shows %, a share of the ohms of one that shows those. */
export const toleranceSchemas = {
  pct: within(0.05, 5, says('test-block.tolerance-wrong')),
  ohm: within(0.001, 0.5, says('test-block.tolerance-ohm-wrong')),
};

/** What a person tells of a test block or a resistor. Its bounds are wider than `expectedSchemas`: earlier ones stay readable. */
export const newTestBlockSchema = z.object({
  meterId: rowIdSchema,
  name: nameSchema,
  /** % as the label says, or Ω. */
  expected: z.number().positive().max(1e13),
  unit: readingUnitSchema,
  /** How far off the meter may show: points, or of one that shows ohms a share of them (0.01 is 1 %). */
  tolerance: z.number().positive().max(10),
  checkEvery: checkEverySchema,
});
export type NewTestBlock = z.infer<typeof newTestBlockSchema>;

export const testBlockSchema = newTestBlockSchema.extend({ id: rowIdSchema, version: versionSchema });
export type TestBlock = z.infer<typeof testBlockSchema>;

/** One check of a meter, and what it says. */
export const meterCheckSchema = z.object({
  id: rowIdSchema,
  blockId: rowIdSchema,
  at: instantSchema,
  /** What the meter should have shown, in its unit. */
  right: z.number(),
  /** As of the block. */
  tolerance: z.number(),
  shown: z.number(),
  /** Of the block, °C; null where it was not given. */
  tempC: woodTempSchema,
  /** How far off it shows: points, or decades of ohms; above 0 where it shows more. */
  off: z.number(),
  /** What its values were corrected by when it was checked, points or decades. */
  correctedBy: z.number(),
  /** `right`: off by no more than the tolerance once that is taken off. `too-far`: too far off to be corrected. */
  state: z.enum(['right', 'off', 'too-far']),
  /** Why it is excluded; null where it is not. */
  excluded: exclusionSchema.nullable(),
  /** It was made while the clock was ahead: its time has not come, and until then it says nothing. */
  isAhead: z.boolean(),
});
export type MeterCheck = z.infer<typeof meterCheckSchema>;

/** A meter with its test block, and how it was checked. */
export const checkedMeterSchema = z.object({
  block: testBlockSchema,
  meterName: z.string(),
  /** The meter's unit. */
  unit: readingUnitSchema,
  /** What it shows on the block if it is right; null where nobody can say. */
  right: z.number().nullable(),
  /** Newest first, at most 200, excluded ones too. */
  checks: z.array(meterCheckSchema),
  /** The newest that counts; null where none does. */
  last: meterCheckSchema.nullable(),
  /** By how often it is to be checked, it is to be checked before a round that starts now. */
  isDue: z.boolean(),
  /**
   * By the newest check the meter is off, and its values are not corrected for that yet. `readings` were taken since, in
   * any round. Null where there is nothing to correct.
   */
  toCorrect: z.object({ checkId: rowIdSchema, readings: z.number().int().min(0) }).nullable(),
});
export type CheckedMeter = z.infer<typeof checkedMeterSchema>;

/** Readings of a round that were taken after a check which found their meter off. */
export const questionableMeterSchema = z.object({
  meterName: z.string(),
  unit: readingUnitSchema,
  check: meterCheckSchema,
  /** The version of the meter's profile that holds for them. */
  meterProfileId: rowIdSchema,
  /** When the meter was checked next; null where it was not yet. */
  until: instantSchema.nullable(),
  /** Of the round. */
  readings: z.number().int().min(1),
  /** How many are corrected together, in all rounds since that check; null where it is too far off. */
  toCorrect: z.number().int().min(1).nullable(),
});
export type QuestionableMeter = z.infer<typeof questionableMeterSchema>;

/** Whether a reading is one of those, also where it was saved only now. */
export const isOfOffMeter = (
  { check, meterProfileId, until }: QuestionableMeter,
  reading: Pick<Reading, 'meterProfileId' | 'takenAt'>,
): boolean =>
  reading.meterProfileId === meterProfileId &&
  Date.parse(reading.takenAt) >= Date.parse(check.at) &&
  (until === null || Date.parse(reading.takenAt) < Date.parse(until));
