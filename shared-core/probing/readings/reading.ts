import { z } from 'zod';
import { instantSchema } from '../../time.ts';
import { correctedSchema, readingUnitSchema } from '../../wood/moisture/corrected.ts';
import { messageSchema } from '../../words/message.ts';
import { exclusionSchema } from './exclusion.ts';

/** What a spot is meant to tell: the wood near the faces, the average over the thickness, or the middle. */
export const depthSchema = z.enum(['shell', 'average', 'core']);
export type Depth = z.infer<typeof depthSchema>;
/** The depths that differ in a drying board. */
export type ShellOrCore = Exclude<Depth, 'average'>;

/** Where on the board the pins went. */
export const spotSchema = z.object({
  depth: depthSchema,
  /** How deep below the face the wood lies that was read, mm: at the pin tips, or in a fresh cut beside the pins; null when not known. */
  depthMm: z.number().positive().max(500).nullable(),
  /** Distance from the nearer end, mm; null when not known. */
  fromEndMm: z.number().min(0).max(20_000).nullable(),
  /** What the pins went into; a fresh cut is a crosscut. */
  face: z.enum(['face', 'fresh-cut', 'fresh-rip', 'fresh-split', 'end-grain']),
  /** Nobody gave its place along the board: the distance is only that of the plan. Left out where it was read by the plan. */
  isAlongUnknown: z.literal(true).optional(),
});
export type Spot = z.infer<typeof spotSchema>;

/** A meter shows less than this, %, even where its decimal point was missed, or Ω, which is beyond any pin meter (common practice, no source). */
export const MOST_TYPED = { pct: 10_000, ohm: 1e15 } as const;
/** Whether a meter can show a value: the last digit of no meter is smaller, and 0 it shows as a blank or a dash. */
export const isOnAMeter = (raw: number): boolean => Math.abs(raw) >= 0.001;

/** How the value came to be saved. */
export const takenHowSchema = z.enum(['settled', 'at-once', 'typed']);

/**
 * Who says how deep it was read: a person, the pin length of the meter's profile, or only the plan of spots, which is no
 * known depth.
 */
export const depthFromSchema = z.enum(['person', 'pins', 'plan']);

/** What a probe thermometer in the wood said, °C, and its name. */
export const probeTempSchema = z.object({ name: z.string(), tempC: z.number() });
export type ProbeTemp = z.infer<typeof probeTempSchema>;

const otherBoardSchema = z.object({ boardId: z.number().int().positive(), code: z.string() });

/** One raw value with everything that is known of it. What was saved is never edited and never deleted. */
export const readingSchema = z.object({
  id: z.number().int().positive(),
  roundId: z.number().int().positive(),
  boardId: z.number().int().positive(),
  /** Index in the board's plan of spots, or null for an extra one. */
  spotIndex: z.number().int().min(0).nullable(),
  spot: spotSchema,
  depthFrom: depthFromSchema,
  raw: z.number(),
  /** What was saved, in the same unit, where a person corrected it; left out where it holds. */
  savedRaw: z.number().optional(),
  /** The meter showed only that it is more than `raw`, beyond its scale; left out where it showed the value. */
  isAbove: z.boolean().optional(),
  unit: readingUnitSchema,
  how: takenHowSchema,
  /** Whether the settling detector had found the live value steady; null for a typed value. */
  settled: z.boolean().nullable(),
  /** Wood temperature that holds for it now (the board's own, what a probe measured, or the round's), °C. */
  woodTempC: z.number().nullable(),
  /** A person was asked about that temperature, and it is right; left out where not asked. */
  isTempRight: z.boolean().optional(),
  /** Name of the probe thermometer that measured that temperature; left out where a person gave it. */
  probeName: z.string().optional(),
  /** Null for a value typed before a meter was chosen. */
  meterId: z.number().int().positive().nullable(),
  /** The version of that meter's profile that holds for it: of when it was taken, unless a person moved it to another. */
  meterProfileId: z.number().int().positive().nullable(),
  /** UTC instant, ISO 8601. */
  takenAt: instantSchema,
  /** Why a person left it out of the averages; null when it counts. */
  excluded: exclusionSchema.nullable(),
  /** The board that a person moved it to, or from which; left out where none did. */
  movedTo: otherBoardSchema.optional(),
  movedFrom: otherBoardSchema.optional(),
  /** In the person's own words; left out where there is none. */
  note: z.string().optional(),
  /** The disk changed it since it was saved, so nothing of it is sure; left out where it is as it was saved. */
  isDamaged: z.boolean().optional(),
});
export type Reading = z.infer<typeof readingSchema>;

export const suspicionRuleSchema = z.enum([
  /** The disk changed it since it was saved. */
  'damaged',
  /** Not a number, negative, or beyond what wood can hold. */
  'not-a-reading',
  /** Typed with the decimal point in the wrong place: 126 or 1.26 for 12.6. */
  'typing-slip',
  'frozen',
  'below-freezing',
  'not-settled',
  'outside-meter-range',
  /** Below about 6 %, above fiber saturation, or past the ends of the species' curve. */
  'outside-curve-range',
  'temperature-unknown',
  'temperature-of-air',
  'temperature-out-of-range',
  /** The entered wood temperature is far from what the air of the place has in that month. */
  'temperature-unlikely',
  'near-end',
  'end-grain',
  /** The pins were not in far enough for what it is called, or only touched the surface. */
  'pins-shallow',
  /** The pins would have come out at the other face. */
  'deeper-than-board',
  /** The spot has an earlier reading that is used too. */
  'same-spot',
  /** The meter showed one and the same value at every spot. */
  'equal-values',
  /** One face reads wet where the wood under it does not. */
  'surface-wet',
  'shell-above-core',
  'rained-on',
  'outlier-on-board',
  'jump-since-last-round',
  /** The board changed otherwise than the rest of its stack: boards swapped, say. */
  'apart-from-stack',
  /** It is entered as another species than the boards around it, and read as theirs it would fit better. */
  'species-unlike-stack',
  /** The readings drift as the round goes on. */
  'meter-drift',
  /** A first round is drier than the board can have become since it was sawn. */
  'dry-too-soon',
  /** A first round is wetter than the board can still be, so long after it was sawn. */
  'wet-too-long',
  /** A first round is drier than any air that the board met. */
  'drier-than-its-air',
  /** The whole round lies off what the stack should read. */
  'round-off',
]);

/** Why one reading may be wrong, and what to do about it. Only `refused` ones are left out without a person's doing. */
export const suspicionSchema = z.object({
  rule: suspicionRuleSchema,
  /** `refused`: cannot be a moisture content. `questionable`: shown, but not used for the call. `note`: worth knowing. */
  severity: z.enum(['refused', 'questionable', 'note']),
  why: messageSchema,
  whatToDo: messageSchema,
});
export type Suspicion = z.infer<typeof suspicionSchema>;

/** A reading with what was made of it: a pure function of the reading, its board and the rules. */
export const judgedReadingSchema = readingSchema.extend({
  corrected: correctedSchema,
  suspicions: z.array(suspicionSchema),
  /** Whether it goes into the board's averages. */
  counts: z.boolean(),
});
export type JudgedReading = z.infer<typeof judgedReadingSchema>;
