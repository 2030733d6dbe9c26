import { expect, test } from 'vitest';
import { shownPoints } from '../../../shared-core/wood/moisture/shown-points.ts';

test.each([
  [13.34, 12.66, 0.6],
  [9.75, 11.84, -2],
  [7, 7.04, 0],
])('%f above %f is %f points, as both are shown', (pct, fromPct, points) => {
  expect(shownPoints(pct, fromPct)).toBe(points);
});
