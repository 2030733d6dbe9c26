/** Quantiles over the weighed runs of a forecast, each with what the model itself gets wrong on top. */
import { z } from 'zod';

/** The 10, 50 and 90 % values of one quantity. */
export const quantilesSchema = z.object({ low: z.number(), median: z.number(), high: z.number() });
export type Quantiles = z.infer<typeof quantilesSchema>;

/** The model is wrong by less where wood is dry, for so are places: in proportion below 13 % MC. */
export const errorShare = (pct: number): number => Math.min(1, Math.max(0, pct) / 13);

/** Three values that stand for a normal distribution, in standard deviations, and their shares (Gauss and Hermite's rule). */
const [AWAY, AWAY_SHARE, MIDDLE_SHARE] = [Math.sqrt(3), 1 / 6, 2 / 3];

/**
 * Values at 10, 50 and 90 %: each between the middles of the two runs round it.
 *
 * @param values   rising
 * @param weights  of each, together 1
 */
function read(values: Float64Array, weights: Float64Array): Quantiles {
  let at = 0;
  let middle = weights[0]! / 2;
  let beforeAt = 0;
  const valueAt = (probability: number): number => {
    while (middle < probability && at < values.length - 1) {
      beforeAt = middle;
      middle += (weights[at]! + weights[at + 1]!) / 2;
      at++;
    }
    const value = values[at]!;
    if (at === 0 || middle < probability) return value;
    const before = values[at - 1]!;
    return before + ((value - before) * (probability - beforeAt)) / (middle - beforeAt);
  };
  return { low: valueAt(0.1), median: valueAt(0.5), high: valueAt(0.9) };
}

/**
 * Reads quantiles of one quantity after another of the same runs.
 *
 * @param weights  of the runs; together 1
 * @param errorPct  standard deviation of what the model gets wrong on a board, % MC, where it is not dry
 */
export function runQuantiles(weights: readonly number[], errorPct: number) {
  const count = weights.length;
  // In order of the last values: those of the next day are nearly so. Equal ones go by their place.
  const order = Int32Array.from(weights, (_, k) => k);
  const sorted = new Float64Array(count);
  const sortedWeights = new Float64Array(count);
  function sort(values: ArrayLike<number>): void {
    for (let i = 0; i < count; i++) {
      const k = order[i]!;
      const value = values[k]!;
      let j = i - 1;
      for (; j >= 0 && (sorted[j]! > value || (sorted[j] === value && order[j]! > k)); j--) {
        sorted[j + 1] = sorted[j]!;
        order[j + 1] = order[j]!;
      }
      sorted[j + 1] = value;
      order[j + 1] = k;
    }
    for (let i = 0; i < count; i++) sortedWeights[i] = weights[order[i]!]!;
  }

  /** Of the runs' values as they are. */
  function plain(values: ArrayLike<number>): Quantiles {
    sort(values);
    return read(sorted, sortedWeights);
  }

  const less = new Float64Array(count + 1).fill(Number.POSITIVE_INFINITY);
  const same = new Float64Array(count + 1).fill(Number.POSITIVE_INFINITY);
  const more = new Float64Array(count + 1).fill(Number.POSITIVE_INFINITY);
  const merged = new Float64Array(3 * count);
  const mergedWeights = new Float64Array(3 * count);

  /** Of moisture contents, % MC, with the model's error on top. */
  function withError(values: ArrayLike<number>): Quantiles {
    sort(values);
    const off = AWAY * errorPct;
    for (let i = 0; i < count; i++) {
      const value = sorted[i]!;
      const away = errorShare(value) * off;
      less[i] = value - away;
      same[i] = value;
      more[i] = value + away;
    }
    // The runs three times, each in order.
    let [ofLess, ofSame, ofMore] = [0, 0, 0];
    for (let at = 0; at < merged.length; at++) {
      const a = less[ofLess]!;
      const b = same[ofSame]!;
      const c = more[ofMore]!;
      if (a <= b && a <= c) {
        merged[at] = a;
        mergedWeights[at] = AWAY_SHARE * sortedWeights[ofLess++]!;
      } else if (b <= c) {
        merged[at] = b;
        mergedWeights[at] = MIDDLE_SHARE * sortedWeights[ofSame++]!;
      } else {
        merged[at] = c;
        mergedWeights[at] = AWAY_SHARE * sortedWeights[ofMore++]!;
      }
    }
    return read(merged, mergedWeights);
  }

  return { plain, withError };
}
