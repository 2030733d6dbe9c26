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

  // The standard error of a mean of n values is s / √n (any textbook): 40 and 44 % scatter by 2.83, of two 2 %.
  test('with two sections tells how far their mean may be off', () => {
    const sections = [140, 144].map((wetGrams) => ({ wetGrams, dryGrams: 100 }));
    expect(sampleBoard(10, sections).standardErrorPct).toBeCloseTo(2, 10);
    expect(sampleBoard(10, [...sections, { wetGrams: 142, dryGrams: 100 }]).standardErrorPct).toBeCloseTo(
      2 / Math.sqrt(3),
      10,
    );
  });

  test('may be just dry', () => {
    expect(massAtMcKg(5, 0)).toBe(5);
  });

  test('without a section, or without mass, is refused', () => {
    expect(() => sampleBoard(10, [])).toThrow(/section/);
    expect(() => sampleBoard(0, [{ wetGrams: 150, dryGrams: 100 }])).toThrow(
      /mass must be above 0 kg, not 0/,
    );
    expect(() => mcFromMassPct(0, 5)).toThrow(/Both masses/);
    expect(() => mcFromMassPct(5, 0)).toThrow(/Both masses/);
    expect(() => massAtMcKg(5, -1)).toThrow(/MC not below 0 %/);
    expect(() => massAtMcKg(0, 10)).toThrow(/MC not below 0 %/);
  });
});
