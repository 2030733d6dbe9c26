/**
 * C. M. Miceli, H. N. Rosen and H. A. Spalt, Drying Small Quantities of Green Hardwoods at Home, Research Paper NC-228
 * (1982); abstract looked up: freshly sawn boards and disks, 4/4 and 8/4 thick, at household locations in southern
 * Illinois. "It took silver maple and black cherry 90 days and white oak from 90 to 150 days to dry to less than 10 %
 * moisture content at the indoor locations."
 *
 * Measured; one of the sources that the prior's medians were chosen on (`tests/bench/drying-prior.bench.ts`). Not in
 * the abstract, and added here: a house of 21 °C and 40 % relative humidity, basic gravities and green moistures
 * (`published-drying-days.ts`). The days are assumed to be those of the 4/4 boards; the abstract does not separate the two.
 */
import { expect, test } from 'vitest';
import { daysForecast, greenBoard, house, miceli } from './published-drying-days.ts';

const details = miceli.map(([name, species, least, most]) => {
  const { early, likely, late } = daysForecast(greenBoard(house, 0, species), 10);
  return { species: name, least, most, early, late, ratio: likely / Math.sqrt(least * most) };
});

test.each(details)('$species: $least to $most days are within 10 to 90 %', ({ least, most, early, late }) => {
  expect(early).toBeLessThanOrEqual(least);
  expect(late).toBeGreaterThanOrEqual(most);
});

// Ranges that hold everything would not do. Days longer or shorter by a factor of 1.6 would fail.
test('the likeliest days are 0.75 to 1.35 of the published ones, on average', () => {
  const logs = details.map(({ ratio }) => Math.log(ratio));
  const mean = Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length);
  expect(mean).toBeGreaterThan(0.75);
  expect(mean).toBeLessThan(1.35);
});
