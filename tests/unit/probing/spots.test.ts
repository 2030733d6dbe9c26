import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { endClearanceMm, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { saidLongLength } from '../../../shared-core/units/said.ts';

describe('the plan of spots for a 3 m board, 27 mm thick', () => {
  const { plan, remark } = planSpots({ lengthMm: 3000, thicknessMm: 27 });

  test('reads in the order a person walks: shell, then deeper to the core, then on to the next place', () => {
    expect(plan.map((each) => each.label)).toEqual([
      `Shell, ${saidLongLength(1000)} from the left end`,
      `Core, ${saidLongLength(1000)} from the left end`,
      `Shell, ${saidLongLength(1000)} from the right end`,
      `Core, ${saidLongLength(1000)} from the right end`,
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
    expect(plan.map((each) => each.label)).toEqual([
      `Shell, in the middle, ${saidLongLength(250)} from either end`,
      `Core, in the middle, ${saidLongLength(250)} from either end`,
    ]);
    expect(remark).toContain(`only ${saidLongLength(500)} long`);
  });

  test('a 70 cm board has room for one place at 30 cm from both ends', () => {
    const { plan, remark } = planSpots({ lengthMm: 700, thicknessMm: 27 });
    expect(plan).toHaveLength(2);
    expect(remark).toContain('room for one place');
  });

  test('an 80 cm board has both places moved in to 30 cm', () => {
    const { plan } = planSpots({ lengthMm: 800, thicknessMm: 27 });
    expect(plan.map((each) => each.spot.fromEndMm)).toEqual([300, 300, 300, 300]);
  });
});

test('a board of unknown length still has its places, with the distance left open and the caution said', () => {
  const { plan, remark } = planSpots({ lengthMm: null, thicknessMm: 27 });
  expect(plan.map((each) => each.label)).toEqual([
    'Shell, 33 % of the way along from the left end',
    'Core, 33 % of the way along from the left end',
    'Shell, 67 % of the way along from the left end',
    'Core, 67 % of the way along from the left end',
  ]);
  expect(plan.every((each) => each.spot.fromEndMm === null)).toBe(true);
  expect(remark).toContain(saidLongLength(300));
});

// EN 13183-2, resistance method: 0.3 m from an end (from memory).
test('no planned spot is nearer to an end than 300 mm where the length allows, and none is doubted for it', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 50, max: 20_000 }),
      fc.integer({ min: 3, max: 400 }),
      fc.integer({ min: 1, max: 10 }),
      (lengthMm, thicknessMm, placesAlong) => {
        const { plan } = planSpots({ lengthMm, thicknessMm, placesAlong });
        const places = plan.length / 2;
        expect(places).toBeGreaterThanOrEqual(1);
        expect(places).toBeLessThanOrEqual(placesAlong);
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
  [{ lengthMm: 3000, thicknessMm: 27, placesAlong: 0 }, /places/],
  [{ lengthMm: 3000, thicknessMm: 27, placesAlong: 2.5 }, /places/],
])('refuses %j', (board, complaint) => {
  expect(() => planSpots(board)).toThrow(complaint);
});
