/**
 * Published days of drying, and what has to be added to calculate them. `tests/bench/drying-prior.bench.ts` chooses the
 * prior's medians on them, and the reference tests check those. Each source is described in its test.
 */

import { DAY_MS } from '../../shared-core/time.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import type { DryingClass } from '../../shared-core/wood/species/drying-class.ts';
import { forecastDays } from '../bench/drying-days.ts';

const yearOf = (tempC: readonly number[], rh: readonly number[]): MonthlyAir =>
  tempC.map((t, month) => ({ tempC: t, rh: rh[month]! }));

/** Monthly means near those of Madison, Wisconsin; from memory. */
export const madison = yearOf(
  [-8, -5, 1, 8, 14, 20, 22, 21, 16, 10, 2, -5],
  [0.75, 0.73, 0.71, 0.67, 0.67, 0.69, 0.72, 0.75, 0.76, 0.72, 0.76, 0.79],
);
/** Monthly means near those of Marquette; from memory. */
export const upperMichigan = yearOf(
  [-9, -8, -4, 3, 10, 15, 19, 18, 14, 7, 0, -6],
  [0.8, 0.77, 0.73, 0.68, 0.65, 0.7, 0.71, 0.75, 0.78, 0.77, 0.8, 0.82],
);
/** A heated house; from memory. */
export const house = yearOf(Array<number>(12).fill(21), Array<number>(12).fill(0.4));

/** A species as its days were published: class, basic specific gravity, green % MC. */
type Published = readonly [dryingClass: DryingClass, basicSpecificGravity: number, greenPct: number];

/** A board whose days of drying were published. 1 inch nominal is sawn somewhat fuller: 28 mm unless given. */
export const greenBoard = (
  air: MonthlyAir,
  month: number,
  [dryingClass, basicSpecificGravity, greenPct]: Published,
  thicknessMm = 28,
): DryingBoard => {
  const atMs = Date.UTC(2021, month, 1);
  return {
    thicknessMm,
    basicSpecificGravity,
    dryingClass,
    start: { atMs, mcPct: greenPct, logSd: 0.15, shellRatio: 1 },
    stays: [{ fromMs: atMs, air }],
  };
};

const MOST_DAYS = 1000;

/**
 * Days, with their fraction, until a board has come to a moisture content; infinite after 1000.
 *
 * @param theta  values of `dryingParameters`: the middle of its prior unless given
 */
export function daysUntil(
  board: DryingBoard,
  untilPct: number,
  theta: readonly number[] = dryingPrior(board).mean,
): number {
  const { atMs } = board.start;
  const daily = Array.from({ length: MOST_DAYS }, (_, i) => atMs + i * DAY_MS);
  const { averagePct } = runBoard(
    boardModel(board),
    theta,
    board.stays,
    atMs,
    daily.at(-1)!,
    null,
    daily,
    [],
  );
  const at = averagePct.findIndex((mc) => mc <= untilPct);
  if (at < 1) return Number.POSITIVE_INFINITY;
  const [before, after] = [averagePct[at - 1]!, averagePct[at]!];
  return at - 1 + (before - untilPct) / (before - after);
}

/** Days until it has dried to a moisture content, forecast on the day it was sawn, before any reading: 10, 50, 90 %. */
export function daysForecast(
  board: DryingBoard,
  untilPct: number,
): { early: number; likely: number; late: number } {
  const [early, likely, late] = forecastDays(board, untilPct);
  return { early, likely, late };
}

export const months = Array.from({ length: 12 }, (_, month) => month);

/**
 * Species, class, basic specific gravity, green % MC (heartwood and sapwood mixed; Wood Handbook, Tables 5-3 and 4-1, from
 * memory); days to 20 % where stacked at the best and at the worst time of year (`drying-rietz-page.test.ts`).
 */
export const rietzPage: readonly (readonly [string, Published, fewest: number, most: number])[] = [
  ['black walnut', ['dense-hardwood', 0.51, 85], 70, 200],
  ['black cherry', ['dense-hardwood', 0.47, 60], 70, 200],
  ['northern red oak', ['upland-oak', 0.56, 75], 70, 200],
  ['white oak', ['upland-oak', 0.6, 72], 80, 250],
  ['sugar maple', ['maple', 0.56, 68], 50, 200],
  ['white ash', ['ring-porous', 0.55, 45], 60, 200],
  ['yellow-poplar', ['light-hardwood', 0.4, 95], 40, 150],
  ['eastern white pine', ['pine', 0.34, 130], 60, 200],
];

/** Sugar maple to 20 % (`peck-1957-sugar-maple.test.ts`): as above, days. */
export const peck = { species: ['maple', 0.56, 68] as Published, fastest: 40, mean: 90, slowest: 205 };

/** As above; least and most days to 10 % indoors (`miceli-1982-hardwoods-at-home.test.ts`). */
export const miceli: readonly (readonly [string, Published, least: number, most: number])[] = [
  ['silver maple', ['maple', 0.44, 80], 90, 90],
  ['black cherry', ['dense-hardwood', 0.47, 60], 90, 90],
  ['white oak', ['upland-oak', 0.6, 72], 90, 150],
];
