import { describe, expect, test } from 'vitest';
import { missingForChanges, sizeChanges } from '../../../shared-core/wood/movement/size-changes.ts';
import { oneBuiltInSpecies } from '../renderer/species/a-species.ts';

const cherry = oneBuiltInSpecies('cherry-black');
const board = { thicknessMm: 25, widthMm: 232, sawing: 'quarter' as const };

describe('how a board changes its size', () => {
  test('black cherry, quartersawn, 232 mm from 8 to 11 %: 0.88 mm by either route', () => {
    // Wood Handbook (FPL-GTR-282), chapter 13: the worked examples of both formulas (from memory).
    const [width] = sizeChanges(board, cherry, 8, 11);
    expect(width).toMatchObject({ side: 'width', sawing: 'quarter', sizeMm: 232 });
    expect(width!.byRouteMm.shrinkage).toBeCloseTo(0.88, 2);
    expect(width!.byRouteMm.coefficient).toBeCloseTo(0.88, 2);
  });

  test('a flat-sawn board moves in its width as a quarter-sawn one of that size does in its thickness', () => {
    const square = { thicknessMm: 100, widthMm: 100 };
    const [flatWidth] = sizeChanges({ ...square, sawing: 'flat' }, cherry, 12, 8);
    const [, quarterThickness] = sizeChanges({ ...square, sawing: 'quarter' }, cherry, 12, 8);
    expect(flatWidth!.byRouteMm.shrinkage).toBeCloseTo(quarterThickness!.byRouteMm.shrinkage!, 12);
    expect(flatWidth!.byRouteMm.shrinkage).toBeLessThan(0);
  });

  test('of unknown sawing, both extremes are given, and rift is between them', () => {
    const [flat, quarter] = sizeChanges({ ...board, sawing: 'unknown' }, cherry, 12, 8);
    const [rift] = sizeChanges({ ...board, sawing: 'rift' }, cherry, 12, 8);
    expect([flat!.sawing, quarter!.sawing]).toEqual(['flat', 'quarter']);
    expect(rift!.byRouteMm.shrinkage!).toBeGreaterThan(flat!.byRouteMm.shrinkage!);
    expect(rift!.byRouteMm.shrinkage!).toBeLessThan(quarter!.byRouteMm.shrinkage!);
  });

  test('without a width, only the thickness', () => {
    expect(sizeChanges({ ...board, widthMm: null }, cherry, 12, 8).map((each) => each.side)).toEqual([
      'thickness',
    ]);
  });

  test.each([
    [18, 8],
    [12, 5],
  ])('from %d to %d %% the coefficients are not valid, and the page says so', (from, to) => {
    expect(sizeChanges(board, cherry, from, to).every((each) => each.byRouteMm.coefficient === null)).toBe(
      true,
    );
    expect(missingForChanges(board, cherry, from, to)).toEqual([
      { code: 'movement.coefficients-outside', facts: { validRange: { minPct: 6, maxPct: 14 } } },
    ]);
  });

  test('what is unknown of a species is null, never guessed, and named', () => {
    const unknown = { ...cherry, radialPct: null, changeCoefficient: null };
    expect(sizeChanges(board, unknown, 12, 8)[0]).toMatchObject({
      byRouteMm: { shrinkage: null, coefficient: null },
    });
    expect(missingForChanges(board, unknown, 12, 8).map(({ code }) => code)).toEqual([
      'movement.shrinkage-missing',
      'movement.coefficients-missing',
    ]);
    // With its shrinkage known, one of two routes is left.
    const noCoefficient = { ...cherry, changeCoefficient: null };
    expect(missingForChanges(board, noCoefficient, 12, 8).map(({ code }) => code)).toEqual([
      'movement.by-shrinkage-alone',
    ]);
    expect(missingForChanges(board, cherry, 12, 8)).toEqual([]);
  });
});
