import type { DryingGrid } from './drying-grid.ts';
import type { Tables } from './law-tables.ts';

/** A stretch of time in one air: EMC runs straight from start to end, temperature is its mean. */
export type AirSegment = {
  durationS: number;
  emcStartPct: number;
  emcEndPct: number;
  tempC: number;
};

/** What a board goes through, and when and where to look at it. */
export type DryingCourse = {
  grid: DryingGrid;
  segments: readonly AirSegment[];
  /** Error allowed in one step, root mean square over the thickness, % MC. */
  tolerancePct: number;
  /** Where to look: seconds from the start, rising, none beyond the end; and depths from face A as fractions. */
  observeS: ArrayLike<number>;
  depthFractions: readonly number[];
};

/** How it dries there. */
export type DryingPace = {
  tables: Tables;
  /** % MC of each cell. */
  startPct: ArrayLike<number>;
  /** Multiplies the law's diffusivity; above 0. */
  diffusivityFactor: number;
  /** Multiplies the law's emission at face A and at face B; 0 is sealed. */
  faceFactors: readonly [number, number];
  /** Added to every EMC, % MC. */
  emcOffsetPct?: number;
};

/** A question to the model. */
export type DryingRun = DryingCourse & DryingPace;

/** Its answer. */
export type DryingResult = {
  /** At each instant of `observeS`. */
  averagePct: Float64Array;
  /** One row a depth. */
  depthPct: Float64Array[];
  finalPct: Float64Array;
  /** Moisture that went out through the faces, as % MC of the board's average. */
  lostPct: number;
  steps: number;
};

/** No wood holds as much; a run begins nowhere above it, % MC. */
export const MOST_MC_PCT = 1000;

/** @throws RangeError for airs, times and a tolerance that no run has */
export function checkCourse(course: DryingCourse): void {
  if (!(course.tolerancePct > 0)) throw new RangeError('The tolerance must be above 0.');
  let total = 0;
  for (const segment of course.segments) {
    if (!(segment.durationS >= 0 && segment.durationS < 1e11)) {
      throw new RangeError(`A stretch of ${segment.durationS} s is not a length of time.`);
    }
    for (const emc of [segment.emcStartPct, segment.emcEndPct]) {
      if (!(emc >= 0 && emc <= 100)) throw new RangeError(`EMC ${emc} % is outside 0 to 100 %.`);
    }
    total += segment.durationS;
  }
  for (let i = 0; i < course.observeS.length; i++) {
    const at = course.observeS[i]!;
    if (!(at >= (i === 0 ? 0 : course.observeS[i - 1]!) && at <= total * (1 + 1e-12))) {
      throw new RangeError(`Time ${at} s to look at is out of order or beyond the end.`);
    }
  }
}

/** @throws RangeError for a board that there is not */
export function checkPace(pace: DryingPace, grid: DryingGrid): void {
  const n = grid.widthM.length;
  if (pace.startPct.length !== n)
    throw new RangeError(`The start has ${pace.startPct.length} cells, the grid ${n}.`);
  for (let i = 0; i < n; i++) {
    if (!(pace.startPct[i]! >= 0 && pace.startPct[i]! <= MOST_MC_PCT)) {
      throw new RangeError(`Start moisture content ${pace.startPct[i]} % is outside 0 to ${MOST_MC_PCT} %.`);
    }
  }
  if (!(pace.diffusivityFactor > 0 && pace.diffusivityFactor <= 1e4)) {
    throw new RangeError(`Diffusivity factor ${pace.diffusivityFactor} is not between 0 and 10000.`);
  }
  if (!pace.faceFactors.every((factor) => factor >= 0 && factor <= 1e9)) {
    throw new RangeError('A face factor is below 0.');
  }
  if (grid.half && pace.faceFactors[0] !== pace.faceFactors[1]) {
    throw new RangeError('Half a board was asked for, but its two faces differ.');
  }
}
