import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { largestResponse, possibleRange } from '../../../shared-core/probing/possible-change.ts';

// J. Crank, The Mathematics of Diffusion (1975), eq. 4.17 (from memory): the long-time series for the centre of a
// sheet, 1 - (4/π) Σ (-1)^n/(2n+1) exp(-(2n+1)² π² Fo / 4), here with 400 terms and the largest diffusivity.
function centreResponse(thicknessMm: number, days: number): number {
  const fourier = (1e-9 * days * 86_400) / (thicknessMm / 2000) ** 2;
  let sum = 0;
  for (let n = 0; n < 400; n += 1)
    sum +=
      ((n % 2 === 0 ? 1 : -1) / (2 * n + 1)) * Math.exp(-((2 * n + 1) ** 2) * Math.PI ** 2 * (fourier / 4));
  return 1 - (4 / Math.PI) * sum;
}

test('the core of a sheet never goes further than the bound, whatever its thickness and the time', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 10, max: 150, noNaN: true }),
      fc.double({ min: 0.05, max: 400, noNaN: true }),
      (thicknessMm, days) => {
        expect(largestResponse('core', thicknessMm, days)).toBeGreaterThanOrEqual(
          centreResponse(thicknessMm, days) - 1e-6,
        );
      },
    ),
  );
});

test('the core of an 80 mm beam can hardly change in a day; its shell can', () => {
  expect(largestResponse('core', 80, 1)).toBeLessThan(0.03);
  expect(largestResponse('shell', 80, 1)).toBe(1);
  expect(largestResponse('core', 80, 0)).toBe(0);
});

describe('what a board can show now', () => {
  const shop = { name: 'Shop', kind: 'shop', emcPct: 8 } as const;
  const yard = { name: 'Yard', kind: 'outdoors', emcPct: 14 } as const;

  test('indoors it does not gain much above the place’s EMC', () => {
    expect(possibleRange('shell', 8, 27, 30, shop).highPct).toBeCloseTo(11, 6);
  });

  test('outdoors the rain can bring the shell to fibre saturation', () => {
    expect(possibleRange('shell', 14, 27, 30, yard).highPct).toBeCloseTo(30, 6);
  });

  test('a board that is wetter than its place does not gain at all', () => {
    expect(possibleRange('core', 40, 27, 30, yard).highPct).toBe(40);
  });

  test.each([
    ['open-shed', 24],
    ['shop', 16],
    ['heated-room', 12],
  ] as const)('with the air of a %s unknown, the gain ends at %d %%', (kind, ceiling) => {
    expect(possibleRange('shell', 6, 27, 30, { name: '', kind, emcPct: null }).highPct).toBeCloseTo(
      ceiling,
      6,
    );
  });
});
