import { expect, test } from 'vitest';
import { summariseRound } from '../../../shared-core/probing/calls/round-summary.ts';

test('a round over six boards, five of them probed', () => {
  const summary = summariseRound(['ready', 'ready', 'keep-drying', 'bring-in', 'probe-again', null]);
  expect(summary).toEqual({
    boards: 6,
    probed: 5,
    calls: { ready: 2, 'bring-in': 1, 'keep-drying': 1, 'probe-again': 1 },
    sentence: '2 of 6 ready, 1 to bring in, 1 to keep drying, 1 to probe again, 1 not probed.',
  });
});

test('verdicts that no board has are not mentioned, except that none is ready', () => {
  expect(summariseRound(['keep-drying']).sentence).toBe('0 of 1 ready, 1 to keep drying.');
  expect(summariseRound(['ready']).sentence).toBe('1 of 1 ready.');
});

test('boards still being judged were probed, and have no call yet', () => {
  const { probed, calls, sentence } = summariseRound(['ready', 'being-judged', 'being-judged', null]);
  expect(probed).toBe(3);
  expect(calls).toEqual({ ready: 1, 'bring-in': 0, 'keep-drying': 0, 'probe-again': 0 });
  expect(sentence).toBe('1 of 4 ready, 2 being judged, 1 not probed.');
});

test('before the first board, and with no boards', () => {
  expect(summariseRound([null]).sentence).toBe('None of 1 board probed yet.');
  expect(summariseRound([null, null]).sentence).toBe('None of 2 boards probed yet.');
  expect(summariseRound([]).sentence).toBe('There are no boards in this stack.');
});
