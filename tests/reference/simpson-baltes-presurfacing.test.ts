/**
 * W. T. Simpson and R. C. Baltes, Accelerating Oak Air Drying by Presurfacing, Research Note FPL-0223; abstract looked
 * at: northern red and white oak 1/8 inch thinner dried faster, "the reduction in drying time depends on the method of
 * analyzing the drying curves, but is slightly less than 10 percent".
 *
 * Here red oak of 9/8 against 8/8 inch to 20 % in a yard near Madison (means, gravity, green moisture from memory),
 * every month of stacking, by the middle of the prior. The model makes more of the thickness: some 17 % on average.
 * Tolerance: a factor of two, since thickness, season and end point are not in the abstract.
 */
import { expect, test } from 'vitest';
import { boardModel, type DryingBoard, dryingPrior, runBoard } from '../../shared-core/wood/history-fit.ts';
import type { MonthlyAir } from '../../shared-core/wood/monthly-air.ts';

const dayMs = 86_400_000;
const rh = [0.75, 0.73, 0.71, 0.67, 0.67, 0.69, 0.72, 0.75, 0.76, 0.72, 0.76, 0.79];
const madison: MonthlyAir = [-8, -5, 1, 8, 14, 20, 22, 21, 16, 10, 2, -5].map((tempC, month) => ({
  tempC,
  rh: rh[month]!,
}));

function daysTo20(thicknessMm: number, month: number): number {
  const atMs = Date.UTC(2021, month, 1);
  const board: DryingBoard = {
    thicknessMm,
    basicSpecificGravity: 0.56,
    faces: ['open', 'open'],
    start: { atMs, mcPct: 75, logSd: 0.1, shellRatio: 1 },
    stays: [{ fromMs: atMs, air: madison }],
  };
  const daily = Array.from({ length: 400 }, (_, i) => atMs + i * dayMs);
  const { averagePct } = runBoard(
    boardModel(board),
    dryingPrior(board).mean,
    board.stays,
    atMs,
    daily.at(-1)!,
    null,
    daily,
    [],
  );
  return averagePct.findIndex((mc) => mc <= 20);
}

test('an eighth of an inch less takes about a tenth off the time', () => {
  const total = (thicknessMm: number): number =>
    madison.reduce((sum, _, month) => sum + daysTo20(thicknessMm, month), 0);
  const saved = 1 - total(25.4) / total(25.4 + 3.175);
  expect(saved).toBeGreaterThan(0.05);
  expect(saved).toBeLessThan(0.2);
});
