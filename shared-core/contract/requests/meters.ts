import { z } from 'zod';
import { correctedSchema, readingUnitSchema } from '../../wood/moisture/corrected.ts';
import { meterOfYardSchema, typedMeterSchema } from '../meter.ts';
import { meterFileSchema } from '../meter-file.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { boardTopics, type Topic } from '../topics.ts';
import { editOf, rowIdSchema } from '../yard.ts';
import { workSchema } from './work.ts';

/** Whose readings have another profile now. */
export const readingsMovedSchema = z.object({
  /** To undo it by. */
  act: z.uuid(),
  readings: z.number().int().min(0),
  boardIds: z.array(rowIdSchema),
  roundIds: z.array(rowIdSchema),
});
export type ReadingsMoved = z.infer<typeof readingsMovedSchema>;

export const ofMoved = (_: unknown, { boardIds, roundIds }: ReadingsMoved): Topic[] => [
  'meters',
  'stacks',
  ...boardTopics(boardIds),
  ...roundIds.map((id): Topic => `round:${id}`),
];

/** A raw value in the unit of a meter, and what it comes to. */
const readAsSchema = z.object({ raw: z.number(), unit: readingUnitSchema, corrected: correctedSchema });
export type ReadAs = z.infer<typeof readAsSchema>;

export const metersRequests = {
  /** In the order they were first met. */
  'meters.list': query({
    input: nothingSchema,
    output: z.array(meterOfYardSchema),
    topics: () => ['meters'],
  }),
  /** Those that are no longer owned. */
  'meters.closed': query({
    input: nothingSchema,
    output: z.array(meterOfYardSchema),
    topics: () => ['meters'],
  }),
  /** A hand meter. */
  'meters.add': command({
    input: typedMeterSchema.extend({
      /** What was typed in this round before the meter had a name is of it, too. */
      roundId: rowIdSchema.nullable().default(null),
      /** What is typed from now on is read off it. Without a meter in use it is in any case. */
      isTypedFrom: z.boolean().default(true),
    }),
    output: readingsMovedSchema.extend({ meterId: rowIdSchema }),
    topics: ofMoved,
  }),
  /** Its name, and what its values mean: from now on. Readings taken before keep what was known then. */
  'meters.edit': command({
    input: editOf(typedMeterSchema),
    output: meterOfYardSchema,
    topics: () => ['meters'],
  }),
  /** How it is read and what its values mean, as a file to share. */
  'meters.file': query({
    input: z.object({ meterId: rowIdSchema }),
    output: meterFileSchema,
    topics: () => ['meters'],
  }),
  /** Reads a meter as a file says, from now on. Of a hand meter only what its values mean is taken. */
  'meters.useFile': command({
    input: z.object({ meterId: rowIdSchema, file: meterFileSchema }),
    output: meterOfYardSchema,
    topics: () => ['meters', 'meter'],
  }),
  /** The connected meter is this one, which has another address now: its readings and all that is known of it go on. */
  'meters.recognize': command({
    input: z.object({ meterId: rowIdSchema, deviceId: z.string().max(200) }),
    /** To undo it by. */
    output: z.object({ act: z.uuid() }),
    topics: () => ['meters', 'meter'],
  }),
  /** A hand meter that no reading or oven check refers to; refused for any other. */
  'meters.delete': command({
    input: z.object({ meterId: rowIdSchema }),
    output: nothingSchema,
    topics: () => ['meters'],
  }),
  /** It is no longer owned: it leaves the lists, and its readings keep it. Connected again, it comes back. */
  'meters.close': command({
    input: z.object({ meterId: rowIdSchema }),
    output: nothingSchema,
    topics: () => ['meters'],
  }),
  /** Which meter typed values are read off from now on. */
  'meters.typeFrom': command({
    input: z.object({ meterId: rowIdSchema }),
    output: nothingSchema,
    topics: () => ['meters'],
  }),
  /**
   * How many readings of a meter have an earlier version of its profile, and whether a reading or a check was ever taken
   * with it: then it cannot be deleted.
   */
  'meters.use': query({
    input: z.object({ meterId: rowIdSchema }),
    output: z.object({ earlierReadings: z.number().int().min(0), isUsed: z.boolean() }),
    topics: () => ['meters', 'boards', 'stacks'],
  }),
  /** What a reading would come to if it had been taken with a meter; null where its number cannot be of that meter, or it is gone. */
  'readings.asReadWith': query({
    input: z.object({ readingId: rowIdSchema, meterId: rowIdSchema }),
    output: readAsSchema.nullable(),
    topics: () => ['meters', 'boards', 'species', 'places'],
  }),
  /** Moves these to the newest version; those of one round, where it is given. */
  'meters.updateEarlier': command({
    input: z.object({
      meterId: rowIdSchema,
      roundId: rowIdSchema.nullable().default(null),
      work: workSchema,
    }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** Moves a reading, or all of its round that have the same profile, to the newest profile of a meter. */
  'readings.setMeter': command({
    input: z.object({
      readingId: rowIdSchema,
      scope: z.enum(['reading', 'round']),
      meterId: rowIdSchema,
      work: workSchema,
    }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
};
