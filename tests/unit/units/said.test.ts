import { describe, expect, test } from 'vitest';
import {
  inUnits,
  saidLongLength,
  saidShortLength,
  saidTemperature,
  saidTemperatureStep,
} from '../../../shared-core/units/said.ts';

// 1 in = 25.4 mm exactly (international inch, 1959); °F = °C × 9/5 + 32, and a step of 1 K is one of 9/5 °F.
describe('a sentence of the core in the units of the person', () => {
  test('a depth, a length, a temperature and a difference of temperatures', () => {
    const sentence = `Pins ${saidShortLength(12.7)} deep, ${saidLongLength(300)} from an end, wood at ${saidTemperature(-5)}: 1 % for each ${saidTemperatureStep(10)}.`;
    expect(inUnits(sentence, 'metric')).toBe(
      'Pins 13 mm deep, 30 cm from an end, wood at −5 °C: 1 % for each 10 °C.',
    );
    expect(inUnits(sentence, 'imperial')).toBe(
      'Pins 1/2 in deep, 12 in from an end, wood at 23 °F: 1 % for each 18 °F.',
    );
  });

  test('a length of several metres', () => {
    expect(inUnits(saidLongLength(2400), 'imperial')).toBe('7 ft 10 in');
    expect(inUnits(saidLongLength(2400), 'metric')).toBe('2.4 m');
  });

  test('what a person wrote stays as they wrote it', () => {
    const note = 'Fence row, 30 cm above the ground, 20 °C in June';
    expect(inUnits(note, 'imperial')).toBe(note);
  });

  test('a sentence that nobody turned can still be read', () => {
    expect(saidShortLength(27)).toBe('27\u202fmm');
    expect(saidTemperature(-12.5)).toBe('-12.5\u202f°C');
  });
});
