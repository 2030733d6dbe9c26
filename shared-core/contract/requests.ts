import { z } from 'zod';
import { meterDescriptionSchema } from '../gatt/meter-description.ts';
import { labelContentSchema } from '../labels/label.ts';
import { stackPlanSchema } from '../probing/plan/stack-plan.ts';
import { judgedReadingSchema } from '../probing/readings/reading.ts';
import { endUseSchema } from '../wood/species/end-use.ts';
import { speciesSchema } from '../wood/species/species.ts';
import { messageSchema } from '../words/message.ts';
import { boardForecastSchema } from './forecast.ts';
import { meterStateSchema } from './meter.ts';
import { gramsSchema, newOvenCheckSchema, ownFitSchema } from './oven-checks.ts';
import { regionSchema } from './region.ts';
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

interface Shape {
  input: z.ZodType;
  output: z.ZodType;
}
/** Asks for something and changes nothing. */
const query = <S extends Shape>(shape: S) => ({ kind: 'query' as const, ...shape });
/** Changes something. */
const command = <S extends Shape>(shape: S) => ({ kind: 'command' as const, ...shape });

/**
 * Everything that the window can ask of the machine. A request answers with its output or is refused with a message
 * for a person (see `answer.ts`). Adding one is an entry here and a use case of the same name in `electron/app/`.
 */
