import { expect, test } from 'vitest';
import { judge } from '../../../shared-core/probing/calls/judgement.ts';
import { outlookOf, outlookSchema } from '../../../shared-core/probing/calls/outlook.ts';
import { facts } from './a-judged-board.ts';

// From the 10 to the 90 % point of a normal distribution: 2 × 1.2816 standard deviations (any table; from memory).
test('what lists have of a forecast: its average today with one standard uncertainty', () => {
  const judgement = judge(facts());
  const outlook = outlookOf({ now: { average: { low: 11, median: 12, high: 13.5632 } } }, judgement);
  expect(outlook.averagePct).toBe(12);
  expect(outlook.standardUncertaintyPct).toBeCloseTo(1, 4);
  expect(outlookSchema.parse(outlook)).toEqual({ ...outlook, judgement });
});
