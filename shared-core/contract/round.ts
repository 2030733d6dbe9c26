import { z } from 'zod';
import { assessmentSchema, type Call, callSchema } from '../probing/calls/assessment.ts';
import { coreWaySchema, planBasisSchema } from '../probing/readings/plan-basis.ts';
import type { JudgedReading } from '../probing/readings/reading.ts';
import { firstSpot, planSpots } from '../probing/readings/spots.ts';
import { instantSchema } from '../time.ts';
import { correctedSchema, readingUnitSchema } from '../wood/moisture/corrected.ts';
import { messageSchema } from '../words/message.ts';
import { says } from './validation.ts';
import { boardSchema, latestFindingSchema, rowIdSchema, versionSchema } from './yard.ts';

/** Wood temperature, °C, as a person would measure it; null when not known. */
export const woodTempSchema = z.number().min(-40).max(80).nullable();

/** The answer to how warm the wood is, °C, or that it is not known; made into a `woodTempSchema`. */
export const woodTempAnswerSchema = z
  .object({ woodTempC: woodTempSchema, unknown: z.boolean() })
  .refine(({ woodTempC, unknown }) => unknown || woodTempC !== null, {
    path: ['woodTempC'],
    ...says('wood-temp.missing'),
  })
  .transform(({ woodTempC }) => woodTempC);

/** What a round found on one board, as lists show it, and where the pins go next. */
export const roundFindingSchema = latestFindingSchema.extend({
  /** The first spot of the board's plan, as it is gone through, without a reading that counts; null when all have one. */
  openSpot: z.number().int().min(0).nullable(),
  /** How many spots of the plan have a reading that counts. */
  filledSpots: z.number().int().min(0),
  /** The newest reading that counts at each spot of the plan, % MC; null where none does. */
  spotPcts: z.array(z.number().nullable()),
});
export type RoundFinding = z.infer<typeof roundFindingSchema>;

/** One board of a round as its lists show it. Its plan of spots follows from its sizes and basis (`probing/readings/spots.ts`). */
export const roundBoardSchema = z.object({
  boardId: rowIdSchema,
  code: z.string(),
  speciesName: z.string(),
  thicknessMm: z.number(),
  thicknessQuarters: boardSchema.shape.thicknessQuarters,
  lengthMm: z.number().nullable(),
  planBasis: planBasisSchema,
  woodTempC: woodTempSchema,
  /** Whether a temperature was entered for this board alone in this round. */
  ownTemp: z.boolean(),
  isRead: z.boolean(),
  /** Whether its call is of that day: another round read it since. */
  isReadSince: z.boolean(),
  /** Null until something was read, and while what was read is being judged. */
  finding: roundFindingSchema.nullable(),
});
export type RoundBoard = z.infer<typeof roundBoardSchema>;

/** The first spot of the board that is still to be read; null where none is, or while that is not known. */
export const firstOpenSpot = ({ isRead, finding, ...sizes }: RoundBoard): number | null =>
  isRead ? (finding?.openSpot ?? null) : firstSpot(planSpots(sizes).plan);

/** How many spots of the board are still to be read; none while that is not known. */
export function openSpots({ isRead, finding, ...sizes }: RoundBoard): number {
  const spots = planSpots(sizes).plan.length;
  if (!isRead) return spots;
  return finding === null ? 0 : spots - finding.filledSpots;
}

/**
 * The board's call, where no open spot could change it: all are read, or those that are decide; else null. Where it is to be
 * probed again, its open spots come first.
 */
export function firmCall(board: RoundBoard): Call | null {
  const call = board.finding?.call ?? null;
  return call === 'probe-again' && openSpots(board) > 0 ? null : call;
}

/** What the round before found at the spots of a board. */
export const lastRoundSchema = z.object({
  /** When its last reading was taken. */
  at: instantSchema,
  /** At the spots of the board's plan now. */
  spotPcts: roundFindingSchema.shape.spotPcts,
});
export type LastRound = z.infer<typeof lastRoundSchema>;

/** The board that is being probed, with every reading of it in the round. */
export const probedBoardSchema = roundBoardSchema.extend({
  /** Null until something was read. */
  assessment: assessmentSchema.nullable(),
  /** Null where no earlier round read the board. */
  lastRound: lastRoundSchema.nullable(),
});
export type ProbedBoard = z.infer<typeof probedBoardSchema>;

/** The spot that the next reading will belong to; `spotIndex` null when the board's plan is filled. */
export const aimSchema = z.object({
  boardId: rowIdSchema,
  spotIndex: z.number().int().min(0).nullable(),
});
export type Aim = z.infer<typeof aimSchema>;

