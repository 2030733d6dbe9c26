import { z } from 'zod';
import { callSchema, spotsReadSchema } from '../probing/calls/assessment.ts';
import { judgementSchema } from '../probing/calls/judgement.ts';
import { outlookSchema } from '../probing/calls/outlook.ts';
import { whenSchema } from '../probing/calls/ready-in.ts';
import { placeElsewhereSchema } from '../probing/plan/due-elsewhere.ts';
import { nextProbeSchema } from '../probing/plan/next-probe.ts';
import { stackCallSchema, stackDueSchema } from '../probing/plan/stack-call.ts';
import { averageIsSchema } from '../probing/readings/estimate.ts';
import { instantSchema } from '../time.ts';
import { LEAST_QUARTERS } from '../units/typed-length.ts';
import { monthlyAirSchema } from '../wood/climate/monthly-air.ts';
import { roomAirSchema } from '../wood/climate/room-air.ts';
import { dayToDaySchema, stationSchema } from '../wood/climate/station.ts';
import { type AirMovement, airMovementSchema } from '../wood/drying/air-movement.ts';
import { barkSideSchema, topCoverSchema } from '../wood/drying/faces-of-board.ts';
import { messageSchema } from '../words/message.ts';
import { archivedSchema } from './archive.ts';
import { columnSchema, layerSchema } from './stack-order.ts';
import { says } from './validation.ts';

/** Row ids are positive integers, given by the store. */
export const rowIdSchema = z.number().int().positive();

/** Counts the edits of a record; an edit tells which version it was based on. */
export const versionSchema = z.number().int().positive();

/** Only the fields that a person changed, and the version of the record that they saw. */
export const editOf = <Shape extends z.ZodRawShape>(fields: z.ZodObject<Shape>) =>
  z.object({ id: rowIdSchema, basedOn: versionSchema, changed: fields.partial() });

/** What a person calls a thing: never empty, one line. */
export const nameSchema = z
  .string()
  .trim()
  .min(1, says('validation.name-missing'))
  .max(80, says('validation.name-too-long'));
/** What a person writes about a thing, in their own words; empty for none. */
export const MOST_NOTE_LETTERS = 2000;
export const noteSchema = z.string().max(MOST_NOTE_LETTERS);

/** The note of a record that another was merged into; null where both are too long for one. */
export function joinedNote(own: string, other: string): string | null {
  const note = [own, other].filter((each) => each !== '').join('\n');
  return noteSchema.safeParse(note).success ? note : null;
}

/** A local day, of no year that was only half typed. */
export const daySchema = z.iso
  .date(says('validation.day-missing'))
  .refine((day) => day >= '1900-01-01', { error: 'validation.day-too-early' });
/** A local day that is not still to come. */
export const dayUntil = (today: string) =>
  daySchema.refine((day) => day <= today, { error: 'date-field.too-late', params: { latestOn: today } });

export const placeKindSchema = z.enum(['outdoors', 'open-shed', 'shop', 'heated-room']);
export type PlaceKind = z.infer<typeof placeKindSchema>;

/** How the air moves at the boards where a person has not chosen. */
export const usualMovement: Record<PlaceKind, AirMovement> = {
  outdoors: 'wind',
  'open-shed': 'open-shed',
  shop: 'still-room',
  'heated-room': 'still-room',
};

/** Where a place's months of air come from. */
export const airSourceSchema = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('station'), station: stationSchema }),
  /** The average of so many stations, because the nearest is not known. Null: average air of no region. */
  z.object({ kind: z.literal('region'), stations: z.number().int().nullable() }),
  /** Made from the outdoor air of a place of that name, or what is usual in such a room: assumed, until a person gives better. */
  z.object({ kind: z.literal('room'), room: roomAirSchema, outdoors: z.string().max(80).optional() }),
  /** A weather file, with the name of the site in it. */
  z.object({ kind: z.literal('file'), siteName: z.string().max(80), days: dayToDaySchema }),
]);
export type AirSource = z.infer<typeof airSourceSchema>;

/** Where a stack or board stands, with the air there, month by month. */
export const placeSchema = z.object({
  id: rowIdSchema,
  name: nameSchema,
  kind: placeKindSchema,
  air: monthlyAirSchema,
  /** Null where a person typed the months. */
  airSource: airSourceSchema.nullable(),
  /** How the air moves at the boards; null: as is usual for its kind. */
  airMovement: airMovementSchema.nullable(),
});
export type Place = z.infer<typeof placeSchema>;

/** How the air moves at the boards of a place. */
export const movementIn = ({ kind, airMovement }: Pick<Place, 'kind' | 'airMovement'>): AirMovement =>
  airMovement ?? usualMovement[kind];

