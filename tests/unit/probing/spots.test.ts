import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endClearanceMm, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { message } from '../../../shared-core/words/message.ts';

describe('the plan of spots for a 3 m board, 27 mm thick', () => {
  const { plan, remark } = planSpots({ lengthMm: 3000, thicknessMm: 27 });

  test('is in the order a person walks: shell, then deeper to the core, then on along the board', () => {
    const left = message('spot.from-left', { fromDistanceMm: 1000 });
    const right = message('spot.from-right', { fromDistanceMm: 1000 });
    expect(plan.map(({ along, spot }) => [spot.depth, along])).toEqual([
      ['shell', left],
      ['core', left],
      ['shell', right],
      ['core', right],
    ]);
    expect(remark).toBeNull();
  });

  test('puts the shell pins just under the face and the core pins at mid-thickness', () => {
    expect(plan.map((each) => each.spot.depthMm)).toEqual([2.5, 13.5, 2.5, 13.5]);
  });
});

describe('short boards', () => {
  test('a 50 cm board is probed in its middle, and the plan says so', () => {
    const { plan, remark } = planSpots({ lengthMm: 500, thicknessMm: 52 });
    const middle = message('spot.in-middle', { fromDistanceMm: 250 });
    expect(plan.map(({ along, spot }) => [spot.depth, along])).toEqual([
      ['shell', middle],
      ['core', middle],
    ]);
    expect(remark).toEqual(message('spot-plan.short-board', { boardLengthMm: 500, clearDistanceMm: 300 }));
  });

  test('a 70 cm board has room for one pair of spots at 30 cm from both ends', () => {
    const { plan, remark } = planSpots({ lengthMm: 700, thicknessMm: 27 });
    expect(plan).toHaveLength(2);
    expect(remark).toEqual(
      message('spot-plan.fewer', { boardLengthMm: 700, clearDistanceMm: 300, count: 1, pairs: 2 }),
    );
  });

  test('an 80 cm board has both pairs of spots moved in to 30 cm', () => {
    const { plan } = planSpots({ lengthMm: 800, thicknessMm: 27 });
    expect(plan.map((each) => each.spot.fromEndMm)).toEqual([300, 300, 300, 300]);
  });
});

test('a board of unknown length still has its spots, with the distance left open and a caution', () => {
  const { plan, remark } = planSpots({ lengthMm: null, thicknessMm: 27 });
  const third = message('spot.third-from-left');
  const twoThirds = message('spot.third-from-right');
  expect(plan.map(({ along, spot }) => [spot.depth, along])).toEqual([
    ['shell', third],
    ['core', third],
    ['shell', twoThirds],
    ['core', twoThirds],
  ]);
  expect(plan.every((each) => each.spot.fromEndMm === null)).toBe(true);
  expect(remark).toEqual(message('spot-plan.length-unknown', { clearDistanceMm: 300 }));
});

// EN 13183-2, resistance method: 0.3 m from an end (from memory).
test('no planned spot is nearer to an end than 300 mm where the length allows, and none is questionable for it', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 50, max: 20_000 }),
      fc.integer({ min: 3, max: 400 }),
      fc.integer({ min: 1, max: 10 }),
      (lengthMm, thicknessMm, pairs) => {
        const { plan } = planSpots({ lengthMm, thicknessMm, pairs });
        expect(plan.length / 2).toBeGreaterThanOrEqual(1);
        expect(plan.length / 2).toBeLessThanOrEqual(pairs);
        for (const { spot } of plan) {
          expect(spot.fromEndMm).toBeGreaterThanOrEqual(lengthMm >= 600 ? 300 : lengthMm / 2);
          expect(spot.fromEndMm).toBeGreaterThanOrEqual(endClearanceMm(lengthMm));
          expect(spot.depthMm).toBeGreaterThan(0);
          expect(spot.depthMm).toBeLessThanOrEqual(thicknessMm / 2);
        }
        const shell = plan[0]!.spot.depthMm!;
        expect(shell).toBeLessThan(plan[1]!.spot.depthMm!);
      },
    ),
  );
});

test.each([
  [{ lengthMm: 3000, thicknessMm: 0 }, /thickness/],
  [{ lengthMm: -1, thicknessMm: 27 }, /length/],
  [{ lengthMm: Number.NaN, thicknessMm: 27 }, /length/],
  [{ lengthMm: 3000, thicknessMm: 27, pairs: 0 }, /pairs/],
  [{ lengthMm: 3000, thicknessMm: 27, pairs: 2.5 }, /pairs/],
])('refuses %j', (board, complaint) => {
  expect(() => planSpots(board)).toThrow(complaint);
});
