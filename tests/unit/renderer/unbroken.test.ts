// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { unbroken } from '../../../renderer/unbroken.ts';
import { wordsNow } from '../../../renderer/words.ts';

// Line breaks: UAX #14, rule LB11 (no break before or after a word joiner).
test.each([
  ['Target 6–8%.', 'Target 6–\u20608%.'],
  ['11.6–13.0%', '11.6–\u206013.0%'],
  ['11,6–13,0 %', '11,6–\u206013,0 %'],
  ['shell–core difference, 0–9, May 12–15', 'shell–core difference, 0–9, May 12–15'],
])('"%s": only a range of percentages is held together', (text, held) => expect(unbroken(text)).toBe(held));

test('sentences and figures in the window are held together', () => {
  const { say, formats } = wordsNow();
  const range = { minPct: 6, maxPct: 8 };
  expect([
    say('forecast.target', { targetRange: range }),
    formats.mcRange(range),
    formats.mcInterval(range),
  ]).toEqual(['Target 6–\u20608%.', '6–\u20608%', '6.0–\u20608.0%']);
});
