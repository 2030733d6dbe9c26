import { expect, test } from 'vitest';
import { mostWaterPct } from '../../../shared-core/wood/moisture/most-water.ts';

// Wood Handbook (2021), eq. 4-3, 100 (1.54 - G) / 1.54 G, by hand.
test.each([
  [0.3, 268],
  [0.56, 114],
  [0.7, 78],
])('wood of specific gravity %f holds at most %f %%', (gravity, pct) => {
  expect(Math.round(mostWaterPct(gravity))).toBe(pct);
});

test.each([0.049, 1.41, Number.NaN])('no wood has a specific gravity of %f', (gravity) => {
  expect(() => mostWaterPct(gravity)).toThrow(/Basic specific gravity must be 0.05 to 1.4/);
});

test('the lightest and the heaviest wood have one', () => {
  expect(mostWaterPct(0.05)).toBeGreaterThan(1900);
  expect(mostWaterPct(1.4)).toBeLessThan(7);
});
