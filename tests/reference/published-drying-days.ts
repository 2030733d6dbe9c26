/**
 * Published days of drying, and what has to be added to calculate them. `tests/bench/drying-prior.bench.ts` chooses the
 * prior's medians on them, and the reference tests check those. Each source is described in its test.
 */

import { DAY_MS } from '../../shared-core/time.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  priorPace,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import { worked } from '../unit/worked.ts';

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

/** A board whose days of drying were published. 1 inch nominal is sawn somewhat fuller: 28 mm unless given. */
export const greenBoard = (
  air: MonthlyAir,
  month: number,
  basicSpecificGravity: number,
  greenPct: number,
  thicknessMm = 28,
): DryingBoard => {
  const atMs = Date.UTC(2021, month, 1);
  return {
    thicknessMm,
    basicSpecificGravity,
    start: { atMs, mcPct: greenPct, logSd: 0.15, shellRatio: 1 },
    stays: [{ fromMs: atMs, air }],
  };
};

/** Days, with their fraction, until a board with these factors has come to a moisture content; infinite after 1000. */
export function daysUntil(
  board: DryingBoard,
  diffusivityFactor: number,
  surfaceFactor: number,
  untilPct: number,
): number {
  const { atMs, mcPct } = board.start;
  const theta = [
    Math.log(diffusivityFactor),
    Math.log(surfaceFactor),
    Math.log(mcPct!),
    0,
    priorPace.exponent.mean,
  ];
  const daily = Array.from({ length: 1000 }, (_, i) => atMs + i * DAY_MS);
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
  const { atMs } = board.start;
  const { reach } = worked(
    forecastBoard({
      nowMs: atMs,
      board,
      readings: [],
      siblings: [],
      endUse: { minPct: 0, maxPct: untilPct, maxShellCorePct: 100 },
      elsewhere: [],
      placeId: 1,
      horizonDays: 1500,
    }),
  ).places[0]!;
  const days = (ms: number | null): number => (ms! - atMs) / DAY_MS;
  return { early: days(reach.earlyMs), likely: days(reach.likelyMs), late: days(reach.lateMs) };
}

export const months = Array.from({ length: 12 }, (_, month) => month);

/**
 * Wood, basic specific gravity, green % MC (heartwood and sapwood mixed; Wood Handbook, Tables 5-3 and 4-1, from memory);
 * days to 20 % where stacked at the best and at the worst time of year (`drying-rietz-page.test.ts`).
 */
export const rietzPage: readonly (readonly [string, number, number, number, number])[] = [
  ['black walnut', 0.51, 85, 70, 200],
  ['black cherry', 0.47, 60, 70, 200],
  ['northern red oak', 0.56, 75, 70, 200],
  ['white oak', 0.6, 72, 80, 250],
  ['sugar maple', 0.56, 68, 50, 200],
  ['white ash', 0.55, 45, 60, 200],
  ['yellow-poplar', 0.4, 95, 40, 150],
  ['eastern white pine', 0.34, 130, 60, 200],
];

/** Sugar maple to 20 % (`peck-1957-sugar-maple.test.ts`): gravity and green % MC as above, days. */
export const peck = { gravity: 0.56, greenPct: 68, fastest: 40, mean: 90, slowest: 205 };

/** Wood, gravity, green % MC as above; least and most days to 10 % indoors (`miceli-1982-hardwoods-at-home.test.ts`). */
export const miceli: readonly (readonly [string, number, number, number, number])[] = [
  ['silver maple', 0.44, 80, 90, 90],
  ['black cherry', 0.47, 60, 90, 90],
  ['white oak', 0.6, 72, 90, 150],
];
