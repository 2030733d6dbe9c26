import { expect, test } from 'vitest';
import { kgFromWeight, weightText } from '../../../shared-core/units/weight.ts';

// NIST Handbook 44, appendix C: one pound is 0.453 592 37 kg, exactly (from memory).
test('a pound is 0.45359237 kg', () => {
  expect(kgFromWeight(1, 'imperial')).toBe(0.45359237);
  expect(weightText(0.45359237, 'imperial')).toBe('1.00 lb');
});

test.each([
  [0.835, '0.835 kg'],
  [4.14, '4.14 kg'],
  [12.44, '12.4 kg'],
  [1830, '1830 kg'],
])('%f kg is shown to the figures that a scale has: %s', (kg, text) => {
  expect(weightText(kg, 'metric')).toBe(text);
});