export const roundSummarySchema = z.object({
  boards: z.number().int(),
  probed: z.number().int(),
  calls: z.record(callSchema, z.number().int()),
  /** The same in one sentence. */
  message: messageSchema,
});
export type RoundSummary = z.infer<typeof roundSummarySchema>;

/** When a round was. */
export const roundDateSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  startedAt: instantSchema,
  /** Whether a person gave its day, as its readings were taken earlier than they were typed. */
  isDated: z.boolean(),
  /** Never before `startedAt`. */
  finishedAt: instantSchema.nullable(),
});
export type RoundDate = z.infer<typeof roundDateSchema>;

export const roundStateSchema = roundDateSchema.extend({
  stackId: rowIdSchema,
  stackName: z.string(),
  /** Where most of its boards were then; where the stack is while none was read. */
  placeName: z.string(),
  /** Where its boards to probe are now. */
  placeId: rowIdSchema,
  endUseName: z.string(),
  /** How the core is reached that the pins do not reach, where nobody chose a way; null: it stays unread. */
  usualCoreWay: coreWaySchema.nullable(),
  woodTempC: woodTempSchema,
  /** Of its newest reading that has one; null where none has. */
  lastMeterId: rowIdSchema.nullable(),
  boards: z.array(roundBoardSchema),
  /** Where the window that asks aims; null once the round is finished. */
  aim: aimSchema.nullable(),
  /** The board aimed at; null once the round is finished. */
  probed: probedBoardSchema.nullable(),
  summary: roundSummarySchema,
  /** Of so many of its boards the forecast, and with it perhaps the call, is still to be made. */
  updating: z.number().int().min(0),
});
export type RoundState = z.infer<typeof roundStateSchema>;

/** The board aimed at with its readings; null while they are on their way. */
export const probedOf = ({ aim, probed }: RoundState): ProbedBoard | null =>
  aim?.boardId === probed?.boardId ? probed : null;

/** The newest reading of a board that is not excluded; at one of its spots, where that is given. */
export const newestOf = (board: ProbedBoard | null, spotIndex?: number | null): JudgedReading | undefined =>
  board?.assessment?.readings
    .filter((reading) => spotIndex === undefined || reading.spotIndex === spotIndex)
    .filter((reading) => reading.excluded === null)
    .toSorted((a, b) => a.id - b.id)
    .at(-1);

/** What the window needs to redraw after something happened in a round. */
export const roundChangeSchema = z.object({
  roundId: rowIdSchema,
  /** Where this window aims. */
  aim: aimSchema,
  /** The one board that changed; where only the aim did, the board aimed at. */
  board: probedBoardSchema,
  summary: roundSummarySchema,
  /** The reading that was just kept, for the sound and the flash; null otherwise. */
  savedReadingId: rowIdSchema.nullable(),
});
export type RoundChange = z.infer<typeof roundChangeSchema>;

/** More than one board of a round changed, so that it must be asked for again. */
export const roundOutdatedSchema = z.object({
  roundId: rowIdSchema,
  /** What a person must know about it; null for nothing. */
  why: messageSchema.nullable(),
});
export type RoundOutdated = z.infer<typeof roundOutdatedSchema>;

/** The reading that the pins which are in were saved as. */
export const insertionReadingSchema = z.object({
  readingId: rowIdSchema,
  roundId: rowIdSchema,
  boardId: rowIdSchema,
  spotIndex: z.number().int().min(0),
});
export type InsertionReading = z.infer<typeof insertionReadingSchema>;

/** A value that settled could not save itself. */
export const valueNotSavedSchema = z.object({ roundId: rowIdSchema, problem: messageSchema });
export type ValueNotSaved = z.infer<typeof valueNotSavedSchema>;

/** So many live values are drawn: some ten seconds of a lively meter. */
export const TRACE_LENGTH = 240;

/** The live value as it comes; of what comes faster than a screen draws, the newest with the trace of all. */
export const liveSchema = z.object({
  raw: z.number().nullable(),
  unit: readingUnitSchema,
  /** The newest value corrected for the board aimed at; null outside a round or with pins out. */
  corrected: correctedSchema.nullable(),
  phase: z.enum(['pins-out', 'drifting', 'settled']),
  /** Spread of the values in the settling window, in the meter's unit; null with pins out. */
  spread: z.number().nullable(),
  /** Temperature of the wood or of its probe, as the meter last sent it, °C; null where it sends none. */
  tempC: z.number().nullable(),
  /** For how long a meter that sent steadily has sent nothing, whole s; null while it sends. */
  silentS: z.number().int().min(0).nullable(),
  /** Every value since the last event, oldest first, for the trace. */
  trace: z.array(z.number().nullable()).max(TRACE_LENGTH),
});
export type Live = z.infer<typeof liveSchema>;
