import { expect, test } from 'vitest';
import { readAtUnknown, toldDepths } from '../../../shared-core/probing/readings/told-depths.ts';

const found = { averagePct: 12, shellPct: 10, corePct: 13 };
const unknown = { ...found, isDepthUnknown: true } as const;

test('shell and core are shown where their depths are known, and only there', () => {
  expect(toldDepths(found)).toEqual({ shellPct: 10, corePct: 13 });
  expect(toldDepths(unknown)).toEqual({ shellPct: null, corePct: null });
});

test('readings of unknown depth are shown as one value: their mean at one planned depth, else their average', () => {
  expect(readAtUnknown(found)).toBeNull();
  expect(readAtUnknown(unknown)).toBe(12);
  expect(readAtUnknown({ ...unknown, corePct: null })).toBe(10);
  expect(readAtUnknown({ ...unknown, shellPct: null, corePct: null })).toBe(12);
  expect(readAtUnknown({ averagePct: null, shellPct: null, corePct: null, isDepthUnknown: true })).toBeNull();
});
