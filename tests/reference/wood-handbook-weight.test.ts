import { describe, expect, test } from 'vitest';
import { mostWaterPct } from '../../shared-core/wood/moisture/most-water.ts';
import { densityKgM3 } from '../../shared-core/wood/movement/volume.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';

describe('Wood Handbook, eq. 4-3: the most water that wood holds', () => {
  // By hand: 100 (1.54 - G) / (1.54 G).
  test.each([
    [0.3, 268],
    [0.4, 185],
    [0.5, 135],
    [0.6, 102],
    [0.7, 78],
  ])('basic specific gravity %f: %f %%', (gravity, mostPct) => {
    expect(Math.abs(mostWaterPct(gravity) - mostPct)).toBeLessThan(0.5);
  });
  test.each([0, 0.04, 1.5, Number.NaN])('is refused for %f', (gravity) => {
    expect(() => mostWaterPct(gravity)).toThrow(RangeError);
  });
});

describe('Wood Handbook (FPL-GTR-190), Table 5-3b: specific gravity green and at 12 % (page looked up)', () => {
  // Printed to 0.01, green and 12 % often from different samples: within 0.021.
  test.each([
    ['pine-ponderosa', 0.38, 0.4],
    ['pine-red', 0.41, 0.46],
    ['pine-shortleaf', 0.47, 0.51],
    ['pine-slash', 0.54, 0.59],
    ['pine-sugar', 0.34, 0.36],
    ['pine-virginia', 0.45, 0.48],
    // This page has 0.35; the U.S. Forest Service's species file and Table 5-3a have 0.36.
    ['pine-western-white', 0.36, 0.38],
    ['redwood-old-growth', 0.38, 0.4],
    ['redwood-young-growth', 0.34, 0.35],
  ])('%s: %f green, %f at 12 %%', (id, green, at12) => {
    const species = builtInSpecies.find((each) => each.id === id)!;
    expect(species.basicSpecificGravity).toBe(green);
    expect(Math.abs(densityKgM3(species, 12)! / 1120 - at12)).toBeLessThan(0.021);
  });
});

describe('Wood Handbook, chapter 4: density with its water (by hand from the formula)', () => {
  test.each([
    // Green: 600 · 1.30
    [0.6, 30, 780],
    // 500 · 1.12 / (1 - 0.265 · 0.6 · 0.5)
    [0.5, 12, 608.4],
    // Oven-dry: 400 / (1 - 0.265 · 0.4)
    [0.4, 0, 447.4],
    // Above fiber saturation only water is added: 400 · 1.8
    [0.4, 80, 720],
  ])('basic specific gravity %f at %f %%: %f kg/m³', (basicSpecificGravity, mcPct, kgM3) => {
    expect(densityKgM3({ basicSpecificGravity, volumetricPct: null }, mcPct)).toBeCloseTo(kgM3, 1);
  });
});
