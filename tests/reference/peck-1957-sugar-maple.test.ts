/**
 * E. C. Peck, Air Drying and Sticker Staining of 4/4 Sugar Maple Flooring Stock in Upper Michigan, Forest Products
 * Laboratory Report 2086 (1957); summary looked up: stock 1 inch thick "was air dried in packages in Upper Michigan to a
 * moisture content of 20 percent in 40 to 205 days. The mean air-drying period was about 90 days."
 *
 * Measured; one of the sources that the prior's medians were chosen on (`tests/bench/drying-prior.bench.ts`). Not stated in
 * the summary, and added here: monthly means near those of Marquette, basic gravity and green moisture
 * (`published-drying-days.ts`). Each forecast is of a board that was never probed.
 */
import { expect, test } from 'vitest';
import { daysForecast, greenBoard, months, peck, upperMichigan } from './published-drying-days.ts';

const byMonth = months.map((month) => daysForecast(greenBoard(upperMichigan, month, peck.species), 20));
const over = (pick: (each: (typeof byMonth)[number]) => number): number[] => byMonth.map(pick);

test('the fastest stock of 40 days and the slowest of 205 are within the 10 to 90 % of some month of stacking', () => {
  for (const measured of [peck.fastest, peck.slowest]) {
    expect(byMonth.some(({ early, late }) => early <= measured && measured <= late)).toBe(true);
  }
});

// The whole range is no wider than it need be: its ends are within a factor of two of the measured ones.
test('the range over all months of stacking is not much wider than these', () => {
  expect(Math.min(...over(({ early }) => early))).toBeGreaterThan(peck.fastest / 2);
  expect(Math.max(...over(({ late }) => late))).toBeLessThan(peck.slowest * 2);
});

// The summary gives no months. Here all twelve have equal weight, which is harder for us than a yard that stacks little
// in winter. Days longer or shorter by a factor of 1.6 would fail.
test('the mean of about 90 days: the likeliest days are 0.9 to 1.6 of it', () => {
  const likely = over(({ likely: days }) => days);
  const ratio = likely.reduce((sum, days) => sum + days, 0) / likely.length / peck.mean;
  expect(ratio).toBeGreaterThan(0.9);
  expect(ratio).toBeLessThan(1.6);
});
