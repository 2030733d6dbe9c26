import { z } from 'zod';
import { mean } from '../../wood/maths/mean.ts';
import { coverageFactor } from '../../wood/maths/student-t.ts';
import { SCATTER_DEGREES, spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import { messageSchema } from '../../words/message.ts';
import { depthRead } from './depth-read.ts';
import { type KnownOfBoard, movedBy, type ProfilePosterior, profilePosterior } from './profile-posterior.ts';
import { type Depth, depthSchema, type Reading } from './reading.ts';
import { countSpots, plannedDepthMm } from './spots.ts';
import { whyAverage } from './why-average.ts';

/**
 * How the average is known: pins reached deep enough to tell it; or only the shell was read, and it is estimated by what
 * drying allows; or that leaves so much open that no number is shown; or a reading is above the scale of its meter, and the
 * average above the number.
 */
export const averageIsSchema = z.enum(['read', 'estimated', 'unknown', 'above']);
export type AverageIs = z.infer<typeof averageIsSchema>;

/** The state of a board as one round found it, % MC. */
export const estimateSchema = z.object({
  averagePct: z.number(),
  averageIs: averageIsSchema,
  /** Why it is at an end of what was read, or beyond it; left out where it is not, and where the shell alone was read. */
  whyAverage: messageSchema.optional(),
  shellPct: z.number().nullable(),
  corePct: z.number().nullable(),
  /** Core less shell. */
  differencePct: z.number().nullable(),
  /** Standard uncertainty of `averagePct`: meter, species correction and scatter between spots. */
  standardUncertaintyPct: z.number(),
  /** The average lies in here with a probability of 90 %: what the call goes by. */
  lowPct: z.number(),
  highPct: z.number(),
  /** It likely lies in here, 8 chances in 10: what a person is shown. */
  likelyInterval: z.object({ minPct: z.number(), maxPct: z.number() }),
  /** At how many spots of each depth; two readings of one spot tell little more than one. */
  countedShell: z.number().int(),
  countedAverage: z.number().int(),
  countedCore: z.number().int(),
  /** Of all of them, those known to have reached the middle. */
  inCore: z.number().int(),
});
export type Estimate = z.infer<typeof estimateSchema>;

/** A reading that goes into the average. */
export type CountedReading = {
  reading: Reading;
  mcPct: number;
  /** Standard uncertainty of `mcPct`, shared by all readings of the meter on this species. */
  standardUncertaintyPct: number;
};

/** The estimate, and what it is made of, so that a call can say what more readings would bring. */
export type BoardEstimate = {
  estimate: Estimate;
  posterior: ProfilePosterior;
  /** Degrees of freedom of the scatter between spots. */
  degrees: number;
};

/** Part of the thickness from a face that counts as the middle, once pins that are known to be there have read it. */
export const CORE_FROM = 0.4;

export const COVERAGE = 0.9;
/** An estimated average is shown where it likely lies within so many points. Common practice, no source. */
export const WIDEST_ESTIMATE_POINTS = 5;
/** Where the core comes near fiber saturation the shell no longer tells how wet it is, % MC. Common practice, no source. */
export const WETTEST_CORE_PCT = 25;
/** "Likely" means 8 chances in 10 wherever a person reads it. */
const LIKELY_COVERAGE = 0.8;

/**
 * The state of a board from the readings that count: the average over the thickness, the shell–core difference, and how
 * sure both are (`profile-posterior.ts`).
 *
 * Uncertainty (GUM, JCGM 100:2008, clauses 5.1 and G.4): what all readings share (meter, species, temperature) does
 * not shrink with their number, the scatter between spots does. The scatter is pooled over the depths from the
 * board's own readings, together with what is known of boards beforehand (`spotScatterPct`) weighing as four degrees
 * of freedom, so that two readings that happen to agree do not promise too much. The interval is Student's t with
 * Welch-Satterthwaite degrees of freedom.
 *
 * @returns null where nothing counts
 */
export function estimateBoard(counted: readonly CountedReading[], known: KnownOfBoard): BoardEstimate | null {
  if (counted.length === 0) return null;
  const { thicknessMm } = known;
  const at = (depth: Depth) => counted.filter(({ reading }) => depthRead(reading, thicknessMm) === depth);
  /** A spot is read at whatever depth its pins reach, unless a person says that they told another. */
  const isFor = (reading: Reading): Depth =>
    reading.depthFrom === 'person' ? depthRead(reading, thicknessMm) : reading.spot.depth;
  const countedFor = (depth: Depth) =>
    countSpots(counted.flatMap(({ reading }) => (isFor(reading) === depth ? [reading] : [])));
  const groups = depthSchema.options.map(at).filter((group) => group.length > 0);
  const own = groups.reduce((sum, group) => sum + group.length - 1, 0);
  const degrees = SCATTER_DEGREES + own;
  const prior = spotScatterPct(mean(counted.map(({ mcPct }) => mcPct)));
  const squares = SCATTER_DEGREES * prior ** 2 + groups.reduce((sum, group) => sum + squaresAbout(group), 0);
  const shell = at('shell');
  const ofReadings = profilePosterior(
    counted.map(({ reading, mcPct }) => ({
      depthMm: depthOf(reading, thicknessMm),
      isOnlyPlanned: reading.depthFrom === 'plan' || reading.spot.depthMm === null,
      mcPct,
    })),
    { ...known, isShellAlone: shell.length === counted.length },
    Math.sqrt(squares / degrees),
    mean(counted.map((each) => each.standardUncertaintyPct)),
  );
  const posterior = withinReadings(ofReadings, at('average'));
  const core = at('core');
  const inCore = counted.filter(({ reading }) => isInCore(reading, thicknessMm));
  const isRead = shell.length < counted.length;
  const averagePct = Math.max(0, posterior.averagePct);
  const why =
    isRead &&
    whyAverage(
      averagePct,
      counted.map(({ mcPct }) => mcPct),
      posterior.differencePct,
    );
  const shellPct = shell.length > 0 ? mean(shell.map(({ mcPct }) => mcPct)) : null;
  const corePct = core.length > 0 ? mean(core.map(({ mcPct }) => mcPct)) : null;
  return withInterval(
    {
      averagePct,
      isRead,
      ...(why && { whyAverage: why }),
      shellPct,
      corePct,
      differencePct: shellPct === null || corePct === null ? null : corePct - shellPct,
      countedShell: countedFor('shell'),
      countedAverage: countedFor('average'),
      countedCore: countedFor('core'),
      inCore: inCore.length,
    },
    posterior,
    degrees,
  );
}

/**
 * Pins at a fifth to a third of the thickness count as the average (common practice, no source), so the average lies
 * within what they read: a person sees at a glance that it follows from them. Where only the plan says how deep they were,
 * they may have read another layer.
 */
function withinReadings(posterior: ProfilePosterior, ofAverage: readonly CountedReading[]): ProfilePosterior {
  if (ofAverage.length === 0 || ofAverage.some(({ reading }) => reading.depthFrom === 'plan'))
    return posterior;
  const pcts = ofAverage.map(({ mcPct }) => mcPct);
  const { averagePct } = posterior;
  const withinPct = Math.min(Math.max(...pcts), Math.max(Math.min(...pcts), averagePct));
  return movedBy(posterior, withinPct - averagePct);
}

/** Whether pins that are known to have been there read the middle of the board, or nearly. */
function isInCore(reading: Reading, thicknessMm: number): boolean {
  // Where nobody knows how deep they were, they reached nothing for sure.
  const sureMm = reading.depthFrom === 'plan' ? 0 : (reading.spot.depthMm ?? 0);
  return Math.min(sureMm, thicknessMm - sureMm) / thicknessMm >= CORE_FROM;
}

/** The estimate with its intervals: Student's t with Welch-Satterthwaite degrees of freedom. */
function withInterval(
  {
    isRead,
    ...estimate
  }: Omit<Estimate, 'standardUncertaintyPct' | 'lowPct' | 'highPct' | 'likelyInterval' | 'averageIs'> & {
    isRead: boolean;
  },
  posterior: ProfilePosterior,
  degrees: number,
): BoardEstimate {
  const { sharedPct, spotsPct } = posterior;
  const standardUncertaintyPct = Math.hypot(sharedPct, spotsPct);
  const effective = degrees * (standardUncertaintyPct / spotsPct) ** 4;
  const { averagePct } = estimate;
  const intervalOf = (coverage: number) => {
    const half = coverageFactor(coverage, effective) * standardUncertaintyPct;
    return { minPct: Math.max(0, averagePct - half), maxPct: averagePct + half };
  };
  const { minPct, maxPct } = intervalOf(COVERAGE);
  const likely = intervalOf(LIKELY_COVERAGE);
  const corePct = (estimate.shellPct ?? averagePct) + Math.max(0, posterior.differencePct);
  const isClose = likely.maxPct - likely.minPct <= WIDEST_ESTIMATE_POINTS && corePct <= WETTEST_CORE_PCT;
  return {
    posterior,
    degrees,
    estimate: {
      ...estimate,
      averageIs: isRead ? 'read' : isClose ? 'estimated' : 'unknown',
      standardUncertaintyPct,
      lowPct: minPct,
      highPct: maxPct,
      likelyInterval: likely,
    },
  };
}

/** Depth of the pin tips; the planned one where it is not known or outside the board. */
export function depthOf({ spot }: Pick<Reading, 'spot'>, thicknessMm: number): number {
  return spot.depthMm !== null && spot.depthMm <= thicknessMm
    ? spot.depthMm
    : plannedDepthMm(spot.depth, thicknessMm);
}

function squaresAbout(readings: readonly CountedReading[]): number {
  const center = mean(readings.map(({ mcPct }) => mcPct));
  return readings.reduce((sum, { mcPct }) => sum + (mcPct - center) ** 2, 0);
}
