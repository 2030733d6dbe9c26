import { z } from 'zod';
import { callSchema } from '../../probing/calls/assessment.ts';
import { givenExclusionSchema } from '../../probing/readings/exclusion.ts';
import { dayOrderSchema } from '../../probing/readings/order-of-day.ts';
import { judgedReadingSchema } from '../../probing/readings/reading.ts';
import { instantSchema } from '../../time.ts';
import { messageSchema } from '../../words/message.ts';
import { leftFilterSchema, leftTotalSchema } from '../archive.ts';
import { MOST_AT_ONCE } from '../first-stack.ts';
import { boardForecastSchema } from '../forecast.ts';
import { originSchema, readBeforeSchema } from '../origin.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { stackOrderSchema } from '../stack-order.ts';
import { boardTopics, type Topic } from '../topics.ts';
import {
  addedBoardSchema,
  boardEditSchema,
  boardFilterSchema,
  boardRowSchema,
  boardSortSchema,
  latestFindingSchema,
  moveSchema,
  rowIdSchema,
  sharedBoardFieldsSchema,
  versionSchema,
} from '../yard.ts';
import { workSchema } from './work.ts';

const byId = z.object({ id: rowIdSchema });
/** Each once, in the order in which it was first named. */
export const someBoards = z
  .array(rowIdSchema)
  .min(1)
  .max(100_000)
  .transform((ids) => [...new Set(ids)]);

const byAct = z.object({ act: z.uuid() });
const newVersionsSchema = z.array(z.object({ id: rowIdSchema, version: versionSchema }));
/** What a person answers about the day of a move; each is refused as a question until it is. */
export const moveAnswersSchema = z.object({
  /** Whether it may come before moves of a later day, or after those of an earlier one. */
  isInserted: z.boolean().default(false),
  /** Whether it may come before the sawing: the log was there. */
  isBeforeSawing: z.boolean().default(false),
  /** Which came first, where a board was probed on that day and the time of the one or the other is not known. */
  order: dayOrderSchema.nullable().default(null),
});
export const placeSinceSchema = moveAnswersSchema.extend({
  placeId: rowIdSchema,
  since: instantSchema,
  /** Whether of that instant only the local day is known: it then comes after what else was moved on that day. */
  isDayOnly: z.boolean().default(false),
});

