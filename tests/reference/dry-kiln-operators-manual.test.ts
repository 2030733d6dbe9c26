import { describe, expect, test } from 'vitest';
import { profilePosterior } from '../../shared-core/probing/readings/profile-posterior.ts';
import { ovenDryMcPct } from '../../shared-core/wood/moisture/oven-dry.ts';
import { massAtMcKg, mcFromMassPct, sampleBoard } from '../../shared-core/wood/moisture/sample-board.ts';

// Dry Kiln Operator's Manual (USDA Agriculture Handbook 188), chapter 6: the worked sample board (from memory).
describe("Dry Kiln Operator's Manual: a sample board with two moisture sections", () => {
  const sections = [
    { wetGrams: 98.55, dryGrams: 59.2 },
    { wetGrams: 86.92, dryGrams: 55.02 },
  ];
  test('the sections have 66.5 and 58.0 %', () => {
    expect(ovenDryMcPct(98.55, 59.2)).toBeCloseTo(66.5, 1);
    expect(ovenDryMcPct(86.92, 55.02)).toBeCloseTo(58.0, 1);
  });
  test('the board of 4.46 kg has 62.2 %, and would weigh 2.75 kg oven-dry', () => {
    const board = sampleBoard(4.46, sections);
    expect(board.mcWhenCutPct).toBeCloseTo(62.2, 1);
    expect(board.ovenDryKg).toBeCloseTo(2.75, 2);
    // By hand: the two differ by 8.491, so the mean is off by half of that, one sigma.
    expect(board.standardErrorPct).toBeCloseTo(4.245, 2);
  });
  test('when it weighs 4.14 kg it has 50.5 %', () => {
    expect(mcFromMassPct(4.14, 2.75)).toBeCloseTo(50.5, 1);
    expect(massAtMcKg(2.75, mcFromMassPct(4.14, 2.75))).toBeCloseTo(4.14, 10);
  });
});

describe("Dry Kiln Operator's Manual: pins at one fifth to one quarter of the thickness read the average (from memory)", () => {
  // A parabola from 10 % at the faces of a 30 mm board to 16 % in its middle averages 10 + 2/3 · 6 = 14 % (arithmetic).
  const at = (depthMm: number) => ({
    depthMm,
    isOnlyPlanned: false,
    mcPct: 16 - 6 * (1 - (2 * depthMm) / 30) ** 2,
  });
  const of = (depthsMm: number[]) =>
    profilePosterior(
      depthsMm.map(at),
      { thicknessMm: 30, emcPct: null, placeKind: 'shop', isNewHere: null, history: null },
      0.1,
      0.85,
    );

  test.each([30 / 5, 30 / 4])('at %f mm they do, of a parabola', (depthMm) => {
    expect(Math.abs(of([depthMm, depthMm]).averagePct - 14)).toBeLessThan(0.35);
  });
  test('at a tenth they are too near the shell to tell it as closely', () => {
    expect(of([3, 3]).spotsPct).toBeGreaterThan(2 * of([6, 6]).spotsPct);
  });
  test('four depths tell it closely', () => {
    expect(of([3, 6, 10, 15]).averagePct).toBeCloseTo(14, 1);
  });
});
