/**
 * Approximate days for 1-inch lumber, green, to air-dry to 20 %: R. C. Rietz and R. H. Page, Air Drying of Lumber,
 * USDA Agriculture Handbook 402 (1971); from memory, as in the project's reference notes.
 *
 * The table's two ends are for lumber stacked at the best and at the worst time of year; climate, pile and yard are
 * not stated. Here a yard in the northern United States (monthly means near those of Madison, Wisconsin; from
 * memory), every month of stacking, and the middle of the forecast's prior. The prior's two medians were chosen
 * once, for all woods together, so that this holds; so the test shows that one pair serves eight woods and twelve
 * months, not that the model knew. Tolerance: each end within a factor of two; the table itself spans three to four.
 */
import { expect, test } from 'vitest';
import { boardModel, type DryingBoard, dryingPrior, runBoard } from '../../shared-core/wood/history-fit.ts';
import type { MonthlyAir } from '../../shared-core/wood/monthly-air.ts';

const tempC = [-8, -5, 1, 8, 14, 20, 22, 21, 16, 10, 2, -5];
const rh = [0.75, 0.73, 0.71, 0.67, 0.67, 0.69, 0.72, 0.75, 0.76, 0.72, 0.76, 0.79];
const yard: MonthlyAir = tempC.map((t, month) => ({ tempC: t, rh: rh[month]! }));

const dayMs = 86_400_000;

/** Basic gravity and green MC (heartwood and sapwood mixed): Wood Handbook, Tables 5-3 and 4-1, from memory. */
test.each([
  ['black walnut', 0.51, 85, 70, 200],
  ['black cherry', 0.47, 60, 70, 200],
  ['northern red oak', 0.56, 75, 70, 200],
  ['white oak', 0.6, 72, 80, 250],
  ['sugar maple', 0.56, 68, 50, 200],
  ['white ash', 0.55, 45, 60, 200],
  ['yellow-poplar', 0.4, 95, 40, 150],
  ['eastern white pine', 0.34, 130, 60, 200],
])('%s, gravity %f, green at %f: about %i to %i days', (_, gravity, greenPct, shortest, longest) => {
  const days = tempC.map((_t, month) => {
    const atMs = Date.UTC(2021, month, 1);
    const board: DryingBoard = {
      // 1 inch nominal is sawn somewhat fuller.
      thicknessMm: 28,
      basicSpecificGravity: gravity,
      faces: ['open', 'open'],
      start: { atMs, mcPct: greenPct, logSd: 0.1, shellRatio: 1 },
      stays: [{ fromMs: atMs, air: yard }],
    };
    const daily = Array.from({ length: 500 }, (_d, i) => atMs + i * dayMs);
    const run = runBoard(
      boardModel(board),
      dryingPrior(board).mean,
      board.stays,
      atMs,
      daily.at(-1)!,
      null,
      daily,
      [],
    );
    return run.averagePct.findIndex((mc) => mc <= 20);
  });
  expect(Math.min(...days)).toBeGreaterThan(shortest / 2);
  expect(Math.min(...days)).toBeLessThan(shortest * 2);
  expect(Math.max(...days)).toBeGreaterThan(longest / 2);
  expect(Math.max(...days)).toBeLessThan(longest * 2);
});
