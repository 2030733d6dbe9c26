import { expect, test } from 'vitest';
import type { Assessment, Verdict } from '../../../shared-core/probing/assessment.ts';
import { summariseRound } from '../../../shared-core/probing/round-summary.ts';

const called = (verdict: Verdict): Assessment => ({
  readings: [],
  estimate: null,
  call: { verdict, reasons: ['because'] },
});

test('a round over six boards, five of them probed', () => {
  const summary = summariseRound([
    called('ready'),
    called('ready'),
    called('keep-drying'),
    called('bring-in'),
    called('probe-again'),
    null,
  ]);
  expect(summary).toEqual({
    boards: 6,
    probed: 5,
    verdicts: { ready: 2, 'bring-in': 1, 'keep-drying': 1, 'probe-again': 1 },
    sentence: '2 of 6 ready, 1 to bring in, 1 to keep drying, 1 to probe again, 1 not probed.',
  });
});

test('verdicts that no board has are not mentioned, except that none is ready', () => {
  expect(summariseRound([called('keep-drying')]).sentence).toBe('0 of 1 ready, 1 to keep drying.');
  expect(summariseRound([called('ready')]).sentence).toBe('1 of 1 ready.');
});

test('before the first board, and with no boards', () => {
  expect(summariseRound([null]).sentence).toBe('None of 1 board probed yet.');
  expect(summariseRound([null, null]).sentence).toBe('None of 2 boards probed yet.');
  expect(summariseRound([]).sentence).toBe('There are no boards in this stack.');
});
