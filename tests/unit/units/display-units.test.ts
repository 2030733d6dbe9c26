import { describe, expect, test } from 'vitest';
import {
  changeText,
  longLengthFromMm,
  longLengthText,
  mmFromLongLength,
  mmFromShortLength,
  shortLengthFromMm,
  shortLengthText,
} from '../../../shared-core/units/length.ts';
import {
  celsiusFromTemperature,
  temperatureFromC,
  temperatureText,
} from '../../../shared-core/units/temperature.ts';

describe('lengths, with 1 in = 25.4 mm exactly (international inch, from memory)', () => {
  test.each([
    [25.4, '1 in'],
    [26.9875, '1 1/16 in'],
    [19.05, '3/4 in'],
    [50.8, '2 in'],
    [28.575, '1 1/8 in'],
  ])('%f mm of thickness is %s on a tape', (mm, text) => {
    expect(shortLengthText(mm, 'imperial')).toBe(text);
  });

  test.each([
    [27, '27 mm'],
    [2.5, '2.5 mm'],
    [3, '3 mm'],
  ])('%f mm of thickness or depth is written %s', (mm, text) => {
    expect(shortLengthText(mm, 'metric')).toBe(text);
  });

  test.each([
    [2438.4, '2.4 m', '8 ft'],
    [2400, '2.4 m', '7 ft 10 in'],
    [600, '60 cm', '24 in'],
  ])('%f mm along a board is %s or %s', (mm, metric, imperial) => {
    expect(longLengthText(mm, 'metric')).toBe(metric);
    expect(longLengthText(mm, 'imperial')).toBe(imperial);
  });

  test.each(['metric', 'imperial'] as const)('what is shown in a %s field is what was typed', (units) => {
    expect(shortLengthFromMm(mmFromShortLength(1.125, units), units)).toBeCloseTo(1.125, 9);
    expect(longLengthFromMm(mmFromLongLength(8.5, units), units)).toBeCloseTo(8.5, 9);
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

  test('below zero is written with a minus sign', () => {
    expect(temperatureText(-5, 'metric')).toBe('−5 °C');
  });
});

test.each([
  [-3.24, 'metric', '−3.2 mm'],
  [0.88, 'metric', '+0.9 mm'],
  [25.4, 'imperial', '+1.00 in'],
  [-3.2, 'imperial', '−0.13 in'],
] as const)('a change of %f mm is shown finer than a tape: %s, %s', (mm, units, text) => {
  expect(changeText(mm, units)).toBe(text);
});
