/**
 * A. Sánchez-Ferrer and M. Engelhardt, Estimation of the apparent anisotropic water diffusivity on spruce evaluated with
 * a simplified derivative approach, Scientific Reports (2026), doi 10.1038/s41598-026-38932-7; abstract looked up:
 * 0.94e-10 m²/s in radial and 1.00e-10 m²/s in tangential direction by dynamic vapor sorption. It does not give the
 * temperature and humidities; 25 °C and the middle of the hygroscopic range are assumed. None of it was used to
 * choose the model.
 */
import { expect, test } from 'vitest';
import { transverseDiffusivityM2S } from '../../shared-core/wood/drying/diffusivity.ts';

test.each([
  ['radial', 0.94e-10],
  ['tangential', 1.0e-10],
])('spruce in %s direction: %f m²/s, to a factor of 1.5', (_, measured) => {
  // Basic specific gravity of Norway spruce, from memory.
  const formula = transverseDiffusivityM2S(12, 25, 0.37);
  expect(formula / measured).toBeGreaterThan(1 / 1.5);
  expect(formula / measured).toBeLessThan(1.5);
});
