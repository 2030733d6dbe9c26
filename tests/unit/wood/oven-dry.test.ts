import { describe, expect, test } from 'vitest';
import { constantMass, ovenDryMcPct } from '../../../shared-core/wood/moisture/oven-dry.ts';

describe('moisture content by the oven', () => {
  test.each([
    [150, 100, 50],
    [112, 100, 12],
    [100, 100, 0],
  ])('%f g wet and %f g dry is %f %%', (wet, dry, mcPct) => {
    expect(ovenDryMcPct(wet, dry)).toBeCloseTo(mcPct, 12);
  });
  test.each([
    [100, 0],
    [100, -5],
    [99, 100],
    [Number.NaN, 100],
    [100, Number.NaN],
    [Number.POSITIVE_INFINITY, 100],
  ])('%f g wet and %f g dry is refused', (wet, dry) => {
    expect(() => ovenDryMcPct(wet, dry)).toThrow(RangeError);
  });
});

describe('dry is when the mass no longer changes', () => {
  test('ASTM D4442: at most twice the step of the balance in 3 h', () => {
    const until = (grams: number) => [
      { hours: 0, grams: 120 },
      { hours: 20, grams: 100.3 },
      { hours: 23, grams },
    ];
    expect(constantMass(until(100.28), 'ASTM D4442', 0.01)).toMatchObject({ dry: true, allowedGrams: 0.02 });
    expect(constantMass(until(100.27), 'ASTM D4442', 0.01).dry).toBe(false);
    expect(constantMass(until(100.27), 'ASTM D4442', 0.1).dry).toBe(true);
  });

  test('EN 13183-1: at most 0.1 % in 2 h', () => {
    const until = (grams: number) => [
      { hours: 0, grams: 1200 },
      { hours: 20, grams: 1001 },
      { hours: 22, grams },
    ];
    expect(constantMass(until(1000), 'EN 13183-1', 0.1).dry).toBe(true);
    expect(constantMass(until(999.9), 'EN 13183-1', 0.1).dry).toBe(false);
  });

  test('weighings that lie too near together say nothing yet', () => {
    const soon = [
      { hours: 0, grams: 120 },
      { hours: 1, grams: 120 },
    ];
    expect(constantMass(soon, 'EN 13183-1', 0.1)).toEqual({
      dry: false,
      changeGrams: null,
      allowedGrams: null,
    });
    expect(constantMass([], 'EN 13183-1', 0.1).dry).toBe(false);
  });

  test('between two that lie near together the earlier one counts', () => {
    const often = [
      { hours: 20, grams: 101 },
      { hours: 22.5, grams: 100.001 },
      { hours: 23, grams: 100 },
    ];
    // 1 g in 3 h, though the last half hour lost almost nothing.
    expect(constantMass(often, 'ASTM D4442', 0.01)).toMatchObject({ dry: false, changeGrams: 1 });
  });

  test('a loss over a long night counts for the interval only', () => {
    const night = [
      { hours: 10, grams: 100.08 },
      { hours: 22, grams: 100 },
    ];
    expect(constantMass(night, 'ASTM D4442', 0.01).changeGrams).toBeCloseTo(0.02, 10);
  });

  test('a piece that gained is not dry: it took up moisture', () => {
    const gained = [
      { hours: 20, grams: 100 },
      { hours: 23, grams: 100.5 },
    ];
    expect(constantMass(gained, 'ASTM D4442', 0.01).dry).toBe(false);
  });

  test('times that do not rise, and masses of nothing, are refused', () => {
    const twice = [
      { hours: 3, grams: 100 },
      { hours: 3, grams: 100 },
    ];
    expect(() => constantMass(twice, 'ASTM D4442', 0.01)).toThrow(/later/);
    expect(() => constantMass([{ hours: 0, grams: 0 }], 'ASTM D4442', 0.01)).toThrow(RangeError);
    expect(() => constantMass([], 'ASTM D4442', 0)).toThrow(RangeError);
  });
});
