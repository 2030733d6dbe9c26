/** Wood temperatures that the corrections are meant for, °C (range from memory). */
export const WOOD_TEMP_RANGE_C = { min: -20, max: 60 } as const;
/** Beyond these the corrections are refused, °C: outside, resistance may no longer tell one MC from another. */
export const WOOD_TEMP_LIMIT_C = { min: -40, max: 80 } as const;

/** The nearest temperature that the corrections are not refused at, °C. */
export const withinLimit = (tempC: number): number =>
  Math.min(WOOD_TEMP_LIMIT_C.max, Math.max(WOOD_TEMP_LIMIT_C.min, tempC));

/** At one wood temperature a published correction is a straight line: MC = gain × reading + offset. */
type Line = { gain: number; offset: number };
/** A published correction. */
export type Published = (woodTempC: number) => Line;

/**
 * Pfaff and Garrahan: M shown, T wood temperature in °C,
 *
 *     MC = (M + 0.567 - 0.0260 T + 0.000051 T²) / (0.881 × 1.0056^T)
 *
 * Source: F. Pfaff and P. Garrahan, Forest Products Journal 36(3), 1986, with a = 1, b = 0; as used in public
 * field-monitoring code, checked there.
 */
export const pfaffGarrahan: Published = (woodTempC) => {
  const gain = 1 / (0.881 * 1.0056 ** woodTempC);
  return { gain, offset: gain * (0.567 - 0.026 * woodTempC + 0.000051 * woodTempC * woodTempC) };
};

/**
 * Wood temperature at which the formula of Pfaff and Garrahan leaves a reading as it is, °C: the temperature that the
 * meters behind it were made for, close to the 70 °F (21 °C) that meters are commonly calibrated at.
 */
export const NEUTRAL_TEMP_C = 22.7;

/** James's figure has its zero at 70 °F. */
const JAMES_ZERO_C = 21.1;

/**
 * James: the points to add to a reading, by wood temperature and reading, zero at 70 °F.
 *
 * Source: W. L. James, Electric Moisture Meters for Wood, FPL-GTR-6 (1988), Figure 5, as digitized in public code. At
 * each temperature its curves are straight lines of the reading. The line's two coefficients over temperature are our
 * least-squares fit: 0.11 points from the digitized figure (root mean square), 0.3 at most from -5 to 50 °C, 0.7 at
 * -20 °C (tests/reference holds it to that). It is falling from -40 to 80 °C everywhere.
 */
export const james: Published = (woodTempC) => {
  const warmerK = woodTempC - JAMES_ZERO_C;
  return { gain: Math.exp(-0.007735 * warmerK + 4.858e-5 * warmerK * warmerK), offset: -0.03636 * warmerK };
};

/**
 * VTT: 0.10 to 0.15 points for each °C, here the middle.
 * Source: H. Forsén and V. Tarvainen, VTT Publications 420 (2000), from its abstract.
 */
export const vtt: Published = (woodTempC) => ({ gain: 1, offset: -0.125 * woodTempC });

/**
 * Moisture content of a piece from what a scale shows that is right at another temperature. Resistance ties the two:
 * a scale that is right at `scaleTempC` shows one value for each resistance, and so does the published correction.
 *
 * @param shownPct     what the scale shows, %
 * @param woodTempC    wood temperature, °C, -20 to 60; extended to -40 and 80
 * @param scaleTempC   temperature that the scale is right at, °C, same range
 * @returns            % MC on the scale's species; equals `shownPct` where both temperatures are equal
 * @throws             RangeError outside the extended range
 * @example atWoodTempPct(pfaffGarrahan, 15, 5, NEUTRAL_TEMP_C) // 17.0
 */
export function atWoodTempPct(
  published: Published,
  shownPct: number,
  woodTempC: number,
  scaleTempC: number,
): number {
  requireWoodTemp(woodTempC);
  requireWoodTemp(scaleTempC);
  const [wood, scale] = [published(woodTempC), published(scaleTempC)];
  return (wood.gain / scale.gain) * (shownPct - scale.offset) + wood.offset;
}

/** All of them. */
export const publishedCorrections: readonly Published[] = [pfaffGarrahan, james, vtt];

/** MC by each of the published corrections, %. */
export type ByCorrection = Record<'pfaffGarrahan' | 'james' | 'vtt', number>;

/**
 * What the three published corrections make of one value, side by side. Arguments and errors as `atWoodTempPct`.
 * @example byEachCorrection(16, 0, 21.1) // { pfaffGarrahan: 18.6, james: 20.0, vtt: 18.6 }
 */
export function byEachCorrection(shownPct: number, woodTempC: number, scaleTempC: number): ByCorrection {
  const by = (published: Published) => atWoodTempPct(published, shownPct, woodTempC, scaleTempC);
  return { pfaffGarrahan: by(pfaffGarrahan), james: by(james), vtt: by(vtt) };
}

/**
 * How far the other published corrections lie from the one used, root mean square, % MC. It is 0 at the scale's own
 * temperature. Arguments and errors as `atWoodTempPct`.
 */
export function disagreementPct(
  used: Published,
  shownPct: number,
  woodTempC: number,
  scaleTempC: number,
): number {
  const mcPct = atWoodTempPct(used, shownPct, woodTempC, scaleTempC);
  const offPct = Object.values(byEachCorrection(shownPct, woodTempC, scaleTempC)).map((pct) => pct - mcPct);
  // The one used is among them, at no distance.
  return Math.hypot(...offPct) / Math.sqrt(offPct.length - 1);
}

function requireWoodTemp(tempC: number): void {
  if (!(tempC >= WOOD_TEMP_LIMIT_C.min && tempC <= WOOD_TEMP_LIMIT_C.max)) {
    throw new RangeError(
      `Wood temperature must be ${WOOD_TEMP_LIMIT_C.min} to ${WOOD_TEMP_LIMIT_C.max} °C, not ${tempC}.`,
    );
  }
}
