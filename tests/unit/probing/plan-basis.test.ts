/** What the spots of a board follow from besides its sizes. */
import { describe, expect, test } from 'vitest';
import {
  averageDepthMm,
  coreWaySchema,
  PAIRS,
  pinLengthMm,
  planBasisSchema,
  usualBasis,
  usualCoreWay,
} from '../../../shared-core/probing/readings/plan-basis.ts';

const pins = (lengthMm: number | null) => ({ lengthMm, insulated: false });

test('a basis is saved as it was made', () => {
  const ways = ['fresh-cut', 'fresh-rip', 'fresh-split', 'long-pins'] as const;
  expect(coreWaySchema.options).toEqual(ways);
  for (const faces of ['pairs', 'average', 'shell'] as const)
    for (const core of [null, ...ways]) {
      const basis = { faces, core, pins: pins(8) };
      expect(planBasisSchema.parse(basis)).toEqual(basis);
    }
  expect(PAIRS).toEqual({ faces: 'pairs', core: null, pins: null });
});

// 5/16 in, as on most hand-held meters: common practice, no source.
test('pins of unknown length count as 8 mm', () => {
  expect([pins(12), pins(null), null].map(pinLengthMm)).toEqual([12, 8, 8]);
});

// 0.45, a fifth and 30 mm: common practice, no source, but for the parabola that the first follows from.
test('pins that just reach the middle, or a fifth of a thin board, tell that', () => {
  const faces = (thicknessMm: number, lengthMm: number) => usualBasis(thicknessMm, pins(lengthMm)).faces;
  expect([faces(20, 9), faces(20, 8.9)]).toEqual(['pairs', 'average']);
  expect([faces(30, 6), faces(30, 5.9), faces(30.1, 8)]).toEqual(['average', 'shell', 'shell']);
});

// A fifth to a quarter, Dry Kiln Operator's Manual (from memory); a third: common practice, no source.
describe('pins read the average of a board of 30 mm', () => {
  test.each([
    [5, 5],
    [5.9, 5.9],
    [6, 6],
    [7.5, 7.5],
    [10, 10],
    [10.1, 7.5],
    [20, 7.5],
  ])('of %f mm, pushed in %f mm', (lengthMm, depthMm) => {
    expect(averageDepthMm(30, pins(lengthMm))).toBeCloseTo(depthMm, 10);
  });
});

test('firewood alone is split anyway', () => {
  expect(usualCoreWay({ cautions: ['firewood'] })).toBe('fresh-split');
  expect(usualCoreWay({ cautions: ['structural'] })).toBeNull();
});
