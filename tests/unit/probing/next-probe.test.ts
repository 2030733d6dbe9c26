import { describe, expect, test } from 'vitest';
import { byUrgency } from '../../../shared-core/probing/plan/by-urgency.ts';
import { lastReadyWhen } from '../../../shared-core/probing/plan/last-ready.ts';
import {
  dueToday,
  isOfSome,
  type NextProbe,
  nextProbeSchema,
  probeDayOf,
} from '../../../shared-core/probing/plan/next-probe.ts';
import { type StackDue, stackDueSchema } from '../../../shared-core/probing/plan/stack-call.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';

const dayOf = (instant: string): string => instant.slice(0, 10);
const nowMs = Date.parse('2026-11-27T23:59:59.999Z');
const nextProbe: NextProbe = { forecastMs: null, oldestReadAt: null, oldestCode: null };
const aStack = { due: null, isForecasting: false, nextProbe, lastProbedAt: '2026-08-24T08:00:00.000Z' };
const said = (stack: Parameters<typeof dueToday>[0]) => {
  expect(nextProbeSchema.parse(stack.nextProbe)).toEqual(stack.nextProbe);
  const due = dueToday(stack, nowMs, dayOf);
  if (due) expect(stackDueSchema.parse(due)).toEqual(due);
  return due && [due.kind, inEnglish(due.why)];
};

describe('what a stack is due for today', () => {
  test('is a probe where its readings are 90 days old and no forecast names a day', () => {
    const old = (oldestReadAt: string, oldestCode: string | null = null) => ({
      ...aStack,
      nextProbe: { ...nextProbe, oldestReadAt, oldestCode },
    });
    expect(said(old('2026-08-30T08:00:00.000Z'))).toBeNull();
    expect(said(old('2026-08-29T08:00:00.000Z'))).toEqual([
      'overdue',
      'Probe today. Some of its boards were last probed Aug 29, 2026.',
    ]);
    expect(said(old('2026-08-29T08:00:00.000Z', 'OAK-6'))).toEqual([
      'overdue',
      'Probe today. OAK-6 was last probed Aug 29, 2026.',
    ]);
    expect(said(old('2026-08-24T08:00:00.000Z'))).toEqual([
      'overdue',
      'Probing has been overdue since Nov 22, 2026. Last probed Aug 24, 2026.',
    ]);
  });

  test('is a probe on the day that a forecast names, or after it', () => {
    const on = (day: string) => ({ ...nextProbe, forecastMs: Date.parse(`${day}T12:00:00Z`) });
    expect(said({ ...aStack, nextProbe: on('2026-11-28') })).toBeNull();
    expect(said({ ...aStack, nextProbe: on('2026-11-27') })).toEqual(['overdue', 'Probe today.']);
    expect(said({ ...aStack, nextProbe: on('2026-11-20') })).toEqual([
      'overdue',
      'Probing has been overdue since Nov 20, 2026.',
    ]);
  });

  test('is that probe before a move to drier air, and what its boards are due for before that', () => {
    const overdue = { ...nextProbe, oldestReadAt: '2026-08-24T08:00:00.000Z' };
    const dueFor = (kind: StackDue['kind']): StackDue => ({
      kind,
      why: message('stack-call.add-place', { boards: 2 }),
    });
    expect(said({ ...aStack, due: dueFor('add-place'), nextProbe: overdue })).toEqual([
      'overdue',
      'Probing has been overdue since Nov 22, 2026. Last probed Aug 24, 2026. 2 boards are unlikely to reach the target in any of your places. Add a drier one, or change the use.',
    ]);
    expect(said({ ...aStack, due: dueFor('bring-in'), nextProbe: overdue })?.[0]).toBe('overdue');
    for (const due of [dueFor('move-back'), dueFor('probe-again')])
      expect(dueToday({ ...aStack, due, nextProbe: overdue }, nowMs, dayOf)).toBe(due);
  });

  test('waits for forecasts that may name a later day', () => {
    const waiting = { ...aStack, nextProbe: { ...nextProbe, oldestReadAt: '2026-01-10T08:00:00.000Z' } };
    expect(said({ ...waiting, isForecasting: true })).toBeNull();
    expect(probeDayOf({ ...waiting, isForecasting: true })).toBeNull();
  });

  test('is no probe where neither a reading nor a forecast asks for one', () => {
    expect(probeDayOf(aStack)).toBeNull();
    expect(said(aStack)).toBeNull();
  });

  test('is a probe until the last moment of its day', () => {
    expect(said({ ...aStack, nextProbe: { ...nextProbe, forecastMs: nowMs } })?.[1]).toBe('Probe today.');
  });

  // 90 days: common practice, no source.
  test('is by the sooner of the two: the day of a forecast, or 90 days after the oldest reading', () => {
    const readAt = '2026-08-24T08:00:00.000Z';
    const oldMs = Date.parse('2026-11-22T08:00:00.000Z');
    const by = (forecastMs: number) =>
      probeDayOf({ ...aStack, nextProbe: { ...nextProbe, forecastMs, oldestReadAt: readAt } });
    expect(by(oldMs + 1)).toEqual({ atMs: oldMs, readAt });
    expect(by(oldMs)).toEqual({ atMs: oldMs, readAt: null });
    expect(by(oldMs - 1)).toEqual({ atMs: oldMs - 1, readAt: null });
  });

  test('names some of its boards only where others were read on a later day', () => {
    const isSome = (readAt: string | null, lastProbedAt: string | null) =>
      isOfSome({ lastProbedAt }, { atMs: nowMs, readAt }, dayOf);
    expect(isSome('2026-08-24T08:00:00.000Z', '2026-08-25T08:00:00.000Z')).toBe(true);
    expect(isSome('2026-08-24T08:00:00.000Z', '2026-08-24T17:00:00.000Z')).toBe(false);
    expect(isSome('2026-08-24T08:00:00.000Z', null)).toBe(false);
    expect(isSome(null, '2026-08-24T08:00:00.000Z')).toBe(false);
  });

  test('an overdue stack comes before one that is due', () => {
    const stack = (kind: StackDue['kind']) => ({
      due: { kind, why: message('stack-call.not-probed-yet') },
      nextReady: null,
      lastProbedAt: null,
    });
    const kinds = ['first-round', 'bring-in', 'overdue', 'probe-again'] as const;
    expect(byUrgency(kinds.map(stack)).map(({ due }) => due.kind)).toEqual([
      'overdue',
      'first-round',
      'probe-again',
      'bring-in',
    ]);
  });
});

test('the last board is ready no sooner than the next one, at either end of its range', () => {
  const next = { likely: '2026-12-25', from: '2026-12-06', to: '2027-02-25' };
  const last = { likely: '2026-12-28', from: '2026-12-07', to: '2027-02-24' };
  expect(lastReadyWhen(next, last)).toEqual({ ...last, to: '2027-02-25' });
  expect(lastReadyWhen(next, { ...last, from: '2026-12-01' }).from).toBe('2026-12-06');
  expect(lastReadyWhen({ ...next, to: null }, last).to).toBeNull();
});
