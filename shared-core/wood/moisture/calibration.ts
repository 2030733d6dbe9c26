import type { Outcome } from '../../outcome.ts';
import { type Message, message } from '../../words/message.ts';
import { correctReading, type OwnCalibration, type ReadingToCorrect } from './correction.ts';

/** One piece that was read with the meter and then dried in the oven. */
export interface OvenDryCheck {
  /** What the meter showed, on its basis scale and brought to the basis temperature: `onBasisScalePct`. */
  readingPct: number;
  ovenDryMcPct: number;
  /** What the app makes of the reading without the user's checks, % MC; null where it makes nothing. */
  publishedMcPct: number | null;
  /** How many readings were averaged: pieces read more often weigh more. */
  readings: number;
}

export interface Calibration {
  /** The line reading = a MC + b, ready for `correctReading`. */
  line: OwnCalibration;
  /** `offset`: a is held at 1, because a slope would not have predicted better. */
  model: 'line' | 'offset';
  /** For each check, in order: MC that the fit without this check gives, less its oven-dry MC, % MC. */
  leaveOneOutPct: number[];
  /** Root mean square of what the published correction is wrong by on these pieces, % MC; null where it has none. */
  publishedErrorPct: number | null;
  worthUsing: boolean;
  /** Why. */
  why: Message;
}

/** Fewer points make no line. */
export const LEAST_FOR_A_LINE = 3;
/** No meter tells such a moisture content, %. Common practice, no source. */
const MOST_PCT = 400;
/** Fewer pieces than this tell too little about the next one. */
export const LEAST_CHECKS = 5;
/** A slope is only fitted over at least this spread of oven-dry MC, %. */
export const LEAST_SPREAD_PCT = 3;

/**
 * The reading as the calibration needs it: % on the meter's basis scale at the basis temperature, before anything
 * is done for the species. Ohms are read on the basis curve.
 *
 * @returns null where the reading is refused
 */
export function onBasisScalePct(reading: Omit<ReadingToCorrect, 'ownCalibration'>): number | null {
  return correctReading({ ...reading, ownCalibration: { a: 1, b: 0, standardErrorPct: 0 } }).mcPct;
}

type Line = Pick<OwnCalibration, 'a' | 'b'>;
const mcOnLine = ({ a, b }: Line, readingPct: number) => (readingPct - b) / a;

/** Weighted least squares of reading on oven-dry MC: the oven is assumed true, the scatter is the meter's. */
function weightedLine(checks: readonly OvenDryCheck[], model: 'line' | 'offset'): Line {
  const total = checks.reduce((sum, { readings }) => sum + readings, 0);
  const mean = (of: (check: OvenDryCheck) => number) =>
    checks.reduce((sum, check) => sum + check.readings * of(check), 0) / total;
  const x = mean((check) => check.ovenDryMcPct);
  const y = mean((check) => check.readingPct);
  const xx = mean((check) => (check.ovenDryMcPct - x) ** 2);
  const xy = mean((check) => (check.ovenDryMcPct - x) * (check.readingPct - y));
  const a = model === 'line' ? xy / xx : 1;
  return { a, b: y - a * x };
}

const rootMeanSquare = (values: readonly number[]) =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

function leaveOneOut(checks: readonly OvenDryCheck[], model: 'line' | 'offset'): number[] {
  return checks.map((left, i) => {
    const line = weightedLine(
      checks.filter((_, j) => j !== i),
      model,
    );
    return mcOnLine(line, left.readingPct) - left.ovenDryMcPct;
  });
}

/**
 * The user's own species correction from oven-dry checks.
 *
 * Fits reading = a MC + b (the form of the published linear species coefficients; Pfaff and Garrahan 1986) by
 * weighted least squares, once with a slope and once with a = 1, and keeps the one whose leave-one-out error is
 * smaller: each check is predicted from the others only, so the error is that of a piece the fit has not seen
 * (Stone, J. Royal Statistical Society B 36, 1974; from memory). That error is the standard error which goes with
 * every MC found through the line.
 *
 * Worth using: at least five pieces, and a smaller error than the published correction makes on the same pieces.
 *
 * @returns a problem where a check has a moisture content that no meter can tell, as by a mistyped weight
 * @throws  RangeError for fewer than three checks, or one without a reading and a moisture content above 0
 */
export function fitCalibration(checks: readonly OvenDryCheck[]): Outcome<Calibration> {
  if (checks.length < LEAST_FOR_A_LINE) {
    throw new RangeError('At least three oven-dry checks are needed for a fit.');
  }
  for (const { readingPct, ovenDryMcPct, readings } of checks) {
    if (!(readingPct > 0 && ovenDryMcPct > 0 && readings > 0)) {
      throw new RangeError('A check needs a reading and an oven-dry moisture content, both above 0 %.');
    }
    const mcPct = Math.max(readingPct, ovenDryMcPct);
    if (mcPct >= MOST_PCT) return { ok: false, problem: message('own-fit.impossible', { mcPct }) };
  }
  const mcs = checks.map(({ ovenDryMcPct }) => ovenDryMcPct).sort((p, q) => p - q);
  // Without its widest piece, too, what is left must be able to tell a slope.
  const spreadWithoutAny = Math.min(mcs.at(-2)! - mcs[0]!, mcs.at(-1)! - mcs[1]!);
  const offsetErrors = leaveOneOut(checks, 'offset');
  const lineErrors = spreadWithoutAny >= LEAST_SPREAD_PCT ? leaveOneOut(checks, 'line') : null;
  const slope = weightedLine(checks, 'line').a;
  // Coefficients outside 0.5 to 2 are those of no species: the checks are mixed up or the meter is broken.
  const lineIsBetter =
    lineErrors !== null &&
    slope > 0.5 &&
    slope < 2 &&
    rootMeanSquare(lineErrors) < rootMeanSquare(offsetErrors);
  const model = lineIsBetter ? 'line' : 'offset';
  const leaveOneOutPct = lineIsBetter ? lineErrors : offsetErrors;
  const standardErrorPct = rootMeanSquare(leaveOneOutPct);

  const published = checks.flatMap(({ publishedMcPct, ovenDryMcPct }) =>
    publishedMcPct === null ? [] : [publishedMcPct - ovenDryMcPct],
  );
  const publishedErrorPct = published.length === checks.length ? rootMeanSquare(published) : null;
  const value: Calibration = {
    line: { ...weightedLine(checks, model), standardErrorPct },
    model,
    leaveOneOutPct,
    publishedErrorPct,
    ...worthOf(checks.length, standardErrorPct, publishedErrorPct),
  };
  return { ok: true, value };
}

function worthOf(
  pieces: number,
  errorPoints: number,
  publishedPoints: number | null,
): Pick<Calibration, 'worthUsing' | 'why'> {
  if (pieces < LEAST_CHECKS) {
    return { worthUsing: false, why: message('own-fit.too-few', { pieces, least: LEAST_CHECKS }) };
  }
  if (publishedPoints === null) {
    return { worthUsing: true, why: message('own-fit.nothing-published', { errorPoints }) };
  }
  const worthUsing = errorPoints < publishedPoints;
  const code = worthUsing ? 'own-fit.better' : 'own-fit.no-better';
  return { worthUsing, why: message(code, { errorPoints, publishedPoints }) };
}
