import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { type JudgementFacts, judge } from '../../../shared-core/probing/calls/judgement.ts';
import { nextStepSchema } from '../../../shared-core/probing/calls/next-step.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';
import { ahead, facts, found, inDays, nowMs, onDay, place, reach } from './a-judged-board.ts';

const at = '2026-08-22T12:00:00.000Z';
const todayOn = '2026-09-20T12:00:00.000Z';
const reached = (days: number) => reach(days - 20, days, days + 40);
const notReached = reach(null, null, null);

/** A forecast of a board at a place (1) and, moved, at others, each by when it gets there. */
const forecast = (
  reaches: readonly ReturnType<typeof reach>[],
  {
    averagePct = 15,
    probabilityReady = 0,
    probeMs = inDays(30) as number | null,
    why = message(probeMs === null ? 'forecast.probe.never' : 'forecast.probe.not-sooner'),
  } = {},
): JudgementFacts['forecast'] =>
  ahead(averagePct, reaches, { probabilityReady, nextProbe: { atMs: probeMs, why } });

/** A board by its call, in a shed that is dry enough unless it is to be brought in, with other places that are. */
function stepFor(call: Call | null, made: JudgementFacts['forecast'], probedAt = at) {
  const averagePct = call === 'ready' ? 7 : call === 'too-dry' ? 5 : 15;
  const step = judge(
    facts({
      found: call && found(call === 'bring-in' ? 'keep-drying' : call, averagePct, { at: probedAt }),
      forecast: made,
      places: [
        place(1, 'Shed', 'open-shed', call === 'bring-in' ? 11 : 7),
        place(2, 'Loft', 'open-shed', 7),
        place(3, 'Shop', 'shop', 7),
      ],
    }),
  ).next;
  expect(nextStepSchema.parse(step)).toEqual(step);
  return step;
}
const daysAgo = (days: number) => new Date(inDays(-days)).toISOString();
const next = (days: number, why: Parameters<typeof message>[0]) =>
  message('next-step.probe-on', {
    probeOn: new Date(inDays(days)).toISOString(),
    why: { code: why },
  });

