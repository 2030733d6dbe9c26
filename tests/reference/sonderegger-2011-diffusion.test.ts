/**
 * W. Sonderegger, M. Vecellio, P. Zwicker and P. Niemz, Combined bound water and water vapor diffusion of Norway
 * spruce and European beech in and between the principal anatomical directions, Holzforschung 65 (2011), 819-828;
 * abstract looked up. None of it was used to choose the model or the medians of its prior.
 */
import { expect, test } from 'vitest';
import { transverseDiffusivityM2S } from '../../shared-core/wood/drying/diffusivity.ts';
import { priorPace } from '../../shared-core/wood/drying/history-fit.ts';

/** Basic specific gravities of both species: from memory. */
const spruce = 0.37;
const beech = 0.57;

// "Both diffusion coefficients are about two to three times higher for spruce than for beech."
test.each([6, 9, 12, 15, 18])(
  'at %f %% moisture spruce lets through two to three times what beech does',
  (mcPct) => {
    const ratio = transverseDiffusivityM2S(mcPct, 20, spruce) / transverseDiffusivityM2S(mcPct, 20, beech);
    expect(ratio).toBeGreaterThan(2);
    expect(ratio).toBeLessThan(3);
  },
);

// "The unsteady-state-determined diffusion coefficient is … about half that of the steady-state-determined". Siau's
// formula is for steady flow, and a drying board is unsteady: the prior's factor must be about the same, on average over both species. It was chosen
// on days of drying (`tests/bench/drying-prior.bench.ts`).
test('a drying board is assumed to let through about half of what the formula for steady flow gives', () => {
  const { softwood, 'dense-hardwood': dense } = priorPace.diffusivity.medians;
  const factor = Math.sqrt(softwood * dense);
  expect(factor).toBeGreaterThan(0.35);
  expect(factor).toBeLessThan(0.65);
});

// "With increasing moisture content, the diffusion coefficients exponentially increase."
test('each further 3 % of moisture multiplies it by about the same', () => {
  const d = [6, 9, 12, 15, 18].map((mcPct) => transverseDiffusivityM2S(mcPct, 20, beech));
  const steps = d.slice(1).map((value, i) => value / d[i]!);
  expect(Math.min(...steps)).toBeGreaterThan(1.2);
  expect(Math.max(...steps) / Math.min(...steps)).toBeLessThan(1.1);
});
