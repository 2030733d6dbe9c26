import { z } from 'zod';
import { ifMovedSchema } from '../../probing/plan/if-moved.ts';
import { stackPlanSchema } from '../../probing/plan/stack-plan.ts';
import { tallyBySchema, tallySchema } from '../../tally/tally.ts';
import { instantSchema } from '../../time.ts';
import { startedStackSchema } from '../first-stack.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { stackVolumeSchema } from '../stack-volume.ts';
import type { Topic } from '../topics.ts';
import {
  boardRowSchema,
  closedStackSchema,
  nameSchema,
  newStackSchema,
  rowIdSchema,
  stackEditSchema,
  stackOnPageSchema,
  stackRowSchema,
  versionSchema,
} from '../yard.ts';
import { placeSinceSchema } from './boards.ts';
import { workSchema } from './work.ts';

const byId = z.object({ id: rowIdSchema });
const ofStack = ({ id }: { id: number }): Topic[] => ['stacks', 'dates', `stack:${id}`];
const asShown = byId.extend({ basedOn: versionSchema });

export const stackRequests = {
  'stacks.list': query({
    input: nothingSchema,
    output: z.array(stackRowSchema),
    topics: () => ['stacks', 'boards', 'places', 'endUses', 'outlooks'],
  }),
  'stacks.get': query({
    input: byId,
    output: stackOnPageSchema,
    topics: ({ id }) => ['stacks', 'places', 'species', 'endUses', 'outlooks', `stack:${id}`],
  }),
  'stacks.add': command({
    input: newStackSchema,
    output: stackRowSchema,
    topics: (_, { id }) => ['stacks', `stack:${id}`],
  }),
  /** Adds a stack, its place, and boards alike with IDs made for them, in one act. */
  'stacks.start': command({
    input: startedStackSchema,
    output: stackRowSchema,
    topics: (_, { id }) => ['places', 'stacks', 'boards', `stack:${id}`],
  }),
  'stacks.edit': command({
    input: stackEditSchema,
    output: stackRowSchema,
    topics: ({ id }) => ['stacks', `stack:${id}`],
  }),
  /** Moves the stack and every board that is with it. */
  'stacks.move': command({
    input: byId.extend({ ...placeSinceSchema.shape, work: workSchema }),
    output: stackRowSchema,
    topics: ({ id }) => ['stacks', 'boards', `stack:${id}`],
  }),
  /** The newest first. */
  'stacks.closed': query({
    input: nothingSchema,
    output: z.array(closedStackSchema),
    topics: () => ['stacks', 'places'],
  }),
  /** It leaves the lists, with everything known of it; refused while boards or an open round are in it. */
  'stacks.close': command({ input: asShown, output: stackRowSchema, topics: ofStack }),
  /** It is in the lists again; with its place, where that was closed as well. */
  'stacks.reopen': command({
    input: asShown.extend({
      /** Another name, where its own is another stack's by now. */
      name: nameSchema.nullable().default(null),
    }),
    output: stackRowSchema,
    topics: (input) => [...ofStack(input), 'places'],
  }),
  /** Refused where boards, rounds or pictures are of it. Moves planned for it go with it. */
  'stacks.delete': command({ input: asShown, output: z.object({ act: z.uuid() }), topics: ofStack }),
  /**
   * All its boards come to another stack, with its note, pictures and planned moves; it is closed then. Its rounds stay
   * rounds of it.
   */
  'stacks.merge': command({
    input: asShown.extend({
      intoId: rowIdSchema,
      /** Where and when its boards were moved for it; null: they stay where they are. */
      move: placeSinceSchema.nullable().default(null),
      work: workSchema,
    }),
    output: stackRowSchema,
    topics: () => ['yard'],
  }),
  /** How many of its boards to probe for that certainty, and which next; null without boards. */
  'stacks.plan': query({
    input: byId.extend({ certainty: z.number().min(0.5).max(0.99) }),
    output: stackPlanSchema.nullable(),
    topics: ({ id }) => ['stacks', 'places', 'species', 'endUses', 'outlooks', `stack:${id}`],
  }),
  /** What a move of a stack's boards, or of some boards, to each place would bring. */
  'stacks.ifMoved': query({
    input: z.union([byId, z.object({ boardIds: z.array(rowIdSchema).min(1).max(100_000) })]),
    output: ifMovedSchema,
    topics: () => ['stacks', 'boards', 'places', 'endUses', 'outlooks'],
  }),
  /** Its boards that are due to be moved to drier air or back under cover, and the IDs of those that stay. */
  'stacks.dueToMove': query({
    input: byId.extend({ kind: z.enum(['bring-in', 'move-back']) }),
    output: z.object({
      boards: z.array(boardRowSchema.pick({ id: true, version: true, code: true })),
      stay: z.array(z.string()),
    }),
    topics: ({ id }) => ['stacks', 'places', 'outlooks', `stack:${id}`],
  }),
  'stacks.volume': query({
    input: byId,
    output: stackVolumeSchema,
    topics: ({ id }) => ['stacks', 'species', 'endUses', `stack:${id}`],
  }),
  /** What boards amount to, split as asked: those with a stack, or all where it is null. */
  'tallies.get': query({
    input: z.object({
      stackId: rowIdSchema.nullable(),
      /** Each once. */
      by: z
        .array(tallyBySchema)
        .max(tallyBySchema.options.length)
        .refine((by) => new Set(by).size === by.length),
    }),
    output: tallySchema,
    topics: () => ['stacks', 'boards', 'species', 'endUses'],
  }),
  /** The layer above the highest that a board of the stack is in; 1 where none is. */
  'stacks.nextLayer': query({
    input: byId,
    output: z.object({ layer: z.number().int() }),
    topics: ({ id }) => ['stacks', `stack:${id}`],
  }),
  /** Since when most of its boards have been at its place; null where none is there. */
  'stacks.hereSince': query({
    input: byId,
    output: z.object({ since: instantSchema.nullable() }),
    topics: ({ id }) => ['stacks', `stack:${id}`],
  }),
};