describe('The next step with a board', () => {
  test('without a forecast: it says why there is none, where that is known', () => {
    const whyNot = message('forecast.none.reading-before-start');
    const places = [place(1, 'Bench room', 'heated-room', 6)] as const;
    expect(judge(facts({ places, whyNot })).next.why).toEqual(whyNot);
    expect(judge(facts({ places })).next.why).toEqual(message('next-step.no-forecast'));
  });

  test('never probed: probe it for the first time', () => {
    expect(stepFor(null, forecast([reached(100)]))).toEqual({
      step: 'probe',
      due: 'first-round',
      why: message('next-step.not-probed'),
    });
  });

  test('some of its spots read: how many are to go', () => {
    const spotsRead = { read: 1, planned: 4 };
    const half = found(null, 12, { spotsRead, at: onDay(-1) });
    for (const ahead of [null, forecast([reached(100)])]) {
      const { next, call } = judge(facts({ found: half, forecast: ahead }));
      expect({ next, call }).toEqual({
        call: null,
        next: { step: 'probe', due: 'first-round', why: message('next-step.half-probed', { spots: 3 }) },
      });
    }
    expect(inEnglish(message('next-step.half-probed', { spots: 3 }))).toBe('3 spots to go.');
    // Nobody goes on with a round of weeks ago.
    const then = judge(facts({ found: found(null, 12, { spotsRead }) })).next;
    expect(then).toMatchObject({ due: 'first-round', why: message('next-step.half-probed-then') });
  });

  test('with a call to probe again, for the reason of the call', () => {
    expect(stepFor('probe-again', forecast([reached(100)]))).toEqual({
      step: 'probe',
      due: 'probe-again',
      why: null,
    });
  });

  test('ready: print its label, whatever would tell its forecast more', () => {
    const sure = forecast([reached(0)], {
      probabilityReady: 0.99,
      probeMs: nowMs,
      why: message('forecast.probe.check-ready'),
    });
    expect(stepFor('ready', sure)).toEqual({ step: 'label', due: null, why: null });
  });

  // A call belongs to the day of its round.
  test.each([
    ['ready', 0.2, 'may-not-be-ready'],
    ['keep-drying', 0.7, 'should-be-ready'],
  ] as const)(
    'called %s, and today ready with a probability of %f: probe again, for both days',
    (call, probabilityReady, which) => {
      expect(stepFor(call, forecast([reached(60)], { probabilityReady, probeMs: nowMs }))).toEqual({
        step: 'probe',
        due: which,
        why: message(`next-step.${which}`, { callName: message(`call.${call}`), probedOn: at, todayOn }),
      });
    },
  );

  test('the forecast does not overrule a call of today', () => {
    const readyAfterAll = forecast([reached(0)], {
      probabilityReady: 0.95,
      probeMs: null,
      why: message('forecast.probe.known-ready'),
    });
    expect(stepFor('keep-drying', readyAfterAll, daysAgo(0.5))).toEqual({
      step: 'wait',
      due: null,
      probeMs: inDays(6.5),
      why: message('next-step.probe-on', {
        probeOn: new Date(inDays(6.5)).toISOString(),
        why: message('next-step.still-not-ready', {
          callName: message('call.keep-drying'),
          probedOn: daysAgo(0.5),
          todayOn,
        }),
      }),
    });
    const notReady = forecast([reached(40)], { probabilityReady: 0.1 });
    expect(stepFor('ready', notReady, daysAgo(0.5))).toMatchObject({
      step: 'label',
      why: { code: 'next-step.still-ready' },
    });
    expect(stepFor('ready', notReady, daysAgo(8)).step).toBe('probe');
  });

  test('to bring in: move it where it is ready first, or to a place still to be chosen', () => {
    expect(stepFor('bring-in', forecast([notReached, reached(90), reached(60)]))).toEqual({
      step: 'move',
      due: 'bring-in',
      placeId: 3,
      why: null,
    });
    expect(stepFor('bring-in', forecast([notReached, notReached]))).toMatchObject({
      step: 'move',
      due: 'add-place',
      placeId: null,
      why: message('next-step.no-place-dry-enough'),
    });
    expect(stepFor('bring-in', null)).toMatchObject({ step: 'move', placeId: null, why: null });
  });

  test('to keep drying: nothing until readings are of use', () => {
    expect(stepFor('keep-drying', forecast([reached(100)]))).toEqual({
      step: 'wait',
      due: null,
      probeMs: inDays(30),
      why: next(30, 'forecast.probe.not-sooner'),
    });
    expect(stepFor('keep-drying', null)).toEqual({
      step: 'wait',
      due: null,
      probeMs: null,
      why: message('next-step.no-forecast'),
    });
  });

  test('to keep drying, and a reading today would tell: probe it, for what it tells', () => {
    expect(stepFor('keep-drying', forecast([reached(20)], { probeMs: nowMs }))).toEqual({
      step: 'probe',
      due: 'could-change-call',
      why: message('forecast.probe.decides'),
    });
    const why = message('forecast.probe.learns-rate');
    expect(stepFor('keep-drying', forecast([reached(90)], { probeMs: nowMs, why }))).toEqual({
      step: 'probe',
      due: 'learns-rate',
      // The day that the forecast named has come.
      why: message('next-step.learns-rate-now'),
    });
  });

  test('to keep drying where it will not get there: move it', () => {
    expect(stepFor('keep-drying', forecast([notReached, reached(60)], { probeMs: null }))).toMatchObject({
      step: 'move',
      placeId: 2,
      why: null,
    });
    expect(stepFor('keep-drying', forecast([notReached, reached(60)]))).toMatchObject({
      step: 'move',
      placeId: 2,
      why: null,
    });
    expect(stepFor('keep-drying', forecast([notReached], { probeMs: null }))).toMatchObject({
      step: 'move',
      placeId: null,
      why: message('next-step.no-place-dry-enough'),
    });
  });

  // Common practice, no source: boards above 20 % may check in a heated room.
  test('above 20 % it is not moved indoors yet', () => {
    const wet = forecast([notReached, reached(200)], { averagePct: 28, probeMs: null });
    expect(stepFor('keep-drying', wet)).toEqual({
      step: 'wait',
      due: 'move-later',
      probeMs: null,
      why: message('next-step.too-wet-to-move', { dryEnoughLimitPct: 20, coreLimitPct: 25 }),
    });
  });
});
