import { z } from 'zod';
import { givenExclusionSchema } from '../../probing/readings/exclusion.ts';
import { instantSchema } from '../../time.ts';
import { givenGramsSchema } from '../oven-checks.ts';
import { command, query } from '../request-kinds.ts';
import {
  givenBoardKgSchema,
  newSampleCutSchema,
  type SampleBoardState,
  sampleBoardStateSchema,
  sampleRecordSchema,
} from '../sample-board.ts';
import type { Topic } from '../topics.ts';
import { rowIdSchema } from '../yard.ts';

const output = sampleBoardStateSchema;
const topics = (_: unknown, { boardId }: SampleBoardState): Topic[] => [`board:${boardId}`];

/** A board followed by its weight; every change answers with all of it. */
export const sampleRequests = {
  'samples.get': query({
    input: z.object({ boardId: rowIdSchema }),
    output,
    topics: ({ boardId }) => ['stacks', 'endUses', `board:${boardId}`],
  }),
  /** Sections were cut beside it and weighed. */
  'samples.cut': command({ input: newSampleCutSchema, output, topics }),
  /** A section is dry; weighed again, the newest weight holds. */
  'samples.drySection': command({
    input: z.object({ sectionId: rowIdSchema, grams: givenGramsSchema, at: instantSchema }),
    output,
    topics,
  }),
  'samples.weigh': command({
    input: z.object({ boardId: rowIdSchema, kg: givenBoardKgSchema, at: instantSchema }),
    output,
    topics,
  }),
  /** Excludes a cut or a weight; it stays in the file. */
  'samples.exclude': command({
    input: sampleRecordSchema.extend({ why: givenExclusionSchema }),
    output,
    topics,
  }),
  'samples.include': command({ input: sampleRecordSchema, output, topics }),
};
