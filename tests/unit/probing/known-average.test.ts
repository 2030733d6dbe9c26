import { expect, test } from 'vitest';
import { knownAverage } from '../../../shared-core/probing/calls/known-average.ts';

const at = '2026-08-23T12:00:00.000Z';
const reliable = { at, averagePct: 14.9, isQuestionable: false };

test('a reliable average is known with the day on which it was read', () => {
  expect(knownAverage(reliable, 14.8)).toEqual({ averagePct: 14.9, readOn: at });
});

test('instead of a questionable average, or none, the forecast is known, for today', () => {
  const forToday = { averagePct: 16.8, readOn: null };
  expect(knownAverage({ ...reliable, isQuestionable: true }, 16.8)).toEqual(forToday);
  expect(knownAverage({ ...reliable, averagePct: null }, 16.8)).toEqual(forToday);
  expect(knownAverage(null, 16.8)).toEqual(forToday);
});

test('with neither, nothing is known', () => {
  expect(knownAverage({ ...reliable, isQuestionable: true }, null)).toBeNull();
});
