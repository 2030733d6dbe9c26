import { expect, test } from 'vitest';
import { readTemperature } from '../../../../renderer/form/wood-temp.ts';

test('a temperature typed in Fahrenheit is saved in Celsius', () => {
  // Boiling point of water on both scales (from memory) is out of range; 50 °F is 10 °C by the same scale.
  expect(readTemperature({ typed: 50, unknown: false }, 'imperial')).toEqual({ ok: true, woodTempC: 10 });
});

test('not knowing it is an answer', () => {
  expect(readTemperature({ typed: 21, unknown: true }, 'metric')).toEqual({ ok: true, woodTempC: null });
});

test.each([null, Number.NaN])('%s is asked for again', (typed) => {
  expect(readTemperature({ typed, unknown: false }, 'metric')).toEqual({
    ok: false,
    problem: { code: 'wood-temp.missing' },
  });
});

test.each([212, -41])('%s °C is outside what wood can have', (typed) => {
  expect(readTemperature({ typed, unknown: false }, 'metric')).toEqual({
    ok: false,
    problem: { code: 'wood-temp.out-of-range', facts: { lowestTempC: -40, highestTempC: 80 } },
  });
});
