import { expect, test } from 'vitest';
import { summarizeRound } from '../../../shared-core/probing/calls/round-summary.ts';
import { codesFrom, codesOf, expectWhole, inEnglish } from '../words/in-english.ts';

const sentence = (...calls: Parameters<typeof summarizeRound>[0]): string =>
  inEnglish(summarizeRound(calls).message);

test('a round over six boards, five of them probed', () => {
  const calls = ['ready', 'ready', 'keep-drying', 'bring-in', 'probe-again', null] as const;
  expect(summarizeRound(calls)).toMatchObject({
    boards: 6,
    probed: 5,
    calls: { ready: 2, 'bring-in': 1, 'keep-drying': 1, 'too-dry': 0, 'probe-again': 1 },
  });
  expect(sentence(...calls)).toBe(
    '2 of 6 ready, 1 to bring in, 1 to keep drying, 1 to probe again, and 1 not probed.',
  );
});

test('calls that no board has are not mentioned, except that none is ready', () => {
  expect(sentence('keep-drying')).toBe('0 of 1 ready and 1 to keep drying.');
  expect(sentence('ready')).toBe('1 of 1 ready.');
});

test('boards still being judged were probed, and have no call yet', () => {
  const calls = ['ready', 'being-judged', 'being-judged', null] as const;
  expect(summarizeRound(calls)).toMatchObject({
    probed: 3,
    calls: { ready: 1, 'bring-in': 0, 'keep-drying': 0, 'too-dry': 0, 'probe-again': 0 },
  });
  expect(sentence(...calls)).toBe('1 of 4 ready, 2 being judged, and 1 not probed.');
});

test('boards of which only some spots were read have no call', () => {
  expect(sentence('ready', 'half-probed', 'being-judged', null)).toBe(
    '1 of 4 ready, 1 partly probed, 1 being judged, and 1 not probed.',
  );
  expect(summarizeRound(['half-probed'])).toMatchObject({ probed: 1, calls: { 'probe-again': 0 } });
});

test('before the first board, and with no boards', () => {
  expect(sentence(null)).toBe('The board is not probed yet.');
  expect(sentence(null, null)).toBe('None of 2 boards are probed yet.');
  expect(sentence()).toBe('No boards in this stack.');
});

test('every sentence of it is whole', () => {
  const messages = [
    [],
    [null],
    [
      'ready',
      'bring-in',
      'keep-drying',
      'too-dry',
      'probe-again',
      'half-probed',
      'being-judged',
      null,
    ] as const,
  ].map((calls) => summarizeRound(calls).message);
  expect(codesOf(messages)).toEqual(new Set(codesFrom('round-summary.')));
  expectWhole(messages);
});
