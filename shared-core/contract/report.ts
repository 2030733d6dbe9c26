import { z } from 'zod';
import { callSchema } from '../probing/calls/assessment.ts';
import { judgementSchema } from '../probing/calls/judgement.ts';
import { stackPlanSchema } from '../probing/plan/stack-plan.ts';
import { depthSchema, judgedReadingSchema } from '../probing/readings/reading.ts';
import { tallySchema } from '../tally/tally.ts';
import { instantSchema } from '../time.ts';
import { endUseSchema } from '../wood/species/end-use.ts';
import { messageSchema } from '../words/message.ts';
import { leavingNoteSchema } from './archive.ts';
import { forecastDetailsSchema } from './forecast.ts';
import { readBeforeSchema } from './origin.ts';
import { sampleBoardStateSchema } from './sample-board.ts';
import { boardRowSchema, latestFindingSchema, moveSchema, rowIdSchema, stackOnPageSchema } from './yard.ts';

/**
 * `passport`: everything about a board. `buyer`: the little that someone who buys it, and others with it, needs. `stack`: a
 * stack with its boards. `list`: the same boards with blank cells, to write on at the stack. `buyer-list`: the same boards
 * for someone who buys them.
 */
export const boardReportKindSchema = z.enum(['passport', 'buyer']);
export const stackReportKindSchema = z.enum(['stack', 'list', 'buyer-list']);
export const reportKindSchema = z.enum([...boardReportKindSchema.options, ...stackReportKindSchema.options]);
export type ReportKind = z.infer<typeof reportKindSchema>;
export type BoardReportKind = z.infer<typeof boardReportKindSchema>;

/** No sheet has more boards that a person chose one by one. */
export const MOST_FOR_BUYER = 500;

/** What fits the line of a sheet. */
export const MOST_OF_PRICE = 24;
const priceTextSchema = z.string().trim().max(MOST_OF_PRICE);

/** Which report, of the board or the stack of that id. */
export const reportSchema = z.object({
  kind: reportKindSchema,
  id: rowIdSchema,
  /** Of a sheet for a buyer: the other boards on it. */
  more: z
    .array(rowIdSchema)
    .max(MOST_FOR_BUYER - 1)
    .default([]),
  /** Whom it is for; blank: whom the boards were sold to, where that is known. */
  soldTo: leavingNoteSchema.default(''),
  /** As the seller writes it; blank: a line to write on. */
  priceText: priceTextSchema.default(''),
});
export type Report = z.infer<typeof reportSchema>;
export type AskedReport = z.input<typeof reportSchema>;

/** More boards than this are not in one report. */
export const MOST_REPORTED = 2000;

const useOfReportSchema = endUseSchema.pick({
  name: true,
  minPct: true,
  maxPct: true,
  maxShellCorePct: true,
  cautions: true,
});

const onBoardShape = {
  printedAt: instantSchema,
  /** Of the printed facts (`reports/check-code.ts`). */
  checkCode: z.string(),
  board: boardRowSchema,
  endUse: useOfReportSchema,
  judgement: judgementSchema,
  /** Every reading ever taken of its wood, newest round first, excluded ones too. */
  readings: z.array(judgedReadingSchema),
};

export const passportSchema = z.object({
  kind: z.literal('passport'),
  ...onBoardShape,
  /** What each round found, oldest first. */
  findings: z.array(latestFindingSchema),
  /** Oldest first. */
  moves: z.array(moveSchema),
  /** Null where none can be made. */
  forecast: forecastDetailsSchema.nullable(),
  samples: sampleBoardStateSchema,
  /** Every board whose readings are among these, but for itself. */
  readBefore: z.array(readBeforeSchema),
});
export type Passport = z.infer<typeof passportSchema>;

const forBuyerShape = {
  /** Of the yard or its owner, as the settings have it; may be blank. */
  yardName: z.string(),
  /** May be blank. */
  soldTo: z.string(),
  /** May be blank. */
  priceText: z.string(),
};

export const buyerSheetSchema = z.object({ kind: z.literal('buyer'), ...onBoardShape, ...forBuyerShape });
export type BuyerSheet = z.infer<typeof buyerSheetSchema>;

/** A board in a report of its stack. */
const boardOfStackSchema = boardRowSchema
  .pick({
    code: true,
    speciesName: true,
    thicknessMm: true,
    thicknessQuarters: true,
    widthMm: true,
    lengthMm: true,
    layer: true,
    column: true,
    latest: true,
  })
  .extend({ call: callSchema.nullable() });
export type BoardOfStack = z.infer<typeof boardOfStackSchema>;

export const buyerListSchema = z.object({
  kind: z.literal('buyer-list'),
  printedAt: instantSchema,
  ...forBuyerShape,
  /** The stack that they are, as far as they fit; null: boards that a person chose. */
  stack: z.object({ name: z.string(), boards: z.number().int() }).nullable(),
  /** Of their uses, each once. */
  cautions: useOfReportSchema.shape.cautions,
  /** Each with the check code of a sheet about it alone. */
  boards: z.array(boardOfStackSchema.extend({ checkCode: z.string() })),
});
export type BuyerList = z.infer<typeof buyerListSchema>;

export const stackReportSchema = z.object({
  kind: z.literal('stack'),
  printedAt: instantSchema,
  stack: stackOnPageSchema,
  endUse: useOfReportSchema,
  boards: z.array(boardOfStackSchema),
  /** Boards of it that were moved to other places; the first of them where they are many. */
  elsewhere: z.array(boardRowSchema.pick({ code: true, placeName: true })),
  /** Null without boards. */
  plan: stackPlanSchema.nullable(),
  /** By species and thickness. */
  tally: tallySchema,
});
export type StackReport = z.infer<typeof stackReportSchema>;

export const stackListSchema = z.object({
  kind: z.literal('list'),
  printedAt: instantSchema,
  stack: stackOnPageSchema,
  boards: z.array(
    boardOfStackSchema.extend({
      /** Where the pins go, in the order that a person walks. */
      spots: z.array(z.object({ depth: depthSchema, depthMm: z.number().nullable(), along: messageSchema })),
    }),
  ),
});
export type StackList = z.infer<typeof stackListSchema>;

export const reportContentSchema = z.discriminatedUnion('kind', [
  passportSchema,
  buyerSheetSchema,
  buyerListSchema,
  stackReportSchema,
  stackListSchema,
]);
export type ReportContent = z.infer<typeof reportContentSchema>;

/** What a check code says of the sheet that it was printed on. */
export const reportCheckSchema = z.object({
  kind: boardReportKindSchema,
  boardId: rowIdSchema,
  boardCode: z.string(),
  speciesName: z.string(),
  /** To the minute. */
  printedAt: instantSchema,
  /** Whether everything that the sheet stated is the same in this yard. */
  matches: z.boolean(),
  /** Where it matches: what it stated. Else: what holds now, to compare. Null: not probed then. */
  stated: z
    .object({
      at: instantSchema,
      call: callSchema.nullable(),
      averagePct: z.number().nullable(),
      shellPct: z.number().nullable(),
    })
    .nullable(),
  /** Rounds of the board since it was printed. */
  roundsSince: z.number().int(),
});
export type ReportCheck = z.infer<typeof reportCheckSchema>;
