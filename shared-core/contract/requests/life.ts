import { z } from 'zod';
import { instantSchema } from '../../time.ts';
import { cutSchema, leavingNoteSchema, leavingSchema } from '../archive.ts';
import { boardPartSchema, recordSchema, recordsSchema, twiceRecordSchema } from '../entered-twice.ts';
import { command, query } from '../request-kinds.ts';
import { boardTopics } from '../topics.ts';
import { says } from '../validation.ts';
import { boardCodeSchema, boardRowSchema, boardSchema, rowIdSchema, versionSchema } from '../yard.ts';
import { someBoards } from './boards.ts';
import { workSchema } from './work.ts';

const ofBoards = ({ boardIds }: { boardIds: number[] }) =>
  ['stacks', 'places', 'dates', ...boardTopics(boardIds)] as const;

/** No board gives more. */
export const MOST_PIECES = 50;

/** What is given of a piece; everything else is as the board that it is cut from has it. */
export const pieceSchema = boardSchema.pick({ code: true, widthMm: true, lengthMm: true });

/** A board that is ripped or crosscut. */
export const cutInputSchema = z
  .object({
    boardId: rowIdSchema,
    how: cutSchema,
    /** When it was cut. */
    at: instantSchema,
    pieces: z.array(pieceSchema).min(1).max(MOST_PIECES),
    /** Whether they may be larger together than the board is entered; else that is refused as a question. */
    isLarger: z.boolean().default(false),
  })
  .refine(
    ({ pieces }) => new Set(pieces.map(({ code }) => code.toUpperCase())).size === pieces.length,
    says('validation.pieces-alike'),
  );

/** A board that was entered twice. */
export const mergeInputSchema = z
  .object({
    /** The record that stays. */
    id: rowIdSchema,
    basedOn: versionSchema,
    otherId: rowIdSchema,
    otherBasedOn: versionSchema,
    /** What the other record has right. */
    taken: z.array(boardPartSchema).max(boardPartSchema.options.length).default([]),
    /** Whose note, moves and reservation count. */
    note: recordsSchema.default('both'),
    moves: recordsSchema.default('both'),
    reservation: recordSchema.default('own'),
  })
  .refine(({ id, otherId }) => id !== otherId, says('validation.merged-with-itself'));

/** How boards leave the yard and come back, and become others. */
export const lifeRequests = {
  /** They leave all lists, counts and walks. Everything that is known of them stays. */
  'boards.archive': command({
    input: z.object({
      boardIds: someBoards,
      why: leavingSchema,
      note: leavingNoteSchema.default(''),
      /** When they left. */
      at: instantSchema,
      /** Whether that may be before the last reading of one; else it is refused as a question. */
      isBeforeReading: z.boolean().default(false),
      /** The same of the last move of one. */
      isBeforeMove: z.boolean().default(false),
      /** Whether one that is sold or scrapped may be reserved for a project; one that is used may be anyway. */
      isReserved: z.boolean().default(false),
      work: workSchema,
    }),
    output: z.object({
      archived: z.number().int(),
      /** Those that were reserved for a project, and are no more. */
      released: z.array(rowIdSchema),
    }),
    topics: ofBoards,
  }),
  /** Boards entered by mistake; refused where one has readings or weights. */
  'boards.delete': command({
    input: z.object({ boardIds: someBoards, work: workSchema }),
    output: z.object({ deleted: z.number().int() }),
    topics: ofBoards,
  }),
  /** Free IDs for the pieces of a board. */
  'boards.pieceCodes': query({
    input: z.object({ boardId: rowIdSchema, pieces: z.number().int().min(1).max(MOST_PIECES) }),
    output: z.object({ codes: z.array(boardCodeSchema) }),
    topics: () => ['boards'],
  }),
  /** Cuts a board into others. It is archived; its readings up to then are theirs, too. */
  'boards.cut': command({
    input: cutInputSchema,
    output: z.object({ pieceIds: z.array(rowIdSchema), projectName: z.string().nullable() }),
    topics: ({ boardId }, { pieceIds }) => [
      'stacks',
      'places',
      'dates',
      ...boardTopics([boardId, ...pieceIds]),
    ],
  }),
  /** Boards that may be the same as one, the likeliest first: by ID, stack, species and size. */
  'boards.alike': query({
    input: z.object({
      boardId: rowIdSchema,
      search: z.string().max(80),
      limit: z.number().int().min(1).max(50),
    }),
    output: z.array(boardRowSchema),
    topics: () => ['boards', 'stacks', 'species'],
  }),
  /** Both records of a board, to be compared. */
  'boards.twice': query({
    input: z.object({ id: rowIdSchema, otherId: rowIdSchema }),
    output: z.object({ own: twiceRecordSchema, other: twiceRecordSchema }),
    topics: ({ id, otherId }) => ['stacks', 'places', 'endUses', 'dates', ...boardTopics([id, otherId])],
  }),
  /** Makes one of two records of a board. The other is archived; its readings are those of the one that stays, too. */
  'boards.merge': command({
    input: mergeInputSchema,
    output: z.object({ id: rowIdSchema }),
    topics: ({ id, otherId }) => ['stacks', 'places', 'dates', ...boardTopics([id, otherId])],
  }),
  /** Archived boards are in the lists again. */
  'boards.bringBack': command({
    input: z.object({
      boards: z
        .array(
          z.object({
            id: rowIdSchema,
            /** Another ID, where its own is another board's by now. */
            code: boardCodeSchema.nullable().default(null),
          }),
        )
        .min(1)
        .max(100_000),
      work: workSchema,
    }),
    output: z.object({ broughtBack: z.number().int() }),
    topics: ({ boards }) => ['stacks', 'places', ...boardTopics(boards.map(({ id }) => id))],
  }),
};
