import { expect, test } from 'vitest';
import { likelyInterval } from '../../../shared-core/probing/readings/likely-interval.ts';

// Normal deviate of 8 chances in 10, two-sided: 1.2816 (any table; from memory).
test('a reading is likely within 1.28 standard uncertainties, and never below 0%', () => {
  const { minPct, maxPct } = likelyInterval(12, 1);
  expect(minPct).toBeCloseTo(12 - 1.2816, 4);
  expect(maxPct).toBeCloseTo(12 + 1.2816, 4);
  expect(likelyInterval(1, 2).minPct).toBe(0);
  expect(likelyInterval(12, 2).maxPct).toBeCloseTo(12 + 2 * 1.2816, 4);
});
