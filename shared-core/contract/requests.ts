import { z } from 'zod';
import { meterDescriptionSchema } from '../gatt/meter-description.ts';
import { labelContentSchema } from '../labels/label.ts';
import { stackPlanSchema } from '../probing/plan/stack-plan.ts';
import { judgedReadingSchema } from '../probing/readings/reading.ts';
import { endUseSchema } from '../wood/species/end-use.ts';
import { speciesSchema } from '../wood/species/species.ts';
import { boardForecastSchema } from './forecast.ts';
import { meterStateSchema } from './meter.ts';
import { gramsSchema, newOvenCheckSchema, ownFitSchema } from './oven-checks.ts';
import { probedBoardSchema, roundStateSchema, roundSummarySchema, woodTempSchema } from './round.ts';
import {
  boardKgSchema,
  newSampleCutSchema,
  sampleBoardStateSchema,
  sampleRecordSchema,
} from './sample-board.ts';
import { settingsSchema } from './settings.ts';
import { stackOrderSchema } from './stack-order.ts';
import { stackVolumeSchema } from './stack-volume.ts';
import {
  boardRowSchema,
  boardSchema,
  latestFindingSchema,
  moveSchema,
  newBoardSchema,
  newPlaceSchema,
  newStackSchema,
  placeRowSchema,
  placeSchema,
  rowIdSchema,
  sharedBoardFieldsSchema,
  stackRowSchema,
  stackSchema,
  yardInfoSchema,
} from './yard.ts';

const nothing = z.object({});
const byId = z.object({ id: rowIdSchema });
const ownFitsSchema = z.array(ownFitSchema);
const ofCheck = z.object({ checkId: rowIdSchema });
const ofCheckOrWeight = ofCheck.extend({ weightId: rowIdSchema.nullable() });
const inRound = z.object({ roundId: rowIdSchema });

/**
 * Everything that the window can ask of the machine. A call answers with its output or fails with a sentence for a
 * person (see `answer.ts`). Adding one is an entry here and a use case of the same name in `electron/app/`.
 */
