import { describe, expect, test } from 'vitest';
import { mmFromShortLength, shortLengthFromMm } from '../../../shared-core/units/length.ts';
import { celsiusFromTemperature, temperatureFromC } from '../../../shared-core/units/temperature.ts';

describe('lengths, with 1 in = 25.4 mm exactly (international inch, from memory)', () => {
  test.each(['metric', 'imperial'] as const)('what is shown in a %s field is what was typed', (units) => {
    expect(shortLengthFromMm(mmFromShortLength(1.125, units), units)).toBeCloseTo(1.125, 9);
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
