import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthOfAverageMm, fitProfile } from '../../../shared-core/wood/moisture/profile.ts';

const parabola = (depthMm: number, thicknessMm: number, shellPct: number, corePct: number) =>
  corePct - (corePct - shellPct) * (1 - (2 * depthMm) / thicknessMm) ** 2;

describe('a profile from readings at depths', () => {
  const thickness = fc.double({ min: 10, max: 150, noNaN: true });
  const mc = fc.double({ min: 5, max: 60, noNaN: true });
  const part = fc.double({ min: 0, max: 0.5, noNaN: true });

  test('finds any symmetric parabola from two depths, from either face', () => {
    fc.assert(
      fc.property(thickness, mc, mc, part, part, (mm, shellPct, corePct, p, q) => {
        fc.pre(Math.abs((1 - 2 * p) ** 2 - (1 - 2 * q) ** 2) > 0.06);
        const at = (depthMm: number) => ({ depthMm, mcPct: parabola(depthMm, mm, shellPct, corePct) });
        const profile = fitProfile([at(p * mm), at(mm - q * mm)], mm);
        expect(profile.shellPct!).toBeCloseTo(shellPct, 6);
        expect(profile.corePct!).toBeCloseTo(corePct, 6);
        expect(profile.averagePct).toBeCloseTo(shellPct + (2 / 3) * (corePct - shellPct), 6);
        expect(profile.averageStandardErrorPct).toBeNull();
      }),
    );
  });

  test('of many depths is the least squares one, with its standard error', () => {
    // Invented readings in a board of 40 mm. NumPy: lstsq on [1, u], u = (1 - 2 z / 40)²; the error is
    // sqrt(g' s² (X'X)⁻¹ g) with g = [1, 1/3] and s² on 4 degrees of freedom.
    const depths = [4, 4, 10, 20, 20, 36];
    const mcs = [11, 11.6, 13.2, 14.9, 14.3, 10.8];
    const profile = fitProfile(
      depths.map((depthMm, i) => ({ depthMm, mcPct: mcs[i]! })),
      40,
    );
    expect(profile.corePct!).toBeCloseTo(14.58870644, 8);
    expect(profile.shellPct!).toBeCloseTo(9.182144855046245, 10);
    expect(profile.averagePct).toBeCloseTo(12.78651924490222, 10);
    expect(profile.averageStandardErrorPct!).toBeCloseTo(0.14907915875013844, 10);
  });

  test('of one depth is their mean, and tells nothing of shell and core', () => {
    const profile = fitProfile(
      [
        { depthMm: 6, mcPct: 11 },
        { depthMm: 6, mcPct: 13 },
      ],
      25,
    );
    expect(profile).toMatchObject({ averagePct: 12, shellPct: null, corePct: null });
    // Two readings 2 apart: scatter √2, of the mean 1.
    expect(profile.averageStandardErrorPct!).toBeCloseTo(1, 12);
  });

  test('takes a scatter that is known instead of its own', () => {
    const four = [2, 2, 12.5, 12.5].map((depthMm) => ({ depthMm, mcPct: depthMm === 2 ? 10 : 14 }));
    expect(fitProfile(four, 25).averageStandardErrorPct).toBeCloseTo(0, 12);
    const known = fitProfile(four, 25, 0.8).averageStandardErrorPct!;
    expect(known).toBeGreaterThan(0.3);
    expect(known).toBeLessThan(0.8);
  });

  test('pins at the depth of the average read the average', () => {
    fc.assert(
      fc.property(thickness, mc, mc, (mm, shellPct, corePct) => {
        expect(parabola(depthOfAverageMm(mm), mm, shellPct, corePct)).toBeCloseTo(
          (shellPct + 2 * corePct) / 3,
          9,
        );
      }),
    );
  });

  test.each([
    [[], 25],
    [[{ depthMm: 26, mcPct: 12 }], 25],
    [[{ depthMm: -1, mcPct: 12 }], 25],
    [[{ depthMm: 5, mcPct: Number.NaN }], 25],
    [[{ depthMm: 5, mcPct: 12 }], 0],
  ])('%j in %f mm is refused', (readings, thicknessMm) => {
    expect(() => fitProfile(readings, thicknessMm)).toThrow(RangeError);
  });

  test('the depth of the average of no board is refused', () => {
    expect(() => depthOfAverageMm(0)).toThrow(RangeError);
  });
});
