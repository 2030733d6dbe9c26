/**
 * What a board's readings say of its moisture through the thickness, with what drying allows: a small Bayesian model in
 * closed form, fast enough to run with every reading.
 */
import { normalCdf, normalDensity } from '../../wood/maths/gaussian.ts';
import { mean } from '../../wood/maths/mean.ts';
import type { PlaceFacts } from './evidence.ts';
import { plannedDepthMm } from './spots.ts';

/** One reading as the profile sees it. */
export interface ReadingAtDepth {
  /** How deep the wood lies that was read, mm; the planned depth where it is unknown. */
  depthMm: number;
  /** Only the plan says how deep: the pins may be shorter. */
  isOnlyPlanned: boolean;
  mcPct: number;
}

/** Average and shell–core difference as the board's last forecast has them for the day of the readings. */
export interface HistoryProfile {
  /** Core less shell, points of MC, with one standard uncertainty. */
  differencePct: number;
  differenceSdPct: number;
}

export interface KnownOfBoard {
  thicknessMm: number;
  /** EMC of the air where it is, % MC; null where that is not known. */
  emcPct: number | null;
  placeKind: PlaceFacts['kind'];
  /** It came here from damper air within the last two months; null where that is not known. */
  isNewHere: boolean | null;
  history: HistoryProfile | null;
  /** Only its shell was read, so that its core follows from what is expected alone. */
  isShellAlone?: boolean;
}

/** One profile family and pin length, with how likely it is: average and difference are jointly normal within it. */
interface Part {
  weight: number;
  /** Of the average, % MC, and its standard uncertainty from the scatter between spots and from the gradient. */
  averagePct: number;
  spotsPct: number;
  /** Core less shell, points of MC. */
  differencePct: number;
  differenceSdPct: number;
}

export interface ProfilePosterior {
  parts: readonly Part[];
  averagePct: number;
  /** Standard uncertainty of the average that more readings lessen, and of what all of them share, % MC. */
  spotsPct: number;
  sharedPct: number;
  differencePct: number;
  differenceSdPct: number;
}

/** MC = core - difference |1 - 2 z / thickness|^exponent: from steep within to flat within; a parabola has 2. */
export const EXPONENTS = [1.7, 2.5, 3.5] as const;
/**
 * Where only the plan says how deep the pins went they may have been too short for it: the shortest pins, mm, and those
 * that most meters have. Common practice, no source.
 */
export const SHORTEST_PINS_MM = 5;
const USUAL_PINS_MM = 8;
/** Where longer ones ended, as a part of the way from the usual ones to the planned depth. */
const REACHES = [0.33, 0.67, 1] as const;
/** How likely pins were pushed in fully at every spot, the shell's as well. Common practice, no source. */
export const ALWAYS_FULLY_IN = 0.2;
/** Lengths of such pins, mm: any that a meter may have. Common practice, no source. */
const FULLY_IN_MM = [SHORTEST_PINS_MM, USUAL_PINS_MM, 15, 25] as const;
/**
 * Core less surface of a drying board: so many times what its average is above the EMC of its air, with one standard
 * deviation, and some points more (`SHELL_AHEAD`): the line that fits the app's own drying model, 19 to 80 mm, at paces
 * drawn from its prior in air that changes (`tests/bench/calls-by-harm.bench.ts` draws such boards). With a surface at the
 * EMC and a constant diffusivity it would be π/2 and no point more (Crank, The Mathematics of Diffusion, 1975, eq. 4.17,
 * from memory).
 */
export const STEEPNESS = { mean: 1.15, sd: 0.2 } as const;
/**
 * So many points more is the core above the surface of one that is long where it is, of one that came from damper air in
 * the last two months, and of one of which that is not known. From the drying model, as `STEEPNESS`.
 */
export const SHELL_AHEAD = {
  settled: { points: 1, sdPoints: 0 },
  moved: { points: 2, sdPoints: 0 },
  unknown: { points: 1.5, sdPoints: 0.5 },
} as const;
/** @param isNewHere  see `new-here.ts`; null where that is not known */
export const shellAhead = (isNewHere: boolean | null): (typeof SHELL_AHEAD)[keyof typeof SHELL_AHEAD] =>
  SHELL_AHEAD[isNewHere === null ? 'unknown' : isNewHere ? 'moved' : 'settled'];
