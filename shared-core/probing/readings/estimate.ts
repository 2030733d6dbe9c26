import { z } from 'zod';
import { mean } from '../../wood/maths/mean.ts';
import { coverageFactor } from '../../wood/maths/student-t.ts';
import { fitProfile } from '../../wood/moisture/profile.ts';
import { SCATTER_DEGREES, spotScatterPct } from '../../wood/moisture/spot-scatter.ts';
import type { Reading } from './reading.ts';
import { plannedDepthMm } from './spots.ts';

/** The state of a board as one round found it, % MC. */
export const estimateSchema = z.object({
  averagePct: z.number(),
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
  countedShell: z.number().int(),
  countedCore: z.number().int(),
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
  /** Standard uncertainty that more readings cannot lessen: meter, species correction, temperature, % MC. */
  sharedPct: number;
  /** Standard uncertainty from the scatter between spots, % MC. */
  spotsPct: number;
  /** Degrees of freedom of that scatter. */
  degrees: number;
};

/**
 * With one depth only, the average is taken to lie this far from it, one standard deviation, as a share of the MC
 * read: the gradient is not known. Common practice, no source.
 */
const UNKNOWN_GRADIENT = 0.15;
/** Part of the core-shell difference by which the average of a real profile strays from the parabola's. */
const PROFILE_SHARE = 0.1;

const COVERAGE = 0.9;
/** "Likely" means 8 chances in 10 wherever a person reads it. */
const LIKELY_COVERAGE = 0.8;

/**
 * The state of a board from the readings that count: the average over the thickness by a symmetric parabola through
 * shell and core (`wood/moisture/profile.ts`), and the interval in which it lies 9 times in 10.
 *
 * Uncertainty (GUM, JCGM 100:2008, clauses 5.1 and G.4): what all readings share (meter, species, temperature) does
 * not shrink with their number, the scatter between spots does. The scatter is pooled over both depths from the
 * board's own readings, together with what is known of boards beforehand (`spotScatterPct`) weighing as four degrees
 * of freedom, so that two readings that happen to agree do not promise too much. The interval is Student's t with
 * Welch-Satterthwaite degrees of freedom.
 *
 * @returns null where nothing counts
 */
export function estimateBoard(counted: readonly CountedReading[], thicknessMm: number): BoardEstimate | null {
  if (counted.length === 0) return null;
  const shell = counted.filter((each) => each.reading.spot.depth === 'shell');
  const core = counted.filter((each) => each.reading.spot.depth === 'core');
  const shellPct = shell.length > 0 ? mean(shell.map((each) => each.mcPct)) : null;
  const corePct = core.length > 0 ? mean(core.map((each) => each.mcPct)) : null;
  const degrees = SCATTER_DEGREES + Math.max(0, shell.length - 1) + Math.max(0, core.length - 1);
  const prior = spotScatterPct(mean(counted.map((each) => each.mcPct)));
  const squares = SCATTER_DEGREES * prior ** 2 + squaresAbout(shell, shellPct) + squaresAbout(core, corePct);
  const profile = fitProfile(
    counted.map(({ reading, mcPct }) => ({ depthMm: depthOf(reading, thicknessMm), mcPct })),
    thicknessMm,
    Math.sqrt(squares / degrees),
  );
  const { averagePct } = profile;
  // Never null where the scatter was given.
  const spotsPct = profile.averageStandardErrorPct as number;

  const differencePct = shellPct === null || corePct === null ? null : corePct - shellPct;
  const shape =
    differencePct === null ? UNKNOWN_GRADIENT * averagePct : PROFILE_SHARE * Math.abs(differencePct);
  const sharedPct = Math.hypot(mean(counted.map((each) => each.standardUncertaintyPct)), shape);
  return withInterval(
    { averagePct, shellPct, corePct, differencePct, countedShell: shell.length, countedCore: core.length },
    { sharedPct, spotsPct, degrees },
  );
}

/**
 * How many more readings of each depth would make the estimate good enough, if they read like those there are; null
 * where not even `most` would.
 */
export function extraReadingsFor(
  board: BoardEstimate,
  isGoodEnough: (better: BoardEstimate) => boolean,
  most: number,
): number | null {
  const { estimate, sharedPct } = board;
  const have = Math.min(estimate.countedShell, estimate.countedCore);
  for (let more = 1; have > 0 && more <= most; more += 1) {
    const spotsPct = board.spotsPct * Math.sqrt(have / (have + more));
    const degrees = board.degrees + 2 * more;
    if (isGoodEnough(withInterval(estimate, { sharedPct, spotsPct, degrees }))) return more;
  }
  return null;
}

/** The estimate with its intervals: Student's t with Welch-Satterthwaite degrees of freedom. */
function withInterval(
  estimate: Omit<Estimate, 'standardUncertaintyPct' | 'lowPct' | 'highPct' | 'likelyInterval'>,
  parts: Omit<BoardEstimate, 'estimate'>,
): BoardEstimate {
  const standardUncertaintyPct = Math.hypot(parts.sharedPct, parts.spotsPct);
  const effective = parts.degrees * (standardUncertaintyPct / parts.spotsPct) ** 4;
  const { averagePct } = estimate;
  const intervalOf = (coverage: number) => {
    const half = coverageFactor(coverage, effective) * standardUncertaintyPct;
    return { minPct: Math.max(0, averagePct - half), maxPct: averagePct + half };
  };
  const { minPct, maxPct } = intervalOf(COVERAGE);
  return {
    ...parts,
    estimate: {
      ...estimate,
      standardUncertaintyPct,
      lowPct: minPct,
      highPct: maxPct,
      likelyInterval: intervalOf(LIKELY_COVERAGE),
    },
  };
}

/** Depth of the pin tips; the planned one where it is not known or outside the board. */
export function depthOf({ spot }: Pick<Reading, 'spot'>, thicknessMm: number): number {
  return spot.depthMm !== null && spot.depthMm <= thicknessMm
    ? spot.depthMm
    : plannedDepthMm(spot.depth, thicknessMm);
}

function squaresAbout(readings: readonly CountedReading[], center: number | null): number {
  return readings.reduce((sum, { mcPct }) => sum + (mcPct - (center ?? mcPct)) ** 2, 0);
}
