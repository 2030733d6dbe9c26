/** Moisture content at one depth below a face. */
export interface DepthReading {
  depthMm: number;
  mcPct: number;
}

/** Moisture through the thickness as a symmetric parabola: MC = core - difference (1 - 2 z / thickness)². */
export interface Profile {
  /** Mean over the thickness, %. */
  averagePct: number;
  /** At the faces, %; null where all readings lie at one depth. */
  shellPct: number | null;
  /** At mid-thickness, %; null as above. */
  corePct: number | null;
  /** Standard error of the average from the scatter between spots, % MC; null where nothing tells the scatter. */
  averageStandardErrorPct: number | null;
}

/** Steepness of the parabola at a depth: 1 at the faces, 0 at mid-thickness. */
function steepness(depthMm: number, thicknessMm: number): number {
  return (1 - (2 * depthMm) / thicknessMm) ** 2;
}

/** Depths whose steepness spreads less than this are one depth. */
const LEAST_SPREAD = 0.05;

/**
 * Average, shell and core of a board from readings at any depths.
 *
 * - All at one depth: the average is their mean, which is right at `depthOfAverageMm` and else too near shell or core.
 * - Two depths: the parabola through the mean at each.
 * - More: least squares.
 * The average over the thickness is core - difference / 3, that is shell + 2/3 (core - shell).
 *
 * The standard error is that of the fitted average, from the scatter of readings about the fit, or from a scatter that
 * is known already (`spotScatterPct`, one sigma of single spots), which a few readings cannot tell.
 *
 * @param readings      depths from 0 to the thickness, mm
 * @param thicknessMm   above 0
 * @throws              RangeError without readings, or for a depth outside the board
 * Source: the parabola is how a board dries once its core has begun to (Crank, The Mathematics of Diffusion, 1975,
 * chapter 4); the average is arithmetic. Least squares: any textbook of statistics.
 */
export function fitProfile(
  readings: readonly DepthReading[],
  thicknessMm: number,
  spotScatterPct: number | null = null,
): Profile {
  if (!(thicknessMm > 0)) throw new RangeError(`The thickness must be above 0 mm, not ${thicknessMm}.`);
  if (readings.length === 0) throw new RangeError('A profile needs at least one reading.');
  for (const { depthMm, mcPct } of readings) {
    if (!(depthMm >= 0 && depthMm <= thicknessMm)) {
      throw new RangeError(`A depth of ${depthMm} mm is not within a board of ${thicknessMm} mm.`);
    }
    if (!Number.isFinite(mcPct)) throw new RangeError('Each reading needs a moisture content.');
  }
  const count = readings.length;
  const points = readings.map(({ depthMm, mcPct }) => ({ x: steepness(depthMm, thicknessMm), mcPct }));
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / count;
  const meanMc = points.reduce((sum, { mcPct }) => sum + mcPct, 0) / count;
  const xs = points.map(({ x }) => x);
  const oneDepth = Math.max(...xs) - Math.min(...xs) < LEAST_SPREAD;

  const sxx = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0);
  const sxy = points.reduce((sum, { x, mcPct }) => sum + (x - meanX) * (mcPct - meanMc), 0);
  const slope = oneDepth ? 0 : sxy / sxx;
  const at = (x: number) => meanMc + slope * (x - meanX);

  const freedom = count - (oneDepth ? 1 : 2);
  const squares = points.reduce((sum, { x, mcPct }) => sum + (mcPct - at(x)) ** 2, 0);
  const scatter = spotScatterPct ?? (freedom > 0 ? Math.sqrt(squares / freedom) : null);
  // The mean of the steepness over the thickness is 1/3.
  const leverage = oneDepth ? 1 / count : 1 / count + (1 / 3 - meanX) ** 2 / sxx;
  return {
    averagePct: oneDepth ? meanMc : at(1 / 3),
    shellPct: oneDepth ? null : at(1),
    corePct: oneDepth ? null : at(0),
    averageStandardErrorPct: scatter === null ? null : scatter * Math.sqrt(leverage),
  };
}

/**
 * How deep to push the pins so that they read the average of a board with a parabolic gradient: 0.2113 of the thickness
 * from a face, (1 - 1/√3) / 2.
 *
 * Pins at one fifth to one quarter is the rule of the Dry Kiln Operator's Manual (from memory). EN 13183-2 asks for 0.3
 * of the thickness (from memory), which reads a little above the average of a drying board.
 *
 * Caution: pins are sharp and come out with a jerk. Push them with the meter's own hammer or handle, away from the
 * other hand.
 *
 * @throws RangeError where the thickness is not above 0
 * @example depthOfAverageMm(25.4) // 5.4
 */
export function depthOfAverageMm(thicknessMm: number): number {
  if (!(thicknessMm > 0)) throw new RangeError(`The thickness must be above 0 mm, not ${thicknessMm}.`);
  return (thicknessMm * (1 - 1 / Math.sqrt(3))) / 2;
}
