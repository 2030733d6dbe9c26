import { z } from 'zod';
import { givenExclusionSchema } from '../../probing/readings/exclusion.ts';
import { dayOrderSchema } from '../../probing/readings/order-of-day.ts';
import { coreWaySchema } from '../../probing/readings/plan-basis.ts';
import {
  depthFromSchema,
  isOnAMeter,
  MOST_TYPED,
  type Reading,
  spotSchema,
} from '../../probing/readings/reading.ts';
import { instantSchema } from '../../time.ts';
import { readingUnitSchema } from '../../wood/moisture/corrected.ts';
import { messageSchema } from '../../words/message.ts';
import { command, nothingSchema, ofWindow, query } from '../request-kinds.ts';
import { roundDateSchema, roundStateSchema, roundSummarySchema, woodTempSchema } from '../round.ts';
import type { Topic } from '../topics.ts';
import { says } from '../validation.ts';
import { daySchema, editOf, rowIdSchema } from '../yard.ts';
import { ofMoved, readingsMovedSchema } from './meters.ts';
import { workSchema } from './work.ts';

/** A value as a person reads it off a meter, slips of the decimal point included: they are saved and questioned. */
export const typedSchema = z
  .number()
  .min(0, says('validation.negative-reading'))
  .max(MOST_TYPED.ohm, says('validation.no-meter-shows'))
  .refine(isOnAMeter, says('validation.zero-reading'));

/** Pins less deep than that only touch the wood. */
export const givenDepthSchema = z.number().min(1).max(500);
const shownDepthSchema = z.object({ depthMm: spotSchema.shape.depthMm, depthFrom: depthFromSchema });
/** How deep a reading was, and who says so. */
export type ShownDepth = z.infer<typeof shownDepthSchema>;

/** Whatever a file has. */
const savedSchema = z.number().min(-MOST_TYPED.ohm).max(MOST_TYPED.ohm);
const shownValueSchema = z.object({
  raw: savedSchema,
  unit: readingUnitSchema,
  /** The meter showed only that it is more. */
  isAbove: z.boolean().default(false),
  woodTempC: savedSchema.nullable(),
});
/** The value of a reading, and the wood's temperature that holds for it. */
export type ShownValue = z.infer<typeof shownValueSchema>;
export const shownValueOf = ({ raw, unit, isAbove = false, woodTempC }: Reading): ShownValue => ({
  raw,
  unit,
  isAbove,
  woodTempC,
});

const inRound = z.object({ roundId: rowIdSchema });
const ofReading = z.object({ readingId: rowIdSchema });
const atSpot = inRound.extend({
  boardId: rowIdSchema,
  spotIndex: z.number().int().min(0),
  /** The newest reading at that spot which the window shows and which is not excluded; another one there refuses this. */
  newestReadingId: rowIdSchema.nullable(),
  /** A reading at that spot that is excluded for the new one. */
  replaces: rowIdSchema.optional(),
});

/** Where a reading was saved, excluded or included. */
const readingOwnerSchema = z.object({ roundId: rowIdSchema, boardId: rowIdSchema, stackId: rowIdSchema });
export type ReadingOwner = z.infer<typeof readingOwnerSchema>;

export const readingTopics = ({ roundId, boardId, stackId }: ReadingOwner): Topic[] => [
  'boards',
  `board:${boardId}`,
  `stack:${stackId}`,
  `round:${roundId}`,
];
const ofChangedReading = (_: unknown, owner: ReadingOwner): Topic[] => readingTopics(owner);

