import { solvePositive } from '../maths/gaussian.ts';

/**
 * What is known beforehand of how far corrected readings lie off, one standard deviation, points: by the meter (all its
 * readings), by the species (its published correction), by the two together, and from board to board. Together they are
 * the usual uncertainty of a meter, 0.87. How that divides is our judgment.
 */
export const PRIOR_SD_PCT = { meter: 0.6, species: 0.35, both: 0.25, board: 0.46 } as const;

/** The prior weighs as much as so many boards, where it comes to how large all these are. Our judgment. */
export const PRIOR_BOARDS = 8;

/** Whose readings: a meter on a species. */
export interface MeterOnSpecies {
  /** Null: typed readings, which name no meter. */
  meterId: number | null;
  /** What its values were corrected by after a check, points or decades: it is another meter since. Left out: 0. */
  meterOff?: number;
  speciesId: string;
  /** How uncertain its profile says that the meter is, as a part of the usual. */
  meterScale: number;
  /** Spread of species where this one is not corrected for, as a share of the MC; 0 where it is. */
  speciesShare: number;
  /** Spread by an unknown scale, as a share of the MC; 0 where it is known. */
  scaleShare: number;
}

/**
 * A board or a piece whose moisture content is known otherwise, and what its readings were corrected to.
 *
 * The app gives oven-dried pieces and weighed boards, and no boards at equilibrium with the air of their place: that EMC is
 * known to 1 to 1.5 points, mostly by readings of the same meter, and would lessen a meter's 0.6 by a seventh at best.
 */
export interface KnownMoisture extends MeterOnSpecies {
  boardId: string;
  /** Known moisture content, %. */
  mcPct: number;
  /** Mean of its corrected readings, before anything learned, less `mcPct`, points. */
  offPct: number;
  /** Standard uncertainty of `offPct`: the scatter of the readings and what is open about `mcPct`, points; above 0. */
  sdPct: number;
  /** An error that boards share, as that of the air they are in equilibrium with; null: none. */
  shared: { with: string; sdPct: number } | null;
}

/** How far a meter's corrected readings of a species lie off: reading = a MC + b, and how sure that is. */
export interface LearnedBias {
  a: number;
  b: number;
  /** Variance of b, covariance of a and b, variance of a: of b + a MC it is `bb + 2 ab MC + aa MC²`. */
  variance: { bb: number; ab: number; aa: number };
  /** Standard deviation from board to board, points. */
  boardSdPct: number;
  /** So many boards and pieces of this meter or this species tell it. */
  boards: number;
}

/**
 * What boards of known moisture content tell of a meter on a species.
 *
 * A hierarchical normal model: a corrected reading is off by an effect of its meter, one of its species, one of both, one
 * of the board, and its own error. Where the species is not corrected for, or the scale is not known, the effect of the
 * species, or of both, has a part in proportion to the MC. Few boards move the result little (shrinkage), a meter's
 * checks on one species tell something of it on another, and a species' checks something of another meter on it. All
 * standard deviations are known up to one common factor, whose prior weighs as much as eight boards; so the whole is
 * conjugate, and closed (A. Gelman and others, Bayesian Data Analysis, chapters 3 and 15; from memory).
 *
 * @returns null where no board is of this meter or this species
 * @throws  RangeError where an uncertainty is not above 0
 */
export function learnedBias(of: MeterOnSpecies, known: readonly KnownMoisture[]): LearnedBias | null {
  const boards = known
    .map((one) => same(one, of))
    .filter(({ sameMeter, sameSpecies }) => sameMeter || sameSpecies).length;
  if (boards === 0) return null;
  const covariance = known.map((one, i) => known.map((other, j) => together(one, other, i === j)));
  const offs = known.map(({ offPct }) => offPct);
  const constant = known.map((one) => constantTogether(one, of));
  const slope = known.map((one) => one.mcPct * shareTogether(one, of));
  const [byOffs, byConstant, bySlope] = [offs, constant, slope].map((vector) =>
    solvePositive(covariance, vector),
  );
  if (!byOffs || !byConstant || !bySlope) {
    throw new RangeError('Every known moisture content needs an uncertainty above 0.');
  }
  const factor = (PRIOR_BOARDS + dot(offs, byOffs)) / (PRIOR_BOARDS + known.length);
  return {
    a: 1 + dot(slope, byOffs),
    b: dot(constant, byOffs),
    variance: {
      bb: factor * (constantTogether(of, of) - dot(constant, byConstant)),
      ab: -factor * dot(constant, bySlope),
      aa: factor * (shareTogether(of, of) - dot(slope, bySlope)),
    },
    boardSdPct: PRIOR_SD_PCT.board * of.meterScale * Math.sqrt(factor),
    boards,
  };
}

/** Of a meter that is never off: what a corrected value is then unsure of is everything else. */
export const NEVER_OFF: LearnedBias = {
  a: 1,
  b: 0,
  variance: { bb: 0, ab: 0, aa: 0 },
  boardSdPct: 0,
  boards: 0,
};

/** Standard deviation of what is learned at a moisture content, board to board left out, points. */
export function biasSdPct({ variance: { bb, ab, aa } }: LearnedBias, mcPct: number): number {
  return Math.sqrt(Math.max(0, bb + 2 * ab * mcPct + aa * mcPct * mcPct));
}

/** Covariance of two boards' offsets. */
function together(one: KnownMoisture, other: KnownMoisture, isSame: boolean): number {
  const board =
    one.boardId === other.boardId ? PRIOR_SD_PCT.board ** 2 * one.meterScale * other.meterScale : 0;
  const shared =
    one.shared !== null && one.shared.with === other.shared?.with ? one.shared.sdPct * other.shared.sdPct : 0;
  const effects = constantTogether(one, other) + one.mcPct * other.mcPct * shareTogether(one, other);
  return effects + board + shared + (isSame ? one.sdPct ** 2 : 0);
}

/** Covariance of their effects in points. */
function constantTogether(one: MeterOnSpecies, other: MeterOnSpecies): number {
  const { sameMeter, sameSpecies } = same(one, other);
  const variance =
    (sameMeter ? PRIOR_SD_PCT.meter ** 2 : 0) +
    (sameSpecies ? PRIOR_SD_PCT.species ** 2 : 0) +
    (sameMeter && sameSpecies ? PRIOR_SD_PCT.both ** 2 : 0);
  return variance * one.meterScale * other.meterScale;
}

/** Covariance of their effects in proportion to the MC. */
function shareTogether(one: MeterOnSpecies, other: MeterOnSpecies): number {
  const { sameMeter, sameSpecies } = same(one, other);
  if (!sameSpecies) return 0;
  return one.speciesShare * other.speciesShare + (sameMeter ? one.scaleShare * other.scaleShare : 0);
}

const same = (one: MeterOnSpecies, other: MeterOnSpecies) => ({
  sameMeter: one.meterId === other.meterId && (one.meterOff ?? 0) === (other.meterOff ?? 0),
  sameSpecies: one.speciesId === other.speciesId,
});

const dot = (one: readonly number[], other: readonly number[]): number =>
  one.reduce((sum, value, i) => sum + value * other[i]!, 0);