/** How far what is known of a place's air is off, % MC of EMC. Common practice, no source. */
export const AIR_SD_PCT = 0.7;
/**
 * How far the EMC of some days or weeks, and with it a board's surface, strays from the month's usual one, one standard
 * deviation, % MC. Common practice, no source.
 */
export const SPELL_SD_PCT: Record<PlaceFacts['kind'], number> = {
  outdoors: 1.8,
  'open-shed': 1.5,
  shop: 0.8,
  'heated-room': 0.6,
};
/** Where the air is not known the board is this far above its EMC, give or take, % MC. Common practice, no source. */
export const UNKNOWN_AIR = { abovePct: 1.5, sdPct: 3 } as const;

/** What is expected of core less surface, as a line of the average: `ofAverage` × average + `offsetPct`, give or take `sdPct`. */
interface GradientPrior {
  ofAverage: number;
  offsetPct: number;
  sdPct: number;
  /** It holds for averages on one side of the EMC alone; null: for all. */
  side: Side | null;
}
interface Side {
  /** 1 for above, -1 for below. */
  sign: 1 | -1;
  emcPct: number;
  /** How far the EMC and what all readings share may be off, one standard deviation, % MC. */
  sdPct: number;
}

/**
 * A board above the EMC of its air dries, and its core is wetter than its shell. One below came from drier air, or the month
 * is a damp one: its core is about as dry as its shell, and nothing makes it drier than both. That counts where the shell
 * alone was read; deeper readings tell the average themselves.
 */
function gradientPriors(
  { emcPct, placeKind, isNewHere, history, isShellAlone = false }: KnownOfBoard,
  averagePct: number,
  sharedPct: number,
  steepness: number,
): GradientPrior[] {
  if (history !== null)
    return [
      {
        ofAverage: 0,
        offsetPct: history.differencePct / steepness,
        sdPct: Math.max(0.1, history.differenceSdPct) / steepness,
        side: null,
      },
    ];
  const airPct = emcPct ?? averagePct - UNKNOWN_AIR.abovePct;
  const above = averagePct - airPct;
  const ahead = shellAhead(isNewHere);
  // The meter's error moves the average that was read, and nothing else.
  const edgeSdPct = Math.hypot(emcPct === null ? UNKNOWN_AIR.sdPct : AIR_SD_PCT, sharedPct);
  const sdAt = (abovePct: number): number =>
    Math.hypot(STEEPNESS.sd * abovePct, STEEPNESS.mean * edgeSdPct, ahead.sdPoints, SPELL_SD_PCT[placeKind]);
  const drying = {
    ofAverage: STEEPNESS.mean,
    offsetPct: ahead.points - STEEPNESS.mean * airPct,
    sdPct: sdAt(above),
  };
  if (emcPct === null || !isShellAlone) return [{ ...drying, side: null }];
  const edge = { emcPct, sdPct: edgeSdPct };
  return [
    { ...drying, side: { ...edge, sign: 1 } },
    { ofAverage: 0, offsetPct: 0, sdPct: sdAt(0), side: { ...edge, sign: -1 } },
  ];
}

/** Where the tips may have been, each with how likely: as planned but for pins that are too short. */
function possibleDepths(readings: readonly ReadingAtDepth[], thicknessMm: number) {
  const deepestMm = Math.max(0, ...readings.map((each) => (each.isOnlyPlanned ? each.depthMm : 0)));
  const upTo = (mostMm: number) =>
    readings.map(({ depthMm, isOnlyPlanned }) => (isOnlyPlanned ? Math.min(depthMm, mostMm) : depthMm));
  const fullyIn = (mm: number) =>
    readings.map(({ depthMm, isOnlyPlanned }) => (isOnlyPlanned ? Math.min(mm, thicknessMm / 2) : depthMm));
  if (deepestMm === 0) return [{ weight: 1, depthsMm: upTo(0) }];
  const reaches = [
    SHORTEST_PINS_MM,
    USUAL_PINS_MM,
    ...REACHES.map((part) => USUAL_PINS_MM + part * Math.max(0, deepestMm - USUAL_PINS_MM)),
  ];
  return [
    ...reaches.map((mm) => ({ weight: (1 - ALWAYS_FULLY_IN) / reaches.length, depthsMm: upTo(mm) })),
    ...FULLY_IN_MM.map((mm) => ({
      weight: ALWAYS_FULLY_IN / FULLY_IN_MM.length,
      depthsMm: fullyIn(mm),
    })),
  ];
}

