import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { type NextStepFacts, nextStepOf } from '../../../shared-core/probing/calls/next-step.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';

const nowMs = Date.UTC(2026, 8, 20, 12);
const at = '2026-08-22T12:00:00.000Z';
const todayOn = '2026-09-20T12:00:00.000Z';
const inDays = (days: number) => nowMs + days * DAY_MS;
const around = (median: number) => ({ low: median - 1, median, high: median + 1 });

const reached = (days: number) => ({
  earlyMs: inDays(days - 20),
  likelyMs: inDays(days),
  lateMs: inDays(days + 40),
});
const notReached = { earlyMs: null, likelyMs: null, lateMs: null };

/** A forecast of a board at a place (1) and, moved, at others, each by when it gets there. */
function forecast(
  reaches: readonly (typeof notReached | ReturnType<typeof reached>)[],
  { averagePct = 15, probabilityReady = 0, probeMs = inDays(30) as number | null } = {},
): NextStepFacts['forecast'] {
  return {
    now: {
      average: around(averagePct),
      shell: around(averagePct),
      core: around(averagePct),
      faceAPct: averagePct,
      faceBPct: averagePct,
      probabilityReady,
      profile: [],
    },
    places: reaches.map((reach, index) => ({
      placeId: index + 1,
      reach,
      floorPct: around(7),
      floorMonth: 1,
      airOffsetPct: null,
      never: false,
      band: { atMs: [], average: [], shell: [], core: [] },
    })),
    nextProbe: {
      atMs: probeMs,
      why: message(probeMs === null ? 'forecast.probe.never' : 'forecast.probe.not-sooner'),
    },
  };
}

const stepFor = (call: Call | null, made: NextStepFacts['forecast']) =>
  nextStepOf({ latest: call && { call, at }, forecast: made, nowMs });

describe('The next step with a board', () => {
  test('never probed: probe it, and never "again"', () => {
    expect(stepFor(null, forecast([reached(100)]))).toEqual({
      step: 'probe',
      why: message('next-step.not-probed'),
    });
  });

  test('with a call to probe again, for the reason of the call', () => {
    expect(stepFor('probe-again', null)).toEqual({ step: 'probe-again', why: null });
  });

  test('ready: print its label', () => {
    expect(stepFor('ready', forecast([reached(0)], { probabilityReady: 0.9 }))).toEqual({
      step: 'label',
      why: null,
    });
  });

  // A call belongs to the day of its round.
  test.each([
    ['ready', 0.2, 'may-not-be-ready'],
    ['keep-drying', 0.7, 'should-be-ready'],
    ['bring-in', 0.7, 'should-be-ready'],
  ] as const)(
    'called %s, and today ready with a probability of %f: probe again, for both days',
    (call, probabilityReady, which) => {
      expect(stepFor(call, forecast([reached(60)], { probabilityReady }))).toEqual({
        step: 'probe-again',
        why: message(`next-step.${which}`, { callName: message(`call.${call}`), probedOn: at, todayOn }),
      });
    },
  );

  test('to bring in: move it where it is ready first, or to a place still to be chosen', () => {
    expect(stepFor('bring-in', forecast([notReached, reached(90), reached(60)]))).toEqual({
      step: 'move',
      placeId: 3,
      why: null,
    });
    expect(stepFor('bring-in', forecast([notReached, notReached]))).toMatchObject({
      step: 'move',
      placeId: null,
    });
    expect(stepFor('bring-in', null)).toMatchObject({ step: 'move', placeId: null });
  });

  test('to keep drying: read it when that is of use', () => {
    expect(stepFor('keep-drying', forecast([reached(100)]))).toEqual({
      step: 'probe-again',
      why: message('forecast.probe-on', {
        probeOn: new Date(inDays(30)).toISOString(),
        why: message('forecast.probe.not-sooner'),
      }),
    });
    expect(stepFor('keep-drying', null)).toEqual({ step: 'probe-again', why: null });
  });

  test('to keep drying where it will not get there: move it', () => {
    expect(stepFor('keep-drying', forecast([notReached, reached(60)], { probeMs: null }))).toEqual({
      step: 'move',
      placeId: 2,
      why: message('forecast.probe.never'),
    });
    expect(stepFor('keep-drying', forecast([notReached, reached(60)]))).toEqual({
      step: 'move',
      placeId: 2,
      why: message('next-step.not-here'),
    });
  });

  // Common practice, no source: boards above 20 % may check in a heated room.
  test('above 20 % it is not moved indoors yet', () => {
    const wet = forecast([notReached, reached(200)], { averagePct: 28 });
    expect(stepFor('keep-drying', wet)).toMatchObject({ step: 'probe-again' });
  });
});
