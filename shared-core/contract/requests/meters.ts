import { z } from 'zod';
import { meterOfYardSchema, typedMeterSchema } from '../meter.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { boardTopics, type Topic } from '../topics.ts';
import { editOf, rowIdSchema } from '../yard.ts';

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

export const metersRequests = {
  /** In the order they were first met. */
  'meters.list': query({
    input: nothingSchema,
    output: z.array(meterOfYardSchema),
    topics: () => ['meters'],
  }),
  /** A hand meter. What is typed from now on is read off it. */
  'meters.add': command({
    input: typedMeterSchema.extend({
      /** What was typed in this round before the meter had a name is of it, too. */
      roundId: rowIdSchema.nullable().default(null),
    }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** Its name, and what its values mean: from now on. Readings taken before keep what was known then. */
  'meters.edit': command({
    input: editOf(typedMeterSchema),
    output: meterOfYardSchema,
    topics: () => ['meters'],
  }),
  /** A hand meter that no reading or oven check refers to; refused for any other. */
  'meters.delete': command({
    input: z.object({ meterId: rowIdSchema }),
    output: z.object({
      /** To undo it by. */
      act: z.uuid(),
    }),
    topics: () => ['meters'],
  }),
  /** Refused where the meters were changed since. */
  'meters.undoDelete': command({
    input: z.object({ act: z.uuid() }),
    output: nothingSchema,
    topics: () => ['meters'],
  }),
  /** Which meter typed values are read off from now on. */
  'meters.typeFrom': command({
    input: z.object({ meterId: rowIdSchema }),
    output: nothingSchema,
    topics: () => ['meters'],
  }),
  /** How many readings of a meter have an earlier version of its profile. */
  'meters.earlierReadings': query({
    input: z.object({ meterId: rowIdSchema }),
    output: z.object({ readings: z.number().int().min(0) }),
    topics: () => ['meters', 'boards', 'stacks'],
  }),
  /** Moves these to the newest version; those of one round, where it is given. */
  'meters.updateEarlier': command({
    input: z.object({ meterId: rowIdSchema, roundId: rowIdSchema.nullable().default(null) }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** Moves a reading, or all of its round that have the same profile, to the newest profile of a meter. */
  'readings.setMeter': command({
    input: z.object({ readingId: rowIdSchema, scope: z.enum(['reading', 'round']), meterId: rowIdSchema }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** Puts back the profiles that such an act changed; refused where any was changed since. */
  'readings.undoSetMeter': command({
    input: z.object({ act: z.uuid() }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
};