/**
 * Average and shell–core difference of a board, jointly, from readings at depths that may be known or not.
 *
 * Given the family's exponent and the pins' reach, each reading is average + core-less-surface × (its place in the
 * profile) + what all share + its spot's scatter, and what drying allows of core less surface is normal: least squares
 * with that prior, in closed form. Exponent and reach are summed over, weighted by how well they explain the readings.
 *
 * Uninsulated pins read the wettest layer they touch, which in a drying board is the deepest; in one whose shell is wetter
 * they read too high, which errs to the safe side.
 *
 * @param scatterPct  between spots at one depth, one standard deviation, % MC, above 0
 * @param sharedPct   standard uncertainty of what all readings share, % MC
 * @throws RangeError without readings
 * Source: any textbook of Bayesian linear models (Gelman et al., Bayesian Data Analysis, chapter 14; from memory).
 */
export function profilePosterior(
  readings: readonly ReadingAtDepth[],
  known: KnownOfBoard,
  scatterPct: number,
  sharedPct: number,
): ProfilePosterior {
  if (readings.length === 0) throw new RangeError('A profile needs at least one reading.');
  const { thicknessMm } = known;
  const aboutPct = mean(readings.map(({ mcPct }) => mcPct));
  const shellShare = Math.abs(1 - (2 * plannedDepthMm('shell', thicknessMm)) / thicknessMm);
  const parts: (Part & { logWeight: number })[] = [];
  for (const { weight, depthsMm } of possibleDepths(readings, thicknessMm)) {
    for (const exponent of EXPONENTS) {
      const steepness = shellShare ** exponent;
      for (const prior of gradientPriors(known, aboutPct, sharedPct, steepness)) {
        const anywhere = solved(readings, depthsMm, thicknessMm, exponent, scatterPct, prior);
        const fitted = prior.side === null ? anywhere : onSide(anywhere, prior.side);
        parts.push({
          weight: 0,
          logWeight: Math.log(weight) + fitted.logEvidence,
          averagePct: fitted.averagePct,
          spotsPct: fitted.averageSdPct,
          differencePct: fitted.gradientPct * steepness,
          differenceSdPct: fitted.gradientSdPct * steepness,
        });
      }
    }
  }
  const top = Math.max(...parts.map(({ logWeight }) => logWeight));
  const total = parts.reduce((sum, { logWeight }) => sum + Math.exp(logWeight - top), 0);
  const weighted = parts.map(({ logWeight, ...part }) => ({
    ...part,
    weight: Math.exp(logWeight - top) / total,
  }));
  const over = (of: (part: Part) => number) =>
    weighted.reduce((sum, part) => sum + part.weight * of(part), 0);
  const averagePct = over((part) => part.averagePct);
  const differencePct = over((part) => part.differencePct);
  return {
    parts: weighted,
    averagePct,
    spotsPct: Math.sqrt(over((part) => part.spotsPct ** 2 + (part.averagePct - averagePct) ** 2)),
    sharedPct,
    differencePct,
    differenceSdPct: Math.sqrt(
      over((part) => part.differenceSdPct ** 2 + (part.differencePct - differencePct) ** 2),
    ),
  };
}

interface Fitted {
  averagePct: number;
  gradientPct: number;
  averageSdPct: number;
  gradientSdPct: number;
  covariance: number;
  logEvidence: number;
}

