import { describe, expect, test } from 'vitest';
import { shortLengthFromMm } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature, temperatureFromC } from '../../../shared-core/units/temperature.ts';

describe('lengths, with 1 in = 25.4 mm exactly (international inch, from memory)', () => {
  test('28.575 mm is shown as it is, or as 1.125 in', () => {
    expect(shortLengthFromMm(28.575, 'metric')).toBe(28.575);
    expect(shortLengthFromMm(28.575, 'imperial')).toBe(1.125);
  });
});

describe('temperatures', () => {
  // Fixed points of the Fahrenheit scale: ice 32 °F, steam 212 °F, and −40 where both scales meet (from memory).
  test.each([
    [0, 32],
    [100, 212],
    [-40, -40],
  ])('%f °C is %f °F', (celsius, fahrenheit) => {
    expect(temperatureFromC(celsius, 'imperial')).toBe(fahrenheit);
    expect(celsiusFromTemperature(fahrenheit, 'imperial')).toBeCloseTo(celsius, 9);
  });
});
