import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  acrossBoard,
  cupMm,
  isShrinkage,
  RING_ANGLE_DEG,
  shrunkPct,
  sizeChangeByCoefficientMm,
  sizeChangeMm,
} from '../../../shared-core/wood/movement/shrinkage.ts';

const mc = fc.double({ min: 0, max: 60, noNaN: true });
const shrinkage = fc.double({ min: 1, max: 13, noNaN: true });
const size = fc.double({ min: 10, max: 600, noNaN: true });

describe('the size of a board', () => {
  test('comes back when its moisture does', () => {
    fc.assert(
      fc.property(size, mc, mc, shrinkage, (mm, from, to, s) => {
        const there = mm + sizeChangeMm(mm, from, to, s);
        expect(there + sizeChangeMm(there, to, from, s)).toBeCloseTo(mm, 9);
      }),
    );
  });

  test('does not depend on the way', () => {
    fc.assert(
      fc.property(size, mc, mc, mc, shrinkage, (mm, from, by, to, s) => {
        const halfway = mm + sizeChangeMm(mm, from, by, s);
        const twoSteps = halfway + sizeChangeMm(halfway, by, to, s);
        expect(twoSteps).toBeCloseTo(mm + sizeChangeMm(mm, from, to, s), 9);
      }),
    );
  });

  test('from green is what eq. 4-9 says', () => {
    fc.assert(
      fc.property(size, mc, shrinkage, (mm, to, s) => {
        expect(sizeChangeMm(mm, 80, to, s)).toBeCloseTo((-mm * shrunkPct(s, to)) / 100, 9);
      }),
    );
  });

  test('does not change above fiber saturation, and shrinks below it', () => {
    expect(sizeChangeMm(200, 90, 30, 8)).toBeCloseTo(0, 12);
    expect(sizeChangeMm(200, 90, 29, 8)).toBeLessThan(0);
  });

  test.each([
    [5.9, 10],
    [10, 14.1],
  ])('by coefficient is refused from %f to %f %%', (from, to) => {
    expect(() => sizeChangeByCoefficientMm(200, from, to, 0.003)).toThrow('6 to 14 %');
  });

  test.each([
    [null, false],
    [0, false],
    [4, true],
    [50, false],
    [Number.NaN, false],
  ])('a shrinkage of %s %%: whether the formulas hold is %s', (pct, holds) => {
    expect(isShrinkage(pct)).toBe(holds);
  });

  test('by a coefficient of 0 is none', () => {
    expect(sizeChangeByCoefficientMm(200, 8, 12, 0)).toBe(0);
  });

  test('of nothing, with no shrinkage or an impossible one, is refused', () => {
    expect(() => sizeChangeMm(0, 10, 8, 8)).toThrow(RangeError);
    expect(() => sizeChangeMm(100, 10, 8, 0)).toThrow(RangeError);
    expect(() => sizeChangeMm(100, 10, 8, 50)).toThrow(RangeError);
    expect(() => sizeChangeMm(100, -1, 8, 8)).toThrow(RangeError);
    expect(() => sizeChangeByCoefficientMm(0, 8, 10, 0.003)).toThrow(RangeError);
    expect(() => sizeChangeByCoefficientMm(100, 8, 10, 0.03)).toThrow(RangeError);
  });
});

describe('how the board is sawn', () => {
  test.each([
    ['flat', 8, 4],
    ['rift', 6, 6],
    ['quarter', 4, 8],
  ] as const)(
    '%s-sawn, radial 4 and tangential 8: %f across the face, %f through it',
    (sawing, width, thickness) => {
      const across = acrossBoard(4, 8, RING_ANGLE_DEG[sawing]);
      expect(across.width).toBeCloseTo(width, 12);
      expect(across.thickness).toBeCloseTo(thickness, 12);
    },
  );

  test('the area lost is the same at any angle', () => {
    fc.assert(
      fc.property(shrinkage, shrinkage, fc.double({ min: 0, max: 90, noNaN: true }), (r, t, angle) => {
        const { width, thickness } = acrossBoard(r, t, angle);
        expect(width + thickness).toBeCloseTo(r + t, 10);
      }),
    );
  });

  test.each([-1, 91, Number.NaN])('%f degrees are refused', (angle) => {
    expect(() => acrossBoard(4, 8, angle)).toThrow(RangeError);
  });
});

describe('cup', () => {
  const oak = { radialPct: 4.0, tangentialPct: 8.6 };
  const board = { widthMm: 250, pithDistanceMm: 100, offCenterMm: 0 };

  test('of a flat-sawn board is hollow on the bark side when it dries, on the pith side when it swells', () => {
    expect(cupMm(board, oak, 30, 8)).toBeGreaterThan(0);
    expect(cupMm(board, oak, 8, 14)).toBeLessThan(0);
  });

  test('of a shallow arc is near (t - r) width² / (4 distance)', () => {
    // 30 to 8 %: t - r = (8.6 - 4.0) · 22 / 30 % = 3.37 %; 0.0337 · 100² / (4 · 400) = 0.211 mm.
    const shallow = { widthMm: 100, pithDistanceMm: 400, offCenterMm: 0 };
    expect(Math.abs(cupMm(shallow, oak, 30, 8) - 0.211)).toBeLessThan(0.01);
  });

  test('is none where both directions shrink alike, or nothing dries', () => {
    expect(cupMm(board, { radialPct: 6, tangentialPct: 6 }, 30, 8)).toBeCloseTo(0, 10);
    expect(cupMm(board, oak, 60, 31)).toBeCloseTo(0, 10);
  });

  test('is less in a board from further out, and in a narrower one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 300, noNaN: true }),
        fc.double({ min: 100, max: 400, noNaN: true }),
        (w, d) => {
          const at = (widthMm: number, pithDistanceMm: number) =>
            cupMm({ widthMm, pithDistanceMm, offCenterMm: 0 }, oak, 30, 8);
          expect(at(w, d * 1.2)).toBeLessThan(at(w, d));
          expect(at(w * 0.8, d)).toBeLessThan(at(w, d));
        },
      ),
    );
  });

  test('is far less in a quarter-sawn board of the same log, and the same to the left as to the right', () => {
    const quarter = (offCenterMm: number) =>
      cupMm({ widthMm: 150, pithDistanceMm: 5, offCenterMm }, oak, 30, 8);
    expect(Math.abs(quarter(200))).toBeLessThan(0.2 * cupMm({ ...board, widthMm: 150 }, oak, 30, 8));
    expect(quarter(-200)).toBeCloseTo(quarter(200), 10);
  });

  test('of an impossible board is refused', () => {
    expect(() => cupMm({ ...board, pithDistanceMm: 0 }, oak, 30, 8)).toThrow(RangeError);
    expect(() => cupMm({ ...board, widthMm: -1 }, oak, 30, 8)).toThrow(RangeError);
  });
});
