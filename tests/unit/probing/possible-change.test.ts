import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { largestResponse, possibleRange } from '../../../shared-core/probing/suspicions/possible-change.ts';
import { DAY_S } from '../../../shared-core/time.ts';
import { transverseDiffusivityM2S } from '../../../shared-core/wood/drying/diffusivity.ts';
import { plainSpecies } from './a-board.ts';

// J. Crank, The Mathematics of Diffusion (1975), eq. 4.17 (from memory): the long-time series for the center of a
// sheet, 1 - (4/π) Σ (-1)^n/(2n+1) exp(-(2n+1)² π² Fo / 4), here with 4000 terms.
function centerResponse(thicknessMm: number, days: number, diffusivity: number): number {
  const fourier = (diffusivity * days * DAY_S) / (thicknessMm / 2000) ** 2;
  let sum = 0;
  for (let n = 0; n < 4000; n += 1)
    sum +=
      ((n % 2 === 0 ? 1 : -1) / (2 * n + 1)) * Math.exp(-((2 * n + 1) ** 2) * Math.PI ** 2 * (fourier / 4));
  return 1 - (4 / Math.PI) * sum;
}

test('the core never goes further than the bound, whatever the thickness, the time, the species and its warmth', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 150, noNaN: true }),
      fc.double({ min: 1, max: 400, noNaN: true }),
      fc.double({ min: 0.3, max: 0.8, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      fc.double({ min: 4, max: 30, noNaN: true }),
      (thicknessMm, days, gravity, tempC, mcPct) => {
        expect(largestResponse('core', thicknessMm, days, gravity)).toBeGreaterThanOrEqual(
          centerResponse(thicknessMm, days, transverseDiffusivityM2S(mcPct, tempC, gravity)) - 1e-4,
        );
      },
    ),
  );
});

// Crank, eq. 4.18 (from memory): the average of the sheet, 1 - (8/π²) Σ exp(-(2n+1)² π² Fo / 4) / (2n+1)².
function averageResponse(thicknessMm: number, days: number, diffusivity: number): number {
  const fourier = (diffusivity * days * DAY_S) / (thicknessMm / 2000) ** 2;
  let sum = 0;
  for (let n = 0; n < 4000; n += 1)
    sum += Math.exp(-((2 * n + 1) ** 2) * Math.PI ** 2 * (fourier / 4)) / (2 * n + 1) ** 2;
  return 1 - (8 / Math.PI ** 2) * sum;
}

test('in its first days the average goes as far as in the fastest wood, and no further', () => {
  const fastest = Math.max(...[20, 25, 30].map((mcPct) => transverseDiffusivityM2S(mcPct, 40, 0.5)));
  for (const days of [0.1, 0.5, 1])
    expect(largestResponse('average', 80, days, 0.5)).toBeCloseTo(averageResponse(80, days, fastest), 2);
  expect(largestResponse('average', 80, 0, 0.5)).toBe(0);
  expect(largestResponse('average', 10, 400, 0.5)).toBe(1);
});

test('the core of an 80 mm beam can hardly change in a day; its shell can', () => {
  expect(largestResponse('core', 80, 1, null)).toBeLessThan(0.03);
  expect(largestResponse('shell', 80, 1, null)).toBe(1);
  expect(largestResponse('core', 80, 0, null)).toBe(0);
});

describe('what a board can show now', () => {
  const species = { ...plainSpecies, basicSpecificGravity: null };
  const shop = { name: 'Shop', kind: 'shop', emcPct: 8, month: 5 } as const;
  const yard = { name: 'Yard', kind: 'outdoors', emcPct: 14, month: 5 } as const;

  test('indoors it does not gain much above the place’s EMC', () => {
    expect(possibleRange('shell', 8, 27, 30, { place: shop, species }).highPct).toBeCloseTo(11, 6);
  });

  // At 10 % relative humidity wood comes to about 2.5 % (Wood Handbook, Table 4-2, 70 °F; from memory).
  test('it does not get drier than the driest air makes it', () => {
    expect(possibleRange('shell', 12, 27, 30, { place: shop, species }).lowPct).toBeCloseTo(2.5, 6);
    expect(possibleRange('shell', 2, 27, 30, { place: shop, species }).lowPct).toBe(2);
  });

  test.each([
    ['open-shed', 13, 19],
    ['heated-room', 7, 10],
  ] as const)('in a %s of %d%% the gain ends at %d%%', (kind, emcPct, most) => {
    const place = { name: '', kind, emcPct, month: 5 };
    expect(possibleRange('shell', 6, 27, 30, { place, species }).highPct).toBeCloseTo(most, 6);
  });

  test('outdoors the rain can bring the shell to fiber saturation', () => {
    expect(possibleRange('shell', 14, 27, 30, { place: yard, species }).highPct).toBeCloseTo(30, 6);
  });

  test('a board that is wetter than its place does not gain at all', () => {
    expect(possibleRange('core', 40, 27, 30, { place: yard, species }).highPct).toBe(40);
  });

  test.each([
    ['open-shed', 24],
    ['shop', 16],
    ['heated-room', 12],
  ] as const)('with the air of a %s unknown, the gain ends at %d %%', (kind, ceiling) => {
    expect(
      possibleRange('shell', 6, 27, 30, { place: { name: '', kind, emcPct: null, month: 5 }, species })
        .highPct,
    ).toBeCloseTo(ceiling, 6);
  });
});
