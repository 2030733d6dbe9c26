import { z } from 'zod';
import { givenExclusionSchema } from '../../probing/readings/exclusion.ts';
import {
  checkedMeterSchema,
  meterCheckSchema,
  newTestBlockSchema,
  questionableMeterSchema,
  testBlockSchema,
} from '../meter-checks.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { woodTempSchema } from '../round.ts';
import type { Topic } from '../topics.ts';
import { editOf, rowIdSchema } from '../yard.ts';
import { ofMoved, readingsMovedSchema } from './meters.ts';
import { workSchema } from './work.ts';

const topics = (): Topic[] => ['meters'];

/** Whether meters are right, by a test block or a resistor. */
export const meterCheckRequests = {
  'meterChecks.list': query({ input: nothingSchema, output: z.array(checkedMeterSchema), topics }),
  /** Of a round whose meter was off, and is not corrected for that. */
  'meterChecks.ofRound': query({
    input: z.object({ roundId: rowIdSchema }),
    output: z.array(questionableMeterSchema),
    topics: ({ roundId }) => ['meters', `round:${roundId}`],
  }),
  'testBlocks.add': command({ input: newTestBlockSchema, output: testBlockSchema, topics }),
  'testBlocks.edit': command({
    input: editOf(newTestBlockSchema.omit({ meterId: true })),
    output: testBlockSchema,
    topics,
  }),
  /** Its checks stay in the file. */
  'testBlocks.close': command({
    input: testBlockSchema.pick({ id: true }).extend({ basedOn: testBlockSchema.shape.version }),
    output: z.object({ act: z.uuid() }),
    topics,
  }),
  /** What the meter shows on its block now. */
  'meterChecks.add': command({
    input: z.object({
      blockId: rowIdSchema,
      shown: z.number().positive().max(1e15),
      tempC: woodTempSchema,
    }),
    output: meterCheckSchema,
    topics,
  }),
  /** Leaves a check out: it stays on record, and what it corrected is as before it. */
  'meterChecks.exclude': command({
    input: z.object({ checkId: rowIdSchema, why: givenExclusionSchema, work: workSchema }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** It counts again. Nothing is corrected by it until a person says so. */
  'meterChecks.include': command({
    input: z.object({ checkId: rowIdSchema, work: workSchema }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** Corrects what was read since a check, and where it is the newest, what will be. */
  'meterChecks.correct': command({
    input: z.object({ checkId: rowIdSchema, work: workSchema }),
    output: readingsMovedSchema.extend({ checkId: rowIdSchema }),
    topics: ofMoved,
  }),
};
