import { expect, test } from 'vitest';
import { callSchema, reasonedCallSchema } from '../../../shared-core/probing/calls/assessment.ts';
import { message } from '../../../shared-core/words/message.ts';

const reason = message('call.half-read', { read: 1, planned: 4 });

test('a call is one of five, or none yet', () => {
  for (const call of ['ready', 'bring-in', 'keep-drying', 'too-dry', 'probe-again', null])
    expect(reasonedCallSchema.parse({ call, reasons: [reason] })).toEqual({ call, reasons: [reason] });
  expect(callSchema.safeParse('').success).toBe(false);
});

test('a call has a reason, and maybe more', () => {
  const isCall = (...reasons: unknown[]) => reasonedCallSchema.safeParse({ call: null, reasons }).success;
  expect(isCall()).toBe(false);
  expect(isCall(reason)).toBe(true);
  expect(isCall(reason, reason)).toBe(true);
  expect(isCall({})).toBe(false);
});