/** Defaults are here and not in `placeSchema`, as with `newBoardSchema`. */
export const newPlaceSchema = placeSchema.omit({ id: true }).extend({
  airSource: placeSchema.shape.airSource.default(null),
  airMovement: placeSchema.shape.airMovement.default(null),
});
export type NewPlace = z.infer<typeof newPlaceSchema>;
export const placeEditSchema = editOf(placeSchema.omit({ id: true }));

/** A place as a list shows it. */
export const placeRowSchema = placeSchema.extend({
  version: versionSchema,
  /** The disk damaged its air or where that is from: it has a stand-in, until the place is saved again. */
  isDamaged: z.boolean().optional(),
  /**
   * How far readings put its EMC from that of its months, % MC: those of so many boards here, and of boards at places of its
   * kind. Null where there are none, or both agree.
   */
  airOffset: z
    .object({
      offsetPct: z.number(),
      boards: z.number().int().nonnegative(),
      /** The part of what was measured there, % MC; left out where nothing was, or it agrees with its months. */
      measuredPct: z.number().optional(),
    })
    .nullable(),
  /** The stacks with boards here. */
  stacks: z.array(z.object({ id: rowIdSchema, name: z.string(), boards: z.number().int().positive() })),
});
export type PlaceRow = z.infer<typeof placeRowSchema>;

/** A place that left the lists. */
export const closedPlaceSchema = placeSchema
  .pick({ id: true, name: true, kind: true })
  .extend({ version: versionSchema, closedAt: instantSchema });
export type ClosedPlace = z.infer<typeof closedPlaceSchema>;

/** Short enough to say aloud and to print big: letters, digits, hyphen; "OAK-07". */
export const boardCodeSchema = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[A-Z0-9][A-Z0-9-]{0,15}$/, says('validation.board-code'));

export const stackSchema = z.object({
  id: rowIdSchema,
  name: nameSchema,
  placeId: rowIdSchema,
  endUseId: z.string().max(60),
  topCover: topCoverSchema,
  note: noteSchema,
});
export type Stack = z.infer<typeof stackSchema>;
export const newStackSchema = stackSchema.omit({ id: true });
export type NewStack = z.infer<typeof newStackSchema>;
/** A stack changes its place by being moved. */
export const stackEditSchema = editOf(newStackSchema.omit({ placeId: true }));

/** How many boards of a stack have each call of their latest round. */
export const callCountsSchema = z.record(callSchema, z.number().int().min(0));

/** When a board is likely ready; `placeName` where only a move there makes it so. */
const likelyReadySchema = z.object({ when: whenSchema, placeName: z.string().nullable() });
export type LikelyReady = z.infer<typeof likelyReadySchema>;

/** A stack as lists show it. Boards that were moved elsewhere count in `elsewhere` alone. */
export const stackRowSchema = stackSchema.extend({
  version: versionSchema,
  placeName: z.string(),
  endUseName: z.string(),
  /** Of its use, % MC. */
  targetRange: z.object({ minPct: z.number(), maxPct: z.number() }),
  boards: z.number().int(),
  /** With a call. */
  probed: z.number().int(),
  /** With readings, but too few for a call. */
  halfProbed: z.number().int(),
  calls: callCountsSchema,
  elsewhere: z.object({
    boards: z.number().int(),
    ready: z.number().int(),
    /** Where they are; the place with the most boards to probe first. */
    places: z.array(placeElsewhereSchema),
  }),
  /** Mean of the boards' averages, each of its latest round, % MC. */
  averagePct: z.number().nullable(),
  /** Of so many boards; the others' averages are questionable or not known. */
  averaged: z.number().int(),
  /** When those were read first and last; null where there are none. */
  averageRead: z.object({ from: instantSchema, to: instantSchema }).nullable(),
  /** Of those to bring in: so many that no place of the yard is dry enough for. */
  withoutPlace: z.number().int(),
  /** Boards not called ready that should be by now. */
  shouldBeReady: z.number().int(),
  /** Whether boards of it wait for their first forecast since something changed: dates, and what is due, are still to come. */
  isForecasting: z.boolean(),
  /** The first and the last of the other boards whose readings hold. Null until a forecast says so. */
  nextReady: likelyReadySchema.nullable(),
  lastReady: likelyReadySchema.nullable(),
  /** How many of those have such a day. */
  withDay: z.number().int(),
  /** Null without boards. */
  call: stackCallSchema.nullable(),
  /** What to do about it first; null where nothing is. */
  due: stackDueSchema.nullable(),
  lastProbedAt: instantSchema.nullable(),
  nextProbe: nextProbeSchema,
  /** A round that was begun on it and not finished. */
  openRoundId: rowIdSchema.nullable(),
  /** The newest that was finished. */
  lastRoundId: rowIdSchema.nullable(),
  /** When it was closed; null of one that is in the lists. */
  closedAt: instantSchema.nullable(),
});
export type StackRow = z.infer<typeof stackRowSchema>;

