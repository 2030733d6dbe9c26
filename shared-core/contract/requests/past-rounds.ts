import { z } from 'zod';
import { dayOrderSchema } from '../../probing/readings/order-of-day.ts';
import { planBasisSchema } from '../../probing/readings/plan-basis.ts';
import { judgedReadingSchema, MOST_TYPED, spotSchema } from '../../probing/readings/reading.ts';
import { instantSchema } from '../../time.ts';
import { readingUnitSchema } from '../../wood/moisture/corrected.ts';
import { messageSchema } from '../../words/message.ts';
import { command, query } from '../request-kinds.ts';
import { woodTempSchema } from '../round.ts';
import { boardTopics } from '../topics.ts';
import { says } from '../validation.ts';
import { boardSchema, daySchema, rowIdSchema } from '../yard.ts';
import { givenDepthSchema, typedSchema } from './rounds.ts';
import { workSchema } from './work.ts';

/** As many columns as a page of a notebook has room for. */
export const MOST_COLUMNS = 12;
const MOST_BOARDS = 5000;

/** What holds for all readings of a notebook's page. */
const pageSchema = z.object({
  stackId: rowIdSchema,
  /** When it was written; noon where only the day is known. */
  startedAt: instantSchema,
  /** The meter that the values were read off; null where unknown. */
  meterId: rowIdSchema.nullable(),
  /** In which they were written: that of the meter. */
  unit: readingUnitSchema,
  /** Of the wood, °C; null where unknown. */
  woodTempC: woodTempSchema,
  /** Of the air then, °C, where that of the wood is unknown; null where that is, too. */
  airTempC: woodTempSchema,
  /** Of each column, mm; or as deep as the pins of the meter reach, or not known. */
  depths: z
    .array(z.union([givenDepthSchema, z.literal('pins'), z.literal('unknown')]))
    .min(1)
    .max(MOST_COLUMNS),
});
export type PastPage = z.infer<typeof pageSchema>;

/** A line of the page: what was read on one board, column by column; null for a blank. */
const lineSchema = z.object({
  boardId: rowIdSchema,
  raws: z.array(typedSchema.nullable()).max(MOST_COLUMNS),
  /** The columns of which the meter showed only that they are more. */
  above: z
    .array(
      z
        .number()
        .int()
        .min(0)
        .max(MOST_COLUMNS - 1),
    )
    .max(MOST_COLUMNS)
    .default([]),
});
export type PastLine = z.infer<typeof lineSchema>;

/** Whether a meter of the page's unit can show all of these. */
const areOnAMeter = (unit: PastPage['unit'], lines: readonly PastLine[]): boolean =>
  lines.every(({ raws }) => raws.every((raw) => raw === null || raw <= MOST_TYPED[unit]));

/** A board that a page may have readings of. */
const pageBoardSchema = boardSchema
  .pick({ code: true, thicknessMm: true, thicknessQuarters: true, lengthMm: true })
  .extend({
    boardId: rowIdSchema,
    speciesName: z.string(),
    /** It was sawn, or cut from another, later than that day, so nothing can have been read. */
    isLater: z.boolean(),
    /** Its first place, where it is known to be there only since a later day; null where it was there by then. */
    placedLater: z
      .object({ placeName: z.string(), since: instantSchema, isSawnKnown: z.boolean() })
      .nullable(),
    /** What a person must know: it was elsewhere then, is not here any more, or has another ID as well. */
    remarks: z.array(messageSchema),
  });
export type PageBoard = z.infer<typeof pageBoardSchema>;

/** What one value comes to, before it is saved. */
const checkedCellSchema = judgedReadingSchema
  .pick({ raw: true, unit: true, corrected: true, suspicions: true, counts: true })
  .extend({ column: z.number().int().min(0), spot: spotSchema });
export type CheckedCell = z.infer<typeof checkedCellSchema>;

/** Since when boards were at their first place: since each was sawn, or since a day. */
export const thereSinceSchema = z.union([z.literal('sawn'), daySchema]);
export type ThereSince = z.infer<typeof thereSinceSchema>;

/** Rounds that were written on paper, and are typed later. */
export const pastRoundRequests = {
  /** The boards of a stack on that day, as far as the yard knows. */
  'pastRounds.page': query({
    input: pageSchema.pick({ stackId: true, startedAt: true }).extend({
      /** Boards that the page has besides, wherever they are or were. */
      more: z.array(rowIdSchema).max(MOST_BOARDS).default([]),
    }),
    output: z.object({
      /** Where most of them were then, whose air readings are corrected and judged by; null without boards. */
      placeName: z.string().nullable(),
      boards: z.array(pageBoardSchema),
      /** IDs of those that were sold, used or scrapped before that day. */
      gone: z.array(z.string()),
      /** A round of the stack on the same day, of so many boards; null where there is none. */
      sameDay: z.object({ roundId: rowIdSchema, boards: z.number().int() }).nullable(),
    }),
    topics: ({ stackId }) => ['boards', 'stacks', `stack:${stackId}`],
  }),
  /** The board that a notebook means by an ID: also one that left, was cut, merged or renamed since; null for none. */
  'pastRounds.boardOf': query({
    input: z.object({ code: z.string().trim().min(1).max(80) }),
    output: z.object({
      /** In the letters that IDs have. */
      code: z.string(),
      boardId: rowIdSchema.nullable(),
    }),
    topics: () => ['boards'],
  }),
  /** What is questionable of a line; the same checks as where it had been read live. */
  'pastRounds.check': query({
    input: pageSchema.extend({ line: lineSchema }).refine(({ unit, line }) => areOnAMeter(unit, [line]), {
      path: ['line'],
      ...says('validation.no-meter-shows'),
    }),
    output: z.object({ planBasis: planBasisSchema, cells: z.array(checkedCellSchema) }),
    topics: ({ line }) => [`board:${line.boardId}`, 'places', 'species', 'meters'],
  }),
  /** Saves a page as a finished round of its day. All of it is one act. */
  'pastRounds.save': command({
    input: pageSchema
      .extend({
        /** Only the day is known. */
        isDayOnly: z.boolean(),
        lines: z.array(lineSchema).min(1).max(MOST_BOARDS),
        /** Of boards that are known to be at their first place only since a later day; null where it stays so. */
        thereSince: thereSinceSchema.nullable().default(null),
        /** The person was asked about the date, and it is right. */
        isDateRight: z.literal(true).optional(),
        /** The person was asked about the same readings in a round of that day, and these are others. */
        isAnother: z.literal(true).optional(),
        /** Where boards were moved on that day, too: which came first; null while unknown. */
        order: dayOrderSchema.nullable().default(null),
        work: workSchema,
      })
      .refine(({ unit, lines }) => areOnAMeter(unit, lines), {
        path: ['lines'],
        ...says('validation.no-meter-shows'),
      }),
    output: z.object({
      roundId: rowIdSchema,
      boardIds: z.array(rowIdSchema),
      readings: z.number().int(),
      /** The act that did it. */
      act: z.uuid(),
    }),
    topics: ({ stackId }, { roundId, boardIds }) => [
      'stacks',
      `stack:${stackId}`,
      `round:${roundId}`,
      ...boardTopics(boardIds),
    ],
  }),
};