export const roundRequests = {
  /** Resumes the unfinished round of a stack, or starts one, and opens it. */
  'rounds.start': command({
    input: z.object({
      stackId: rowIdSchema,
      /** Where the boards are that are read; null: with the stack. */
      placeId: rowIdSchema.nullable().default(null),
      woodTempC: woodTempSchema,
      /** The local day its readings were taken on, where that is past: they are typed from paper then. */
      startedOn: daySchema.nullable().default(null),
      /** The person was asked about the date, or the clock. */
      isDateRight: z.literal(true).optional(),
      /** Where boards were moved on that past day, too: which came first; null while unknown. */
      order: dayOrderSchema.nullable().default(null),
    }),
    output: roundStateSchema,
    topics: (_, { id, stackId }) => ['stacks', `stack:${stackId}`, `round:${id}`],
  }),
  'rounds.get': query({
    input: inRound,
    output: roundStateSchema,
    topics: ({ roundId }) => ['stacks', 'places', 'species', 'endUses', `round:${roundId}`],
  }),
  /** Aims the window at a spot of the round: where it aimed before, else at the first open one. */
  'rounds.open': ofWindow(command({ input: inRound, output: roundStateSchema, topics: () => [] })),
  /** The round is no longer on the window's screen: nothing of the meter is saved until the window opens it again. */
  'rounds.leave': ofWindow(command({ input: inRound, output: nothingSchema, topics: () => [] })),
  /** The board aimed at comes, with its readings, as the event `round.changed`. */
  'rounds.aim': ofWindow(
    command({
      input: inRound.extend({
        boardId: rowIdSchema,
        spotIndex: z.number().int().min(0).nullable(),
      }),
      output: nothingSchema,
      topics: () => [],
    }),
  ),
  /** Saves the live value at once. */
  'rounds.saveLive': command({
    input: atSpot.extend({
      /** Given where it was refused because these may be the pins that are saved already. */
      isOtherPush: z.literal(true).optional(),
    }),
    output: readingOwnerSchema,
    topics: ofChangedReading,
  }),
  /** Saves a typed value, in the unit in which the meter shows it. */
  'rounds.saveTyped': command({
    input: atSpot
      .extend({
        raw: typedSchema,
        /** The meter showed only that it is more. */
        isAbove: z.literal(true).optional(),
        /** In which it was typed; refused where that of the meter is another. */
        unit: readingUnitSchema.default('pct'),
        /** The meter that the window says it is read off, null for none; left out: the one that is typed from. */
        meterId: rowIdSchema.nullable().optional(),
      })
      .refine(({ raw, unit }) => raw <= MOST_TYPED[unit], {
        path: ['raw'],
        ...says('validation.no-meter-shows'),
      }),
    output: readingOwnerSchema,
    topics: ofChangedReading,
  }),
  /** Excludes a reading that was just saved; the window aims at its spot again. */
  'rounds.undo': command({ input: ofReading, output: readingOwnerSchema, topics: ofChangedReading }),
  'rounds.setTemperature': command({
    input: inRound.extend({ boardId: rowIdSchema.nullable(), woodTempC: woodTempSchema }),
    output: nothingSchema,
    topics: ({ roundId }) => ['boards', 'stacks', `round:${roundId}`],
  }),
  /** How the core of a board is reached that the pins do not reach; null: not at all, and it stays unjudged. */
  'rounds.planCore': command({
    input: inRound.extend({
      boardId: rowIdSchema,
      core: coreWaySchema.nullable(),
      /** Also for the boards of the round that are not read yet and whose core the pins do not reach. */
      forRound: z.boolean(),
    }),
    output: nothingSchema,
    topics: ({ roundId }) => ['boards', 'stacks', `round:${roundId}`],
  }),
  'rounds.finish': command({
    input: inRound,
    output: roundSummarySchema,
    topics: ({ roundId }) => ['boards', 'stacks', `round:${roundId}`],
  }),
  /** Lets a finished round take readings again. Refused while another round of its stack is running. */
  'rounds.reopen': command({
    input: inRound,
    output: nothingSchema,
    topics: ({ roundId }) => ['boards', 'stacks', `round:${roundId}`],
  }),
  /** What is wrong with the machine's clock, if that is certain: a round begun now would have a wrong date. */
  'rounds.clock': query({
    input: nothingSchema,
    output: z.object({ problem: messageSchema.nullable() }),
    topics: () => ['boards', 'stacks'],
  }),
  /** Those in which a board was read, newest first. */
  'rounds.ofBoard': query({
    input: z.object({ boardId: rowIdSchema }),
    output: z.array(roundDateSchema),
    topics: ({ boardId }) => [`board:${boardId}`, 'stacks'],
  }),
  /** Corrects when a finished round began; all of its readings move by the same time. */
  'rounds.edit': command({
    input: editOf(
      z.object({
        startedAt: instantSchema,
        /** The person was asked about a year that is long before the stack was added, and it is right. */
        isYearRight: z.literal(true),
        /** Where boards were moved on that day, too: which came first. */
        order: dayOrderSchema,
      }),
    ),
    output: roundDateSchema,
    topics: ({ id }) => ['boards', 'stacks', `round:${id}`],
  }),
  'readings.exclude': command({
    input: ofReading.extend({ why: givenExclusionSchema }),
    output: readingOwnerSchema,
    topics: ofChangedReading,
  }),
  /** Says how deep the wood was read. Its call, and all that follows from it, is made again. */
  'readings.setDepth': command({
    input: ofReading.extend({
      depthMm: givenDepthSchema,
      /** What the window shows; another depth there is a conflict. */
      shown: shownDepthSchema,
      /** Also of the round's other readings of this depth, reached in the same way. */
      wholeRound: z.boolean(),
      /** Those of them too that a person gave another depth. */
      givenToo: z.boolean().default(false),
      work: workSchema,
    }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** Corrects the value of a reading that was typed wrong, or the wood's temperature of it alone. What was saved stays on record. */
  'readings.correct': command({
    input: ofReading
      .extend({
        /** Without `isAbove`, another value is one that the meter showed. */
        corrected: z
          .object({
            raw: typedSchema,
            isAbove: shownValueSchema.shape.isAbove.unwrap(),
            woodTempC: woodTempSchema,
          })
          .partial(),
        /** What the window shows; another value there is a conflict. */
        shown: shownValueSchema,
        /** Whether a value is meant that looks like a slip in typing, or is none; else that is refused as a question. */
        isAsMeant: z.boolean().default(false),
      })
      .refine(({ corrected: { raw = 0 }, shown }) => raw <= MOST_TYPED[shown.unit], {
        path: ['corrected', 'raw'],
        ...says('validation.no-meter-shows'),
      }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /**
   * A reading that was saved for the wrong board is another's. It keeps its spot where that board has such a one. The wrong
   * board's record of it is excluded, and says where it went.
   */
  'readings.moveToBoard': command({
    input: ofReading.extend({
      boardId: rowIdSchema,
      /** The spot there; null: the one that is most like its own. */
      spotIndex: z.number().int().min(0).max(1000).nullable(),
      /** `board`: all readings of its board in this round. `swap`: those of the other board come to its own, too. */
      scope: z.enum(['reading', 'board', 'swap']),
      /** A board that came to its first place later was there by then: its first stay begins earlier. */
      isThereThen: z.boolean().default(false),
    }),
    output: readingsMovedSchema,
    topics: ofMoved,
  }),
  /** What moving a reading to another board would mean. */
  'readings.onBoard': query({
    input: ofReading.extend({ boardId: rowIdSchema }),
    output: z.object({
      /** Where it would go there without asking; null where that board has no such spot. */
      keptSpot: z.number().int().min(0).nullable(),
      spots: z.array(z.object({ spotIndex: z.number().int().min(0), name: messageSchema })),
      /** How many readings this round has of the board that it is of, and of the other one. */
      own: z.number().int().min(0),
      others: z.number().int().min(0),
    }),
    topics: () => ['boards', 'stacks'],
  }),
  /** How many others of the round, of this depth and reached in the same way, a person gave another depth. */
  'readings.givenDepths': query({
    input: ofReading,
    output: z.object({ readings: z.number().int().min(0) }),
    topics: () => ['boards', 'stacks'],
  }),
  'readings.include': command({ input: ofReading, output: readingOwnerSchema, topics: ofChangedReading }),
};