/** A stack that left the lists. */
export const closedStackSchema = stackSchema
  .pick({ id: true, name: true })
  .extend({ version: versionSchema, placeName: z.string(), closedAt: instantSchema });
export type ClosedStack = z.infer<typeof closedStackSchema>;

export const stackOnPageSchema = stackRowSchema.extend({
  /** Of the boards in it. */
  speciesNames: z.array(z.string()),
  /** Of one that is closed; null of another. */
  closed: z
    .object({
      /** Whether boards that left the yard were in it. */
      hasArchived: z.boolean(),
      /** That it was merged into; null where it was not. */
      mergedInto: z.object({ id: rowIdSchema, name: z.string() }).nullable(),
    })
    .nullable(),
});
export type StackOnPage = z.infer<typeof stackOnPageSchema>;

export const sawingSchema = z.enum(['flat', 'rift', 'quarter', 'unknown']);
export type Sawing = z.infer<typeof sawingSchema>;

/** In the air of the places that are known, or in a kiln or other drier air before it came. */
export const driedBySchema = z.enum(['air', 'kiln']);

export const boardSchema = z.object({
  id: rowIdSchema,
  code: boardCodeSchema,
  stackId: rowIdSchema,
  speciesId: z.string().min(1, says('board.species-missing')).max(60),
  thicknessMm: z
    .number({
      // Out of bounds: the field names its bounds.
      error: ({ code }) => (code === 'invalid_type' ? says('board.thickness-missing').error : undefined),
    })
    .min(3)
    .max(400),
  /** Where it was given by its name in the trade: 8 for 8/4. It is then shown by that name. */
  thicknessQuarters: z.number().int().min(LEAST_QUARTERS).max(62).nullable(),
  widthMm: z.number().min(10).max(3000).nullable(),
  lengthMm: z.number().min(50).max(20_000).nullable(),
  /** Local day. */
  sawnOn: z.iso.date().nullable(),
  driedBy: driedBySchema,
  sawing: sawingSchema,
  /** From the pith to the middle of the board, as its end shows it; null where not entered. */
  ringRadiusMm: z.number().min(5).max(3000).nullable(),
  barkSide: barkSideSchema,
  /** Local day on which the bark came off that face, where the board dried with it until then; null where it did not. */
  barkOffOn: z.iso.date().nullable(),
  /** The log it came from, as the person calls it. */
  log: z.string().trim().max(40),
  /** Where it lies in the stack, both counted from 1: course from the bottom, column from the left. */
  layer: layerSchema.nullable(),
  column: columnSchema.nullable(),
  note: noteSchema,
});
export type Board = z.infer<typeof boardSchema>;
/** As a person gives it. A file may hold a day that is refused now, and its boards must still be shown. */
export const givenBoardSchema = boardSchema
  .omit({ id: true })
  .extend({ sawnOn: daySchema.nullable(), barkOffOn: daySchema.nullable() });
/** The same where the day is known, so that no date is in the future. */
export const boardGivenOn = (today: string) => {
  const day = dayUntil(today).nullable();
  return givenBoardSchema.extend({ sawnOn: day, barkOffOn: day });
};
/**
 * Defaults are here and not in `givenBoardSchema`: there, an edit of other fields would bring a field back to its
 * default.
 */
export const newBoardSchema = givenBoardSchema.extend({
  thicknessQuarters: boardSchema.shape.thicknessQuarters.default(null),
  driedBy: driedBySchema.default('air'),
});
export type NewBoard = z.infer<typeof newBoardSchema>;
/** With the local day since when it has been at its stack's place; null: since now. */
export const addedBoardSchema = newBoardSchema.extend({ hereSinceOn: daySchema.nullable().default(null) });
export const boardEditSchema = editOf(
  givenBoardSchema.extend({
    /** The board was moved before the day on which it was sawn: its log was there. */
    isBeforeSawing: z.literal(true),
    /** Local day since when it has been at its first place. */
    hereSinceOn: daySchema,
  }),
);

/** What of a board can come later, while it is not known. */
export const unknownOfBoard = {
  widthMm: null,
  lengthMm: null,
  sawnOn: null,
  driedBy: 'air',
  sawing: 'unknown',
  ringRadiusMm: null,
  barkSide: 'unknown',
  barkOffOn: null,
  log: '',
  layer: null,
  column: null,
  note: '',
} as const satisfies Partial<NewBoard>;

