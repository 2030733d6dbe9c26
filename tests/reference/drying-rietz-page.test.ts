/**
 * Approximate days for 1-inch lumber, green, to air-dry to 20 %: R. C. Rietz and R. H. Page, Air Drying of Lumber,
 * USDA Agriculture Handbook 402 (1971); from memory, as in the project's reference notes.
 *
 * The table's two ends are for lumber stacked at the best and at the worst time of year; climate, stack and yard are
 * not stated. Here a yard in the northern United States (Madison), every month of stacking, and the middle of the prior,
 * whose medians by class were chosen on this and other sources (`tests/bench/drying-prior.bench.ts`). Of a similar table
 * the Forest Products Laboratory writes that its periods "apply particularly to hand-stacked piles varying in width from 6
 * to 16 feet" (Technical Note 233, 1960; looked up, without its table).
 */
import { expect, test } from 'vitest';
import { daysUntil, greenBoard, madison, months, rietzPage } from './published-drying-days.ts';

const table = rietzPage.map(([name, species, shortest, longest]) => {
  const days = months.map((month) => daysUntil(greenBoard(madison, month, species), 20));
  return { species: name, fastest: Math.min(...days) / shortest, slowest: Math.max(...days) / longest };
});

// The table itself spans a factor of three to four for each species.
test.each(table)('$species: each end within a factor of 2.5', ({ fastest, slowest }) => {
  for (const ratio of [fastest, slowest]) {
    expect(ratio).toBeGreaterThan(1 / 2.5);
    expect(ratio).toBeLessThan(2.5);
  }
});

// Days longer or shorter by a factor of 1.6 would fail.
test('over all species, days are 0.6 to 1.1 of the table’s', () => {
  const logs = table.flatMap(({ fastest, slowest }) => [Math.log(fastest), Math.log(slowest)]);
  const ratio = Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
  expect(ratio).toBeGreaterThan(0.6);
  expect(ratio).toBeLessThan(1.1);
});
