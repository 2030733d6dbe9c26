/** Quantiles over the weighed runs of a forecast, each with what the model itself gets wrong on top. */
import { z } from 'zod';

/** The 10, 50 and 90 % values of one quantity. */
export const quantilesSchema = z.object({ low: z.number(), median: z.number(), high: z.number() });
export type Quantiles = z.infer<typeof quantilesSchema>;

/** The model is wrong by less where wood is dry, for so are places: in proportion below 13 % MC. */
export const errorShare = (pct: number): number => Math.min(1, Math.max(0, pct) / 13);

/** Three values that stand for a normal distribution, in standard deviations, and their shares (Gauss and Hermite's rule). */
const [AWAY, AWAY_SHARE, MIDDLE_SHARE] = [Math.sqrt(3), 1 / 6, 2 / 3];

const PROBABILITIES = [0.1, 0.5, 0.9];

/** Values at those probabilities: each between the middles of the two runs round it. */
class Reader {
  private readonly found: number[] = [];
  private below = 0;
  private before = Number.NaN;
  private beforeAt = 0;

  /** Whether more values would change nothing. */
  get isDone(): boolean {
    return this.found.length === PROBABILITIES.length;
  }

  /** Takes the next higher value, of this weight. */
  take(value: number, weight: number): void {
    const middle = this.below + weight / 2;
    while (middle >= PROBABILITIES[this.found.length]!) {
      const share = (PROBABILITIES[this.found.length]! - this.beforeAt) / (middle - this.beforeAt);
      this.found.push(Number.isNaN(this.before) ? value : this.before + (value - this.before) * share);
    }
    this.below += weight;
    this.before = value;
    this.beforeAt = middle;
  }

  quantiles(): Quantiles {
    const [low = this.before, median = this.before, high = this.before] = this.found;
    return { low, median, high };
  }
}

/**
 * Reads quantiles of one quantity after another of the same runs.
 *
 * @param weights  of the runs; together 1
 * @param errorPct  standard deviation of what the model gets wrong on a board, % MC, where it is not dry
 */
export function runQuantiles(weights: readonly number[], errorPct: number) {
  // In order of the last values: those of the next day are nearly so.
  const order = weights.map((_, k) => k);
  function sort(values: ArrayLike<number>): void {
    for (let i = 1; i < order.length; i++) {
      const k = order[i]!;
      const value = values[k]!;
      let j = i - 1;
      for (; j >= 0 && values[order[j]!]! > value; j--) order[j + 1] = order[j]!;
      order[j + 1] = k;
    }
  }

  /** Of the runs' values as they are. */
  function plain(values: ArrayLike<number>): Quantiles {
    sort(values);
    const reader = new Reader();
    for (const k of order) reader.take(values[k]!, weights[k]!);
    return reader.quantiles();
  }

  /** Of moisture contents, % MC, with the model's error on top. */
  function withError(values: ArrayLike<number>): Quantiles {
    sort(values);
    const reader = new Reader();
    const off = AWAY * errorPct;
    // The runs three times, each in order: less the error, as they are, and more it.
    let [less, same, more] = [0, 0, 0];
    const at = (cursor: number, error: number): number => {
      if (cursor === order.length) return Number.POSITIVE_INFINITY;
      const value = values[order[cursor]!]!;
      return value + errorShare(value) * error;
    };
    let [nextLess, nextSame, nextMore] = [at(0, -off), at(0, 0), at(0, off)];
    for (let taken = 0; taken < 3 * order.length && !reader.isDone; taken++) {
      if (nextLess <= nextSame && nextLess <= nextMore) {
        reader.take(nextLess, AWAY_SHARE * weights[order[less]!]!);
        nextLess = at(++less, -off);
      } else if (nextSame <= nextMore) {
        reader.take(nextSame, MIDDLE_SHARE * weights[order[same]!]!);
        nextSame = at(++same, 0);
      } else {
        reader.take(nextMore, AWAY_SHARE * weights[order[more]!]!);
        nextMore = at(++more, off);
      }
    }
    return reader.quantiles();
  }

  return { plain, withError };
}