/**
 * What can be set on several boards at once; what is left out stays as it was. The quarters go with the thickness, and the
 * day with the bark side.
 */
export const sharedBoardFieldsSchema = givenBoardSchema
  .pick({
    speciesId: true,
    thicknessMm: true,
    thicknessQuarters: true,
    widthMm: true,
    lengthMm: true,
    sawnOn: true,
    driedBy: true,
    log: true,
    sawing: true,
    ringRadiusMm: true,
    barkSide: true,
    barkOffOn: true,
  })
  .partial();

/** The latest finding on a board, as lists and labels show it. */
export const latestFindingSchema = z.object({
  roundId: rowIdSchema,
  at: instantSchema,
  /** Null where no reading can be used, or only the shell was read and that leaves it open. */
  averagePct: z.number().nullable(),
  averageIs: averageIsSchema.default('read'),
  /** Why it is at an end of what was read, or beyond it; left out where it is not. */
  whyAverage: messageSchema.optional(),
  /** The average likely lies in here: 8 chances in 10. */
  lowPct: z.number().nullable(),
  highPct: z.number().nullable(),
  shellPct: z.number().nullable(),
  corePct: z.number().nullable(),
  /** Nobody knows how deep anything was read: the shell and the core are only where the plan has them. Else left out. */
  isDepthUnknown: z.literal(true).optional(),
  /** The average rests on questionable readings, so it counts in no other average and no interval goes with it. */
  isQuestionable: z.boolean().default(false),
  /** Null where too few spots are read for one. */
  call: callSchema.nullable(),
  /** Null where there is a call. */
  spotsRead: spotsReadSchema.nullable().default(null),
  /** What decided the call, or why there is none. */
  reason: messageSchema,
});
export type LatestFinding = z.infer<typeof latestFindingSchema>;

export const boardRowSchema = boardSchema.extend({
  version: versionSchema,
  stackName: z.string(),
  speciesName: z.string(),
  placeId: rowIdSchema,
  placeName: z.string(),
  placeSince: instantSchema,
  /** Whether it was moved to another place than its stack's. */
  isElsewhere: z.boolean(),
  latest: latestFindingSchema.nullable(),
  /** By the newest forecast of it that was saved; null before the first, and where none can be made. */
  outlook: outlookSchema.omit({ judgement: true }).nullable(),
  /** By that forecast, or by its newest round alone. Its call is that of `latest`. */
  judgement: judgementSchema,
  /** Of `judgement.bestPlaceId`. */
  bestPlaceName: z.string().nullable(),
  /** Null of a board that is in the yard. */
  archived: archivedSchema.nullable(),
});
export type BoardRow = z.infer<typeof boardRowSchema>;

/** What a list of boards is sorted by: `added` is the order in which they were entered. Boards without come last. */
export const boardSortSchema = z.enum(['added', 'code', 'average', 'call', 'ready', 'read', 'species']);
export type BoardSort = z.infer<typeof boardSortSchema>;

/**
 * Which boards a list shows. `elsewhere`: those moved to another place than their stack's. `archived`: those that left the
 * yard, which no other list shows.
 */
export const boardFilterSchema = z.enum([...callSchema.options, 'not-probed', 'elsewhere', 'archived']);
export type BoardFilter = z.infer<typeof boardFilterSchema>;

export const moveSchema = z.object({
  id: rowIdSchema,
  version: versionSchema,
  boardId: rowIdSchema,
  placeId: rowIdSchema,
  placeName: z.string(),
  since: instantSchema,
  /** How well that is known: by the clock, a time that a person gave, or only the day. */
  datedBy: z.enum(['clock', 'time', 'day']),
});
export type Move = z.infer<typeof moveSchema>;

/** Which file is open, and what is wrong with it if anything. */
export const yardInfoSchema = z.object({
  /** Null while it cannot be opened. */
  uuid: z.uuid().nullable(),
  kind: z.enum(['own', 'demo']),
  file: z.string(),
  /** Null when all is well; otherwise what was wrong, what was kept, what to do next. */
  problem: messageSchema.nullable(),
  /** Whether the damaged file can be renamed and a new yard begun. */
  canStartAfresh: z.boolean(),
  /** The copy that was made of the file when that was lost while it was open; null where a file is in its place. */
  rescuedFile: z.string().nullable(),
  boards: z.number().int(),
  version: z.string(),
});
export type YardInfo = z.infer<typeof yardInfoSchema>;
