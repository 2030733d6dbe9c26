import { expect, test } from 'vitest';
import { readTemperature } from '../../../../renderer/screens/round/TemperatureField.tsx';

test('what is typed in Fahrenheit is kept in Celsius', () => {
  // Boiling point of water on both scales (from memory) is out of range; 50 °F is 10 °C by the same scale.
  expect(readTemperature({ typed: 50, unknown: false }, 'imperial')).toEqual({ ok: true, woodTempC: 10 });
});

test('not knowing it is an answer', () => {
  expect(readTemperature({ typed: 21, unknown: true }, 'metric')).toEqual({ ok: true, woodTempC: null });
});

test.each([
  [null, /Type the wood’s temperature/],
  [Number.NaN, /Type the wood’s temperature/],
  [212, /between −40 °C and 80 °C/],
  [-41, /between −40 °C and 80 °C/],
])('%s is asked for again', (typed, sentence) => {
  const read = readTemperature({ typed, unknown: false }, 'metric');
  expect(read.ok ? '' : read.sentence).toMatch(sentence);
});
