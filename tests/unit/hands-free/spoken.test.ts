import { describe, expect, test } from 'vitest';
import { spokenCode, spokenOfBoard, spokenOfSaved } from '../../../shared-core/hands-free/spoken.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const { say } = createWords({
  catalog: english,
  locale: 'en-US',
  timeZone: 'UTC',
  units: 'imperial',
  today: null,
  isSpoken: true,
});
const heard = (sentences: Message[]): string => sentences.map((each) => say(each)).join(' ');
const spot = message('spot.at', { depth: 'core', along: message('spot.from-left', { fromDistanceMm: 610 }) });
const used = { mcPct: 13.4, counts: true, isQuestionable: false };

describe('A voice', () => {
  test('says the value and the next spot with units as words', () => {
    expect(heard(spokenOfSaved(used, spot, null))).toBe(
      '13.4 percent. Next: Core, 24 inches from the left end.',
    );
  });

  test('says first that a value is questionable, and how to probe its spot again', () => {
    expect(heard(spokenOfSaved({ ...used, isQuestionable: true }, spot, null))).toMatch(
      /^Questionable\. 13\.4 percent\. To probe it again, go back\. Next/,
    );
  });

  test('names no value where none is used', () => {
    for (const value of [
      { ...used, counts: false },
      { ...used, mcPct: null },
    ])
      expect(heard(spokenOfSaved(value, null, null))).toBe('Not used. Probe this spot again.');
  });

  test('says the call of a board, and the next board where a person goes there by a key', () => {
    const callName = message('call.keep-drying');
    expect(say(spokenOfBoard(callName, 'WAL-03'))).toBe('Board done: Keep drying. Next board: WAL 03.');
    expect(say(spokenOfBoard(null, null))).toBe('Board done.');
  });

  test('says why the next board does not come by itself', () => {
    expect(say(spokenOfBoard(message('call.bring-in'), null, true))).toBe(
      'Board done: Bring in. Waiting, as a reading is questionable.',
    );
  });

  test('reads out no sign of an ID as a word', () => {
    expect(spokenCode('WAL-03/b')).toBe('WAL 03 b');
    expect(spokenCode('Éiche_7')).toBe('Éiche 7');
  });
});
