import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { massAtMcKg, mcFromMassPct, sampleBoard } from '../../../shared-core/wood/moisture/sample-board.ts';

describe('a board tracked by its mass', () => {
  const kg = fc.double({ min: 0.5, max: 60, noNaN: true });
  const mc = fc.double({ min: 1, max: 150, noNaN: true });

  test('of the mass that it had when its sections were cut has the moisture of the sections', () => {
    fc.assert(
      fc.property(kg, mc, mc, (boardKg, first, second) => {
        const board = sampleBoard(boardKg, [
          { wetGrams: 100 + first, dryGrams: 100 },
          { wetGrams: 50 * (1 + second / 100), dryGrams: 50 },
        ]);
        expect(mcFromMassPct(boardKg, board.ovenDryKg)).toBeCloseTo((first + second) / 2, 8);
      }),
    );
  });

  test('mass and moisture turn into each other', () => {
    fc.assert(
      fc.property(kg, mc, (dryKg, mcPct) => {
        expect(mcFromMassPct(massAtMcKg(dryKg, mcPct), dryKg)).toBeCloseTo(mcPct, 8);
      }),
    );
  });

  test('with one section tells nothing of its error', () => {
    expect(sampleBoard(10, [{ wetGrams: 150, dryGrams: 100 }])).toMatchObject({
      mcWhenCutPct: 50,
      standardErrorPct: null,
    });
  });

  test('without a section, or without mass, is refused', () => {
    expect(() => sampleBoard(10, [])).toThrow(/section/);
    expect(() => sampleBoard(0, [{ wetGrams: 150, dryGrams: 100 }])).toThrow(RangeError);
    expect(() => mcFromMassPct(0, 5)).toThrow(RangeError);
    expect(() => massAtMcKg(5, -1)).toThrow(RangeError);
  });
});
