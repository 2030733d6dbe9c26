import { z } from 'zod';
import { solveMonotone } from '../maths/root.ts';

/** How a species' electrical resistance along the grain falls as its moisture content rises. */
export const resistanceCurveSchema = z.object({
  name: z.string().trim().min(1).max(80),
  source: z.string().max(400),
  /** Wood temperature that the curve holds for, °C. */
  tempC: z.number().min(-20).max(60),
  /** MC in %, rising, and resistance in megohms. */
  points: z
    .array(z.tuple([z.number().min(0).max(60), z.number().positive()]))
    .min(3)
    .refine((points) => points.every(([mc], i) => i === 0 || mc > points[i - 1]![0])),
});
export type ResistanceCurve = z.infer<typeof resistanceCurveSchema>;

/**
 * Below this fall of resistance per % MC, in decades (about 13 %), a curve no longer tells moisture content: boards
 * of one species differ by more. Some published columns end in such a plateau (0.44 0.40 0.40 0.40).
 */
export const LEAST_FALL = 0.06;

/** An end point read back through the inverse is still on the curve, % MC. */
const ROUNDING = 1e-6;

interface Knot {
  mcPct: number;
  log10Ohms: number;
}

/** Every reading is looked up on a curve several times. */
const knownKnots = new WeakMap<ResistanceCurve, readonly Knot[]>();

function usableKnots(curve: ResistanceCurve): readonly Knot[] {
  const known = knownKnots.get(curve) ?? knotsOf(curve);
  knownKnots.set(curve, known);
  return known;
}

/** The points up to where the curve stops telling moisture content, in log10 of ohms. */
function knotsOf(curve: ResistanceCurve): readonly Knot[] {
  const knots: Knot[] = [];
  for (const [mcPct, megohm] of curve.points) {
    const log10Ohms = Math.log10(megohm) + 6;
    const last = knots.at(-1);
    if (last && (last.log10Ohms - log10Ohms) / (mcPct - last.mcPct) < LEAST_FALL) break;
    knots.push({ mcPct, log10Ohms });
  }
  if (knots.length < 3) throw new RangeError(`The resistance curve "${curve.name}" does not fall steadily.`);
  return knots;
}

/** MC between which the curve tells moisture content, %. */
export function curveRangePct(curve: ResistanceCurve): { minPct: number; maxPct: number } {
  const knots = usableKnots(curve);
  return { minPct: knots[0]!.mcPct, maxPct: knots.at(-1)!.mcPct };
}

/** Fall of the chord from knot i to the next, decades per % MC (negative). */
function chord(knots: readonly Knot[], i: number): number {
  const [from, to] = [knots[i]!, knots[i + 1]!];
  return (to.log10Ohms - from.log10Ohms) / (to.mcPct - from.mcPct);
}

/**
 * Slope at a knot: weighted harmonic mean of the chords beside it (never steeper than three times the flatter one,
 * so the cubic cannot turn back), and the chord itself at the ends, so that the extension is smooth.
 */
function slopeAt(knots: readonly Knot[], i: number): number {
  if (i === 0) return chord(knots, 0);
  if (i === knots.length - 1) return chord(knots, i - 1);
  const before = knots[i]!.mcPct - knots[i - 1]!.mcPct;
  const after = knots[i + 1]!.mcPct - knots[i]!.mcPct;
  const [w1, w2] = [2 * after + before, after + 2 * before];
  return (w1 + w2) / (w1 / chord(knots, i - 1) + w2 / chord(knots, i));
}

function evaluate(knots: readonly Knot[], mcPct: number): number {
  const [first, last] = [knots[0]!, knots.at(-1)!];
  if (mcPct <= first.mcPct) return first.log10Ohms + slopeAt(knots, 0) * (mcPct - first.mcPct);
  if (mcPct >= last.mcPct) return last.log10Ohms + slopeAt(knots, knots.length - 1) * (mcPct - last.mcPct);
  let i = 0;
  while (knots[i + 1]!.mcPct < mcPct) i++;
  const [from, to] = [knots[i]!, knots[i + 1]!];
  const width = to.mcPct - from.mcPct;
  const t = (mcPct - from.mcPct) / width;
  // Cubic Hermite basis.
  return (
    (1 + 2 * t) * (1 - t) ** 2 * from.log10Ohms +
    t * (1 - t) ** 2 * width * slopeAt(knots, i) +
    t * t * (3 - 2 * t) * to.log10Ohms +
    t * t * (t - 1) * width * slopeAt(knots, i + 1)
  );
}

/**
 * Resistance of a species at a moisture content, at the curve's own temperature.
 *
 * Cubic through the published points in log10 of resistance over MC, monotone and without overshoot
 * (F. N. Fritsch and J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984), the same scheme as SciPy's
 * PchipInterpolator inside the ends; from memory). Outside its ends the curve goes on along its end slope.
 *
 * @param mcPct   moisture content, %
 * @returns       log10 of ohms, and whether `mcPct` lies outside the curve's usable points
 * @throws        RangeError if `mcPct` is not a number, or the curve does not fall
 */
export function log10OhmsAt(
  curve: ResistanceCurve,
  mcPct: number,
): { log10Ohms: number; outsideCurve: boolean } {
  if (!Number.isFinite(mcPct)) throw new RangeError(`Moisture content must be a number, not ${mcPct}.`);
  const knots = usableKnots(curve);
  const outsideCurve = mcPct < knots[0]!.mcPct || mcPct > knots.at(-1)!.mcPct;
  return { log10Ohms: evaluate(knots, mcPct), outsideCurve };
}

/**
 * Moisture content of a species from its resistance at the curve's own temperature: the inverse of `log10OhmsAt`,
 * exact to 1e-6 % MC.
 *
 * @param log10Ohms   log10 of the resistance between the pins, Ω
 * @returns           moisture content, % (below zero far beyond the dry end, which is for the caller to refuse), and
 *                    whether it lies outside the curve's usable points
 * @throws            RangeError if `log10Ohms` is not a number, or the curve does not fall
 */
export function mcAtLog10Ohms(
  curve: ResistanceCurve,
  log10Ohms: number,
): { mcPct: number; outsideCurve: boolean } {
  if (!Number.isFinite(log10Ohms)) throw new RangeError('Resistance must be above 0 Ω.');
  const knots = usableKnots(curve);
  const [first, last] = [knots[0]!, knots.at(-1)!];
  // On the extensions the answer is within reach of the flattest slope that a curve may have.
  const low = first.mcPct - Math.max(0, log10Ohms - first.log10Ohms) / LEAST_FALL - 1;
  const high = last.mcPct + Math.max(0, last.log10Ohms - log10Ohms) / LEAST_FALL + 1;
  const mcPct = solveMonotone((pct) => evaluate(knots, pct), log10Ohms, low, high);
  return { mcPct, outsideCurve: mcPct < first.mcPct - ROUNDING || mcPct > last.mcPct + ROUNDING };
}