/** Average and core less surface of one family by least squares with their prior; the average's own prior is flat. */
function solved(
  readings: readonly ReadingAtDepth[],
  depthsMm: readonly number[],
  thicknessMm: number,
  exponent: number,
  scatterPct: number,
  { ofAverage, offsetPct, sdPct }: GradientPrior,
): Fitted {
  // A reading is average + gradient × x: the mean of |1 - 2u|^n over the thickness is 1 / (n + 1).
  const xs = depthsMm.map(
    (depthMm) => 1 / (exponent + 1) - Math.abs(1 - (2 * depthMm) / thicknessMm) ** exponent,
  );
  const perReading = 1 / scatterPct ** 2;
  const perPrior = 1 / sdPct ** 2;
  let aa = ofAverage ** 2 * perPrior;
  let ag = -ofAverage * perPrior;
  let gg = perPrior;
  let a = -ofAverage * offsetPct * perPrior;
  let g = offsetPct * perPrior;
  xs.forEach((x, index) => {
    const y = readings[index]!.mcPct;
    aa += perReading;
    ag += x * perReading;
    gg += x * x * perReading;
    a += y * perReading;
    g += x * y * perReading;
  });
  const determinant = aa * gg - ag * ag;
  const averagePct = (gg * a - ag * g) / determinant;
  const gradientPct = (aa * g - ag * a) / determinant;
  const misfit = xs.reduce(
    (sum, x, index) => sum + perReading * (readings[index]!.mcPct - averagePct - gradientPct * x) ** 2,
    perPrior * (gradientPct - ofAverage * averagePct - offsetPct) ** 2,
  );
  return {
    averagePct,
    gradientPct,
    averageSdPct: Math.sqrt(gg / determinant),
    gradientSdPct: Math.sqrt(aa / determinant),
    covariance: -ag / determinant,
    logEvidence: -(misfit + Math.log(determinant) + 2 * Math.log(sdPct)) / 2,
  };
}

/**
 * A fit of which only the averages on one side of the EMC hold: the moments of a truncated normal distribution (Johnson,
 * Kotz and Balakrishnan, Continuous Univariate Distributions, section 13.10; from memory), the gradient with them.
 */
function onSide(fitted: Fitted, { sign, emcPct, sdPct }: Side): Fitted {
  const { averagePct, averageSdPct, gradientPct, gradientSdPct, covariance, logEvidence } = fitted;
  const variance = averageSdPct ** 2;
  const spread = Math.hypot(averageSdPct, sdPct);
  const z = (sign * (averagePct - emcPct)) / spread;
  const chance = normalCdf(z);
  if (chance < LEAST_CHANCE) return { ...fitted, logEvidence: logEvidence + Math.log(LEAST_CHANCE) };
  const ratio = normalDensity(z) / chance;
  const movedPct = (sign * ratio * variance) / spread;
  const lost = (variance / spread) ** 2 * ratio * (ratio + z);
  const perPct = covariance / variance;
  return {
    averagePct: averagePct + movedPct,
    gradientPct: gradientPct + perPct * movedPct,
    averageSdPct: Math.sqrt(variance - lost),
    gradientSdPct: Math.sqrt(gradientSdPct ** 2 - perPct ** 2 * lost),
    covariance: perPct * (variance - lost),
    logEvidence: logEvidence + Math.log(chance),
  };
}
/** A side less likely than this weighs nothing. */
const LEAST_CHANCE = 1e-6;

/** With its average so many points higher, and as uncertain. */
export const movedBy = (posterior: ProfilePosterior, points: number): ProfilePosterior => ({
  ...posterior,
  averagePct: posterior.averagePct + points,
  parts: posterior.parts.map((part) => ({ ...part, averagePct: part.averagePct + points })),
});

/** Probability that the board's average is above that, % MC. */
export function chanceAverageAbove({ parts, sharedPct }: ProfilePosterior, pct: number): number {
  return parts.reduce(
    (sum, part) =>
      sum + part.weight * normalCdf((part.averagePct - pct) / Math.hypot(part.spotsPct, sharedPct)),
    0,
  );
}

/** Probability that shell and core differ by more than that, either way, points of MC. */
export function chanceDifferenceAbove({ parts }: ProfilePosterior, points: number): number {
  return parts.reduce(
    (sum, { weight, differencePct, differenceSdPct }) =>
      sum +
      weight *
        (normalCdf((differencePct - points) / differenceSdPct) +
          normalCdf((-differencePct - points) / differenceSdPct)),
    0,
  );
}
