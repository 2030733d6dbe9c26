import { z } from 'zod';
import { whenSchema } from '../../probing/calls/ready-in.ts';
import { stackDueSchema } from '../../probing/plan/stack-call.ts';
import { instantSchema } from '../../time.ts';
import { messageSchema } from '../../words/message.ts';
import { command, nothingSchema, query } from '../request-kinds.ts';
import { boardTopics, type Topic } from '../topics.ts';
import { says } from '../validation.ts';
import {
  boardSchema,
  daySchema,
  editOf,
  nameSchema,
  noteSchema,
  rowIdSchema,
  versionSchema,
} from '../yard.ts';
import { workSchema } from './work.ts';

/** A move that is to be made: of a stack, or of one board. */
export const plannedMoveSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  uuid: z.uuid(),
  /** Of one of the two; the other is null. */
  stackId: rowIdSchema.nullable(),
  boardId: rowIdSchema.nullable(),
  placeId: rowIdSchema,
  plannedOn: daySchema,
  note: noteSchema,
});
export type PlannedMove = z.infer<typeof plannedMoveSchema>;

const whenAndWhere = plannedMoveSchema.pick({ plannedOn: true, note: true }).extend({
  placeId: z.int(says('validation.place-missing')).positive(),
});
/** What a person changes of one. */
export const plannedMoveFieldsSchema = whenAndWhere;

export const projectSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  uuid: z.uuid(),
  name: nameSchema,
  /** Local day; null where there is no hurry. */
  neededBy: daySchema.nullable(),
  note: noteSchema,
});
export const projectFieldsSchema = projectSchema.pick({ name: true, neededBy: true, note: true });
export type ProjectFields = z.infer<typeof projectFieldsSchema>;

const ofStack = { stackId: rowIdSchema, stackName: z.string(), uuid: z.uuid() };
const plannedMoveOnListSchema = z.object({
  /** Of the stack, or the board's ID. */
  name: z.string(),
  placeName: z.string(),
  move: plannedMoveSchema,
});

const dateSchema = z.discriminatedUnion('kind', [
  /** Readings are next of use on that day. */
  z.object({
    kind: z.literal('probe'),
    on: daySchema,
    /** Where it is because a reading is old: when that was taken. */
    readAt: instantSchema.nullable(),
    /** Whether that is of some of its boards, and others were read later. */
    isOfSome: z.boolean(),
    /** The ID of the only one that it is of; null where it is of several. */
    boardCode: z.string().nullable(),
    ...ofStack,
  }),
  /** The next of its boards, or the last of several, is likely ready; `placeName` where only a move there makes it so. */
  z.object({
    kind: z.literal('ready'),
    on: daySchema,
    which: z.enum(['next', 'last']),
    /** Of how many boards that is known. */
    boards: z.number().int(),
    when: whenSchema,
    placeName: z.string().nullable(),
    ...ofStack,
  }),
  plannedMoveOnListSchema.extend({ kind: z.literal('move'), on: daySchema }),
  z.object({
    kind: z.literal('needed'),
    on: daySchema,
    projectId: rowIdSchema,
    name: z.string(),
    uuid: z.uuid(),
    boards: z.number().int(),
  }),
]);
export type DateOfYard = z.infer<typeof dateSchema>;

/** A project with the boards that are reserved for it. */
const projectOnPageSchema = projectSchema.extend({
  boards: z.array(
    boardSchema.pick({ code: true }).extend({
      boardId: rowIdSchema,
      stackName: z.string(),
      placeName: z.string(),
      /** Whether it will be ready in time; null where nothing can be forecast of it. */
      makesIt: z.enum(['yes', 'if-moved', 'no']).nullable(),
      /** The same in a sentence, with where it must be for that. */
      why: messageSchema,
    }),
  ),
});
export type ProjectOnPage = z.infer<typeof projectOnPageSchema>;

const byId = z.object({ id: rowIdSchema, basedOn: versionSchema });
const ofDates = (): Topic[] => ['dates'];

export const dateRequests = {
  'dates.list': query({
    input: nothingSchema,
    output: z.object({
      /** What stacks are due for today, the most urgent first, as the list of stacks has them. */
      due: z.array(z.object({ ...ofStack, due: stackDueSchema })),
      /** Everything with a day, the earliest first; what was planned for a day that is past, too. */
      dates: z.array(dateSchema),
    }),
    topics: () => ['dates', 'stacks', 'boards', 'places', 'outlooks'],
  }),
  /** Those of a stack, or of a board; the other is null. */
  'plannedMoves.of': query({
    input: plannedMoveSchema.pick({ stackId: true, boardId: true }),
    output: z.array(plannedMoveOnListSchema),
    topics: () => ['dates', 'places'],
  }),
  'plannedMoves.add': command({
    input: whenAndWhere
      .extend({ stackId: rowIdSchema.nullable(), boardId: rowIdSchema.nullable() })
      .refine(
        ({ stackId, boardId }) => (stackId === null) !== (boardId === null),
        says('dates.what-missing'),
      ),
    output: plannedMoveSchema,
    topics: ofDates,
  }),
  'plannedMoves.edit': command({ input: editOf(whenAndWhere), output: plannedMoveSchema, topics: ofDates }),
  'plannedMoves.delete': command({ input: byId, output: z.object({ act: z.uuid() }), topics: ofDates }),
  /** Makes the move now, and takes it off the plan. */
  'plannedMoves.make': command({
    input: byId.extend({ work: workSchema }),
    output: z.object({ act: z.uuid(), boardIds: z.array(rowIdSchema) }),
    topics: (_, { boardIds }) => ['dates', 'stacks', ...boardTopics(boardIds)],
  }),
  'projects.list': query({
    input: nothingSchema,
    output: z.array(projectOnPageSchema),
    topics: () => ['dates', 'stacks', 'boards', 'places', 'outlooks'],
  }),
  'projects.add': command({ input: projectFieldsSchema, output: projectSchema, topics: ofDates }),
  'projects.edit': command({ input: editOf(projectFieldsSchema), output: projectSchema, topics: ofDates }),
  /** Its boards are reserved for nothing then. */
  'projects.delete': command({ input: byId, output: z.object({ act: z.uuid() }), topics: ofDates }),
  /** Reserves boards for a project, in place of any other; for none where it is null. */
  'reservations.set': command({
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(100_000),
      projectId: rowIdSchema.nullable(),
      /** A project that is added for them; null for one that is there, or none. */
      newProject: projectFieldsSchema.nullable().default(null),
    }),
    output: z.object({ act: z.uuid() }),
    topics: ofDates,
  }),
  /** The project that a board is reserved for. */
  'reservations.ofBoard': query({
    input: z.object({ boardId: rowIdSchema }),
    output: projectSchema.nullable(),
    topics: () => ['dates'],
  }),
};
