/**
 * W. T. Simpson and R. C. Baltes, Accelerating Oak Air Drying by Presurfacing, Research Note FPL-0223; abstract looked
 * up: northern red and white oak 1/8 inch thinner dried faster, "the reduction in drying time depends on the method of
 * analyzing the drying curves, but is slightly less than 10 percent".
 *
 * Here red oak of 9/8 against 8/8 inch to 20 % in a yard near Madison (means, gravity, green moisture from memory),
 * every month of stacking, by the middle of the prior. In the model the thickness matters more: about 16 % on average.
 * Tolerance: a factor of two, since thickness, season and end point are not in the abstract.
 */
import { expect, test } from 'vitest';
import { daysUntil, greenBoard, madison, months } from './published-drying-days.ts';

test('an eighth of an inch less takes about a tenth off the time', () => {
  const total = (thicknessMm: number): number =>
    months.reduce((sum, month) => {
      const board = greenBoard(madison, month, ['upland-oak', 0.56, 75], thicknessMm);
      return sum + daysUntil(board, 20);
    }, 0);
  const saved = 1 - total(25.4) / total(25.4 + 3.175);
  expect(saved).toBeGreaterThan(0.05);
  expect(saved).toBeLessThan(0.2);
});
