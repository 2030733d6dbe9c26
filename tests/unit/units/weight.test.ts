import { expect, test } from 'vitest';
import { kgFromWeight } from '../../../shared-core/units/weight.ts';

// NIST Handbook 44, appendix C: one pound is 0.453 592 37 kg, exactly (from memory).
test('a pound is 0.45359237 kg', () => {
  expect(kgFromWeight(1, 'imperial')).toBe(0.45359237);
  expect(kgFromWeight(1, 'metric')).toBe(1);
});
