import { describe, expect, test } from 'vitest';
import { ovenDryMcPct } from '../../shared-core/wood/moisture/oven-dry.ts';
import { depthOfAverageMm, fitProfile } from '../../shared-core/wood/moisture/profile.ts';
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
  test('the exact depth is between the two', () => {
    expect(depthOfAverageMm(25.4)).toBeGreaterThan(25.4 / 5);
    expect(depthOfAverageMm(25.4)).toBeLessThan(25.4 / 4);
    // Arithmetic: 0.2113 of the thickness.
    expect(depthOfAverageMm(100)).toBeCloseTo(21.13, 2);
  });
  test('a parabola from 10 % at the faces to 16 % in the middle averages 14 %', () => {
    const profile = fitProfile(
      [
        { depthMm: 0, mcPct: 10 },
        { depthMm: 15, mcPct: 16 },
      ],
      30,
    );
    expect(profile.averagePct).toBeCloseTo(14, 12);
  });
});
