import { expect, test } from 'vitest';
import { median, robustSpread } from '../../../shared-core/wood/maths/robust.ts';

test('the median is the middle value, or the mean of the two middle ones', () => {
  expect(median([3, 1, 2])).toBe(2);
  expect(median([4, 1, 2, 3])).toBe(2.5);
  expect(() => median([])).toThrow(RangeError);
});

// Worked by hand: median 3, deviations 2 1 0 1 97, their median 1, times 1 / Φ⁻¹(0.75) = 1 / 0.6745.
test('a single wild value does not move the robust spread', () => {
  expect(robustSpread([1, 2, 3, 4, 100])).toBeCloseTo(1 / 0.6745, 3);
});
