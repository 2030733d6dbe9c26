import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { M3_PER_BOARD_FOOT } from '../../../shared-core/measures.ts';
import {
  boardFeetTallied,
  boardMassKg,
  cubicMetersTallied,
  densityKgM3,
  surfaceMeasureFt2,
  volumeM3,
} from '../../../shared-core/wood/movement/volume.ts';

const inches = (thickness: number, width: number, lengthFt: number) => ({
  thicknessMm: thickness * 25.4,
  widthMm: width * 25.4,
  lengthMm: lengthFt * 304.8,
});

describe('board feet', () => {
  test('one is 144 cubic inches: 0.002359737 m³ (NIST Handbook 44, from memory)', () => {
    expect(M3_PER_BOARD_FOOT).toBeCloseTo(0.002359737, 9);
    expect(volumeM3(inches(1, 12, 1))).toBeCloseTo(M3_PER_BOARD_FOOT, 12);
  });

  // By hand from the rules: width x whole feet / 12 to the nearest foot, times the thickness.
  test.each([
    [1, 6.5, 8, 4], // 4.33
    [1, 8, 10, 7], // 6.67
    [2, 8, 10, 14], // 8/4
    [1.25, 9, 12, 11.25], // 5/4, surface 9
    [0.75, 12, 8, 8], // thinner than an inch counts as an inch
    [1, 12, 8.9, 8], // odd inches of length are dropped
    [1, 9, 10, 8], // 7.5: to the even foot
    [1, 6, 9, 4], // 4.5: to the even foot
    [1.125, 12, 8, 8], // 1 1/8 in drops to 4/4
  ])('%f in x %f in x %f ft: %f', (thickness, width, lengthFt, boardFeet) => {
    expect(boardFeetTallied(inches(thickness, width, lengthFt))).toBe(boardFeet);
  });

  test('a tally is within half a foot of surface of the exact measure, for whole feet and inches', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 30 }), fc.integer({ min: 4, max: 16 }), (width, feet) => {
        expect(Math.abs(surfaceMeasureFt2(inches(1, width, feet)) - (width * feet) / 12)).toBeLessThanOrEqual(
          0.5,
        );
      }),
    );
  });
});

describe('cubic meters', () => {
  // By hand: whole centimeters of width, tenths of a meter of length, to 0.001 m³ (common practice, no source).
  test.each([
    [52, 318, 3070, 0.048], // 0.052 · 0.31 · 3.0
    [27, 200, 2500, 0.014], // 0.0135
    [80, 400, 4000, 0.128],
  ])('%f x %f x %f mm: %f', (thicknessMm, widthMm, lengthMm, m3) => {
    expect(cubicMetersTallied({ thicknessMm, widthMm, lengthMm })).toBe(m3);
  });
});

describe('mass', () => {
  const oak = { basicSpecificGravity: 0.56, volumetricPct: 13.7 };
  const size = { thicknessMm: 52, widthMm: 300, lengthMm: 3000 };

  test('of a species whose volumetric shrinkage is none: as where it is not known', () => {
    const mass = (volumetricPct: number | null) => boardMassKg(size, { ...oak, volumetricPct }, 12, 8);
    expect(mass(0)).toEqual(mass(null));
  });

  test('of a green board and of the same board at its target', () => {
    // By hand: green volume 0.0468 m³ holds 0.56 · 46.8 = 26.208 kg of wood; with 70 % water 44.55, with 8 % 28.30.
    const mass = boardMassKg(size, oak, 70, 8)!;
    expect(mass.nowKg).toBeCloseTo(44.554, 3);
    expect(mass.targetKg).toBeCloseTo(28.305, 3);
  });

  test('loses only water: the oven-dry mass is the same at any moisture', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (now, target) => {
          const { nowKg, targetKg } = boardMassKg(size, oak, now, target)!;
          expect(targetKg / (1 + target / 100)).toBeCloseTo(nowKg / (1 + now / 100), 9);
        },
      ),
    );
  });

  test('per volume rises with water', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 90, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (mcPct, more) => {
          expect(densityKgM3(oak, mcPct + more)!).toBeGreaterThan(densityKgM3(oak, mcPct)!);
        },
      ),
    );
  });

  test('is not known where the specific gravity is not, and not guessed', () => {
    expect(boardMassKg(size, { basicSpecificGravity: null, volumetricPct: null }, 20, 8)).toBeNull();
  });

  test('with more water than the species can hold is refused', () => {
    expect(() => boardMassKg(size, oak, 20, 150)).toThrow(/holds 0 to 114 %/);
    expect(() => volumeM3({ ...size, widthMm: 0 })).toThrow(RangeError);
  });
});