export const requests = {
  // The yard: which file is open.
  'yard.info': { input: nothing, output: yardInfoSchema },
  'yard.openDemo': { input: nothing, output: yardInfoSchema },
  'yard.openOwn': { input: nothing, output: yardInfoSchema },
  /** Throws the demo yard away and opens the own one. */
  'yard.removeDemo': { input: nothing, output: yardInfoSchema },
  /** Puts a damaged file beside under another name and begins a new yard. */
  'yard.startAfresh': { input: nothing, output: yardInfoSchema },

  // What there is: stacks, boards, places.
  'stacks.list': { input: nothing, output: z.array(stackRowSchema) },
  'stacks.add': { input: newStackSchema, output: stackRowSchema },
  'stacks.change': { input: stackSchema.omit({ placeId: true }), output: stackRowSchema },
  /** Moves the stack and every board of it. */
  'stacks.move': {
    input: byId.extend({ placeId: rowIdSchema, since: z.iso.datetime() }),
    output: stackRowSchema,
  },
  /** The stack's call, how many of its boards to probe for that certainty, and which next; null without boards. Takes a moment. */
  'stacks.plan': {
    input: byId.extend({ certainty: z.number().min(0.5).max(0.99) }),
    output: stackPlanSchema.nullable(),
  },
  'stacks.volume': { input: byId, output: stackVolumeSchema },
  'boards.list': {
    input: z.object({
      stackId: rowIdSchema.nullable(),
      /** Part of a board ID, wood or log. */
      search: z.string().max(80),
      offset: z.number().int().min(0),
      limit: z.number().int().min(1).max(500),
    }),
    output: z.object({ total: z.number().int(), rows: z.array(boardRowSchema) }),
  },
  'boards.get': {
    input: byId,
    output: z.object({
      board: boardRowSchema,
      moves: z.array(moveSchema),
      /** Every reading ever taken on it, newest round first, set-aside ones included. */
      readings: z.array(judgedReadingSchema),
      /** What each round found, oldest first. */
      findings: z.array(latestFindingSchema),
      reasons: z.array(z.string()),
      isSpeciesConfirmed: z.boolean(),
    }),
  },
  /** When it will be fit for its use, where it stands and elsewhere, by its history. Takes a moment. */
  'boards.forecast': { input: byId, output: boardForecastSchema },
  'boards.add': { input: z.array(newBoardSchema).min(1).max(500), output: z.array(boardRowSchema) },
  'boards.change': { input: boardSchema, output: boardRowSchema },
  /** Says the same of several boards, and lays them course by course in the order given where `pile` is not null. */
  'boards.changeTogether': {
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(100_000),
      said: sharedBoardFieldsSchema,
      stackOrder: stackOrderSchema.nullable(),
    }),
    output: z.object({ changed: z.number().int() }),
  },
  /** The wood it is entered as was looked at and is right: readings no longer speak against it. */
  'boards.confirmSpecies': { input: byId, output: nothing },
  /** A free ID that continues the stack's numbering. */
  'boards.nextCode': { input: z.object({ stackId: rowIdSchema }), output: z.object({ code: z.string() }) },
  /** The course above the highest that a board of the stack is said to lie in; 1 where none is. */
  'stacks.nextLayer': { input: byId, output: z.object({ layer: z.number().int() }) },
  'boards.move': {
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(100_000),
      placeId: rowIdSchema,
      since: z.iso.datetime(),
    }),
    output: z.object({ moved: z.number().int() }),
  },
  'places.list': { input: nothing, output: z.array(placeRowSchema) },
  'places.add': { input: newPlaceSchema, output: placeRowSchema },
  'places.change': { input: placeSchema, output: placeRowSchema },
  'species.list': { input: nothing, output: z.array(speciesSchema.extend({ builtIn: z.boolean() })) },
  'species.save': { input: speciesSchema, output: speciesSchema },
  'endUses.list': { input: nothing, output: z.array(endUseSchema.extend({ builtIn: z.boolean() })) },
  'endUses.save': { input: endUseSchema, output: endUseSchema },

  // The user's own oven-dry checks of a wood; every change answers with all of them, by meter.
  'ovenChecks.ofSpecies': { input: z.object({ speciesId: z.string() }), output: ownFitsSchema },
  'ovenChecks.add': { input: newOvenCheckSchema, output: ownFitsSchema },
  /** A mass in the course of drying. */
  'ovenChecks.weigh': {
    input: ofCheck.extend({ grams: gramsSchema, at: z.iso.datetime() }),
    output: ownFitsSchema,
  },
  /** Leaves a check (`massId` null) or one of its masses out; it stays on record. */
  'ovenChecks.exclude': {
    input: ofCheckOrWeight.extend({ why: z.string().trim().min(1).max(200) }),
    output: ownFitsSchema,
  },
  'ovenChecks.include': { input: ofCheckOrWeight, output: ownFitsSchema },
  /** Corrects readings of the wood with that meter by the checks, or stops doing so. */
  'ovenChecks.useFit': {
    input: z.object({ speciesId: z.string(), meterId: rowIdSchema.nullable(), inUse: z.boolean() }),
    output: ownFitsSchema,
  },

  // A board followed by its mass; every change answers with all of it.
  'samples.get': { input: z.object({ boardId: rowIdSchema }), output: sampleBoardStateSchema },
  /** Sections were cut beside it and weighed. */
  'samples.cut': { input: newSampleCutSchema, output: sampleBoardStateSchema },
  /** A section is dry; weighed anew, the newest mass holds. */
  'samples.drySection': {
    input: z.object({ sectionId: rowIdSchema, grams: gramsSchema, at: z.iso.datetime() }),
    output: sampleBoardStateSchema,
  },
  'samples.weigh': {
    input: z.object({ boardId: rowIdSchema, kg: boardKgSchema, at: z.iso.datetime() }),
    output: sampleBoardStateSchema,
  },
  /** Leaves a cut or a mass out; it stays on record. */
  'samples.exclude': {
    input: sampleRecordSchema.extend({ why: z.string().trim().min(1).max(200) }),
    output: sampleBoardStateSchema,
  },
  'samples.include': { input: sampleRecordSchema, output: sampleBoardStateSchema },

  // The meter.
  'meter.state': { input: nothing, output: meterStateSchema },
  'meter.scan': { input: nothing, output: meterStateSchema },
  'meter.connect': { input: z.object({ deviceId: z.string().max(200) }), output: meterStateSchema },
  'meter.simulate': { input: nothing, output: meterStateSchema },
  'meter.disconnect': { input: nothing, output: meterStateSchema },
  /** Says how to read the connected meter; kept for the next time it is met. */
  'meter.describe': { input: meterDescriptionSchema, output: meterStateSchema },

  // A round.
  'rounds.start': {
    input: z.object({ stackId: rowIdSchema, woodTempC: woodTempSchema }),
    output: roundStateSchema,
  },
  'rounds.get': { input: inRound, output: roundStateSchema },
  /** The board aimed at comes, with its readings, as the event `round.changed`. */
  'rounds.aim': {
    input: inRound.extend({
      boardIndex: z.number().int().min(0),
      spotIndex: z.number().int().min(0).nullable(),
    }),
    output: nothing,
  },
  /** Keeps the live value at once. */
  'rounds.take': { input: inRound, output: nothing },
  /** Keeps a typed value, in % as the meter shows it. */
  'rounds.type': { input: inRound.extend({ raw: z.number() }), output: nothing },
  /** Sets the newest reading of the board aimed at aside and aims at its spot again. */
  'rounds.undo': { input: inRound, output: nothing },
  'rounds.setTemperature': {
    input: inRound.extend({ boardId: rowIdSchema.nullable(), woodTempC: woodTempSchema }),
    output: nothing,
  },
  'rounds.finish': { input: inRound, output: roundSummarySchema },
  'readings.exclude': {
    input: z.object({ readingId: rowIdSchema, why: z.string().trim().min(1).max(200) }),
    output: probedBoardSchema,
  },
  'readings.include': { input: z.object({ readingId: rowIdSchema }), output: probedBoardSchema },

  // Labels.
  'labels.contents': {
    input: z.object({ boardIds: z.array(rowIdSchema).min(1).max(2000) }),
    output: z.array(labelContentSchema),
  },
  'labels.pdf': {
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(2000),
      kind: z.enum(['sheet', 'single']),
      /** Places already used on the first sheet. */
      skip: z.number().int().min(0).max(500),
    }),
    output: z.object({ pdfBase64: z.string(), fileName: z.string() }),
  },

  'settings.get': { input: nothing, output: settingsSchema },
  'settings.save': { input: settingsSchema, output: settingsSchema },
} as const;

export type RequestName = keyof typeof requests;
export type RequestInput<N extends RequestName> = z.input<(typeof requests)[N]['input']>;
export type RequestOutput<N extends RequestName> = z.output<(typeof requests)[N]['output']>;
