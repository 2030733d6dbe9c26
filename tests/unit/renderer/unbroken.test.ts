// @vitest-environment jsdom
import { expect, test } from 'vitest';
import { unbroken } from '../../../renderer/unbroken.ts';
import { wordsNow } from '../../../renderer/words.ts';

// Line breaks: UAX #14, rules LB11 and LB12 (no break before or after a word joiner, or after a no-break space).
test.each([
  ['Target 6–8%.', 'Target 6–\u20608%.'],
  ['11.6–13.0%', '11.6–\u206013.0%'],
  ['11,6–13,0 %', '11,6–\u206013,0 %'],
  ['1 1/8 in thick, 3 15/16 in', '1\u00A01/8\u00A0in thick, 3\u00A015/16\u00A0in'],
  ['5/4 indoors', '5/4 indoors'],
  ['shell–core difference, 0–9, May 12–15', 'shell–core difference, 0–9, May 12–15'],
])('"%s": only ranges of percentages and inches with a fraction are held together', (text, held) =>
  expect(unbroken(text)).toBe(held),
);

test('sentences and figures in the window are held together', () => {
  const { say, formats } = wordsNow();
  const range = { minPct: 6, maxPct: 8 };
  expect([
    say('forecast.target', { targetRange: range }),
    formats.mcRange(range),
    formats.mcInterval(range),
  ]).toEqual(['Target 6–\u20608%.', '6–\u20608%', '6.0–\u20608.0%']);
});