export const boardRequests = {
  /** Of a stack, those that are with it, or by the filter those that are elsewhere; without a stack, all. */
  'boards.list': query({
    input: z.object({
      stackId: rowIdSchema.nullable(),
      /** Part of a board ID, species or log. */
      search: z.string().max(80),
      filter: boardFilterSchema.nullable().default(null),
      /** Which of those that left, where the filter shows these. */
      left: leftFilterSchema.default({ became: null, year: null, soldTo: null }),
      sort: boardSortSchema.default('added'),
      descending: z.boolean().default(false),
      offset: z.number().int().min(0),
      limit: z.number().int().min(1).max(500),
    }),
    output: z.object({ total: z.number().int(), rows: z.array(boardRowSchema) }),
    topics: ({ stackId }) => [
      'stacks',
      'places',
      'species',
      'outlooks',
      stackId === null ? 'boards' : `stack:${stackId}`,
    ],
  }),
  /** What the boards that left the yard amount to, the newest year first. */
  'boards.left': query({
    input: nothingSchema,
    output: z.array(leftTotalSchema),
    topics: () => ['boards', 'stacks'],
  }),
  'boards.get': query({
    input: byId,
    output: z.object({
      board: boardRowSchema,
      moves: z.array(moveSchema),
      /** Every reading ever taken of its wood, newest round first, excluded ones too: on it, or before a cut on what it came from. */
      readings: z.array(judgedReadingSchema),
      /** What each round found, oldest first. */
      findings: z.array(latestFindingSchema),
      isSpeciesConfirmed: z.boolean(),
      /** What it was cut from, and what was merged with it. */
      cameFrom: z.array(originSchema),
      /** What was cut from it, or the one that it was merged into. */
      becameOf: z.array(originSchema),
      /** Every board whose readings are among these, but for itself. */
      readBefore: z.array(readBeforeSchema),
      /** What is not known of it, and what that would make better. */
      missing: z.array(messageSchema),
    }),
    topics: ({ id }) => ['stacks', 'places', 'species', 'endUses', 'outlooks', `board:${id}`],
  }),
  /** When it will be ready for its use, where it is and elsewhere, by its history. Takes a moment. */
  'boards.forecast': query({
    input: byId,
    output: boardForecastSchema,
    topics: () => ['boards', 'stacks', 'places', 'species', 'endUses'],
  }),
  'boards.add': command({
    input: z.array(addedBoardSchema).min(1).max(500),
    output: z.array(boardRowSchema),
    topics: (_, boards) => [
      'boards',
      ...[...new Set(boards.map(({ stackId }) => stackId))].map((id): Topic => `stack:${id}`),
    ],
  }),
  'boards.edit': command({
    input: boardEditSchema,
    output: boardRowSchema,
    topics: ({ id, changed }, { stackId }) => [
      ...boardTopics([id]),
      `stack:${stackId}`,
      // It left another stack.
      ...(changed.stackId === undefined ? [] : (['stacks'] as const)),
    ],
  }),
  /** Does the same to several boards, in one act. What is null is left as it is. */
  'boards.editTogether': command({
    input: z.object({
      /** Each once, in the order in which they are laid. */
      boards: z
        .array(z.object({ id: rowIdSchema, basedOn: versionSchema }))
        .min(1)
        .max(100_000)
        .transform((boards) => [...new Map(boards.map((board) => [board.id, board])).values()]),
      changed: sharedBoardFieldsSchema,
      /** They were moved before the day on which they were sawn: their logs were there. */
      isBeforeSawing: z.boolean().default(false),
      /** Puts them in that stack. What lay in another has no layer and column then, unless they are laid. */
      stackId: rowIdSchema.nullable().default(null),
      /** Lays them layer by layer in the order given. */
      stackOrder: stackOrderSchema.nullable().default(null),
      move: placeSinceSchema.nullable().default(null),
      /** The use of their stacks, and so of every board in these. */
      endUseId: z.string().max(60).nullable().default(null),
      /** Of their latest rounds: excludes every reading for one reason, or includes what a person excluded. */
      latestReadings: z
        .union([z.object({ exclude: givenExclusionSchema }), z.literal('include')])
        .nullable()
        .default(null),
      work: workSchema,
    }),
    output: z.object({
      /** To undo it by, and to ask what came of it. */
      act: z.uuid(),
      boards: newVersionsSchema,
      /** The calls that these boards, and the others of stacks whose use changed, had before. */
      callsBefore: z.array(z.object({ id: rowIdSchema, call: callSchema.nullable() })),
    }),
    topics: ({ boards }) => ['stacks', ...boardTopics(boards.map(({ id }) => id))],
  }),
  /** What came of `boards.editTogether` so far: whether it was undone since, and whose calls it changed. */
  'boards.callsChanged': query({
    input: byAct,
    output: z.object({
      isUndone: z.boolean(),
      /** Whether some are still being judged. */
      isJudging: z.boolean(),
      changed: z.array(z.object({ code: z.string(), call: callSchema.nullable() })),
    }),
    topics: () => ['stacks', 'boards'],
  }),
  'boards.move': command({
    input: placeSinceSchema.extend({ boardIds: someBoards, work: workSchema }),
    output: z.object({ moved: z.number().int() }),
    topics: ({ boardIds }) => ['stacks', ...boardTopics(boardIds)],
  }),
  /** A person checked that its species is right, so its readings raise no more questions about it. */
  'boards.confirmSpecies': command({
    input: byId,
    output: nothingSchema,
    topics: ({ id }) => boardTopics([id]),
  }),
  /** Which of these IDs boards of the yard have now, and in which stack. */
  'boards.withCodes': query({
    input: z.object({ codes: z.array(z.string().max(200)).max(MOST_AT_ONCE) }),
    output: z.array(z.object({ code: z.string(), stackName: z.string() })),
    topics: () => ['boards', 'stacks'],
  }),
  /** A free ID that continues the stack's numbering. */
  'boards.nextCode': query({
    input: z.object({ stackId: rowIdSchema }),
    output: z.object({ code: z.string() }),
    topics: () => ['boards', 'stacks'],
  }),
};