export const requests = {
  // The yard: which file is open.
  'yard.info': query({ input: nothing, output: yardInfoSchema }),
  'yard.openDemo': command({ input: nothing, output: yardInfoSchema }),
  'yard.openOwn': command({ input: nothing, output: yardInfoSchema }),
  /** Throws the demo yard away and opens the own one. */
  'yard.removeDemo': command({ input: nothing, output: yardInfoSchema }),
  /** Puts a damaged file beside under another name and begins a new yard. */
  'yard.startAfresh': command({ input: nothing, output: yardInfoSchema }),

  // What there is: stacks, boards, places.
  'stacks.list': query({ input: nothing, output: z.array(stackRowSchema) }),
  'stacks.add': command({ input: newStackSchema, output: stackRowSchema }),
  'stacks.change': command({ input: stackSchema.omit({ placeId: true }), output: stackRowSchema }),
  /** Moves the stack and every board of it. */
  'stacks.move': command({
    input: byId.extend({ placeId: rowIdSchema, since: z.iso.datetime() }),
    output: stackRowSchema,
  }),
  /** The stack's call, how many of its boards to probe for that certainty, and which next; null without boards. Takes a moment. */
  'stacks.plan': query({
    input: byId.extend({ certainty: z.number().min(0.5).max(0.99) }),
    output: stackPlanSchema.nullable(),
  }),
  'stacks.volume': query({ input: byId, output: stackVolumeSchema }),
  'boards.list': query({
    input: z.object({
      stackId: rowIdSchema.nullable(),
      /** Part of a board ID, wood or log. */
      search: z.string().max(80),
      offset: z.number().int().min(0),
      limit: z.number().int().min(1).max(500),
    }),
    output: z.object({ total: z.number().int(), rows: z.array(boardRowSchema) }),
  }),
  'boards.get': query({
    input: byId,
    output: z.object({
      board: boardRowSchema,
      moves: z.array(moveSchema),
      /** Every reading ever taken on it, newest round first, set-aside ones included. */
      readings: z.array(judgedReadingSchema),
      /** What each round found, oldest first. */
      findings: z.array(latestFindingSchema),
      /** Of the newest round's call; none before the first. */
      reasons: z.array(messageSchema),
      isSpeciesConfirmed: z.boolean(),
    }),
  }),
  /** When it will be fit for its use, where it stands and elsewhere, by its history. Takes a moment. */
  'boards.forecast': query({ input: byId, output: boardForecastSchema }),
  'boards.add': command({ input: z.array(newBoardSchema).min(1).max(500), output: z.array(boardRowSchema) }),
  'boards.change': command({ input: boardSchema, output: boardRowSchema }),
  /** Says the same of several boards, and lays them course by course in the order given where `pile` is not null. */
  'boards.changeTogether': command({
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(100_000),
      said: sharedBoardFieldsSchema,
      stackOrder: stackOrderSchema.nullable(),
    }),
    output: z.object({ changed: z.number().int() }),
  }),
  /** The wood it is entered as was looked at and is right: readings no longer speak against it. */
  'boards.confirmSpecies': command({ input: byId, output: nothing }),
  /** A free ID that continues the stack's numbering. */
  'boards.nextCode': query({
    input: z.object({ stackId: rowIdSchema }),
    output: z.object({ code: z.string() }),
  }),
  /** The course above the highest that a board of the stack is said to lie in; 1 where none is. */
  'stacks.nextLayer': query({ input: byId, output: z.object({ layer: z.number().int() }) }),
  'boards.move': command({
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(100_000),
      placeId: rowIdSchema,
      since: z.iso.datetime(),
    }),
    output: z.object({ moved: z.number().int() }),
  }),
  'places.list': query({ input: nothing, output: z.array(placeRowSchema) }),
  'places.add': command({ input: newPlaceSchema, output: placeRowSchema }),
  'places.change': command({ input: placeSchema, output: placeRowSchema }),
  'species.list': query({ input: nothing, output: z.array(speciesSchema.extend({ builtIn: z.boolean() })) }),
  'species.save': command({ input: speciesSchema, output: speciesSchema }),
  'endUses.list': query({ input: nothing, output: z.array(endUseSchema.extend({ builtIn: z.boolean() })) }),
  'endUses.save': command({ input: endUseSchema, output: endUseSchema }),

  // The user's own oven-dry checks of a wood; every change answers with all of them, by meter.
  'ovenChecks.ofSpecies': query({ input: z.object({ speciesId: z.string() }), output: ownFitsSchema }),
  'ovenChecks.add': command({ input: newOvenCheckSchema, output: ownFitsSchema }),
  /** A mass in the course of drying. */
  'ovenChecks.weigh': command({
    input: ofCheck.extend({ grams: gramsSchema, at: z.iso.datetime() }),
    output: ownFitsSchema,
  }),
  /** Leaves a check (`massId` null) or one of its masses out; it stays on record. */
  'ovenChecks.exclude': command({
    input: ofCheckOrWeight.extend({ why: z.string().trim().min(1).max(200) }),
    output: ownFitsSchema,
  }),
  'ovenChecks.include': command({ input: ofCheckOrWeight, output: ownFitsSchema }),
  /** Corrects readings of the wood with that meter by the checks, or stops doing so. */
  'ovenChecks.useFit': command({
    input: z.object({ speciesId: z.string(), meterId: rowIdSchema.nullable(), inUse: z.boolean() }),
    output: ownFitsSchema,
  }),

  // A board followed by its mass; every change answers with all of it.
  'samples.get': query({ input: z.object({ boardId: rowIdSchema }), output: sampleBoardStateSchema }),
  /** Sections were cut beside it and weighed. */
  'samples.cut': command({ input: newSampleCutSchema, output: sampleBoardStateSchema }),
  /** A section is dry; weighed anew, the newest mass holds. */
  'samples.drySection': command({
    input: z.object({ sectionId: rowIdSchema, grams: gramsSchema, at: z.iso.datetime() }),
    output: sampleBoardStateSchema,
  }),
  'samples.weigh': command({
    input: z.object({ boardId: rowIdSchema, kg: boardKgSchema, at: z.iso.datetime() }),
    output: sampleBoardStateSchema,
  }),
  /** Leaves a cut or a mass out; it stays on record. */
  'samples.exclude': command({
    input: sampleRecordSchema.extend({ why: z.string().trim().min(1).max(200) }),
    output: sampleBoardStateSchema,
  }),
  'samples.include': command({ input: sampleRecordSchema, output: sampleBoardStateSchema }),

  // The meter.
  'meter.state': query({ input: nothing, output: meterStateSchema }),
  'meter.scan': command({ input: nothing, output: meterStateSchema }),
  'meter.connect': command({ input: z.object({ deviceId: z.string().max(200) }), output: meterStateSchema }),
  'meter.simulate': command({ input: nothing, output: meterStateSchema }),
  'meter.disconnect': command({ input: nothing, output: meterStateSchema }),
  /** Says how to read the connected meter; kept for the next time it is met. */
  'meter.describe': command({ input: meterDescriptionSchema, output: meterStateSchema }),

  // A round.
  'rounds.start': command({
    input: z.object({ stackId: rowIdSchema, woodTempC: woodTempSchema }),
    output: roundStateSchema,
  }),
  'rounds.get': query({ input: inRound, output: roundStateSchema }),
  /** The board aimed at comes, with its readings, as the event `round.changed`. */
  'rounds.aim': command({
    input: inRound.extend({
      boardIndex: z.number().int().min(0),
      spotIndex: z.number().int().min(0).nullable(),
    }),
    output: nothing,
  }),
  /** Keeps the live value at once. */
  'rounds.take': command({ input: inRound, output: nothing }),
  /** Keeps a typed value, in % as the meter shows it. */
  'rounds.type': command({ input: inRound.extend({ raw: z.number() }), output: nothing }),
  /** Sets the newest reading of the board aimed at aside and aims at its spot again. */
  'rounds.undo': command({ input: inRound, output: nothing }),
  'rounds.setTemperature': command({
    input: inRound.extend({ boardId: rowIdSchema.nullable(), woodTempC: woodTempSchema }),
    output: nothing,
  }),
  'rounds.finish': command({ input: inRound, output: roundSummarySchema }),
  'readings.exclude': command({
    input: z.object({ readingId: rowIdSchema, why: z.string().trim().min(1).max(200) }),
    output: probedBoardSchema,
  }),
  'readings.include': command({ input: z.object({ readingId: rowIdSchema }), output: probedBoardSchema }),

  // Labels.
  'labels.contents': query({
    input: z.object({ boardIds: z.array(rowIdSchema).min(1).max(2000) }),
    output: z.array(labelContentSchema),
  }),
  'labels.pdf': query({
    input: z.object({
      boardIds: z.array(rowIdSchema).min(1).max(2000),
      kind: z.enum(['sheet', 'single']),
      /** Labels already used on the first sheet. */
      used: z.number().int().min(0).max(500),
      region: regionSchema,
    }),
    output: z.object({ pdfBase64: z.string(), fileName: z.string() }),
  }),

  'settings.get': query({ input: nothing, output: settingsSchema }),
  'settings.save': command({ input: settingsSchema, output: settingsSchema }),
} as const;

type Requests = typeof requests;
export type RequestName = keyof Requests;
type NameOfKind<Kind> = { [N in RequestName]: Requests[N]['kind'] extends Kind ? N : never }[RequestName];
export type QueryName = NameOfKind<'query'>;
export type CommandName = NameOfKind<'command'>;
export type RequestInput<N extends RequestName> = z.input<Requests[N]['input']>;
export type RequestOutput<N extends RequestName> = z.output<Requests[N]['output']>;
