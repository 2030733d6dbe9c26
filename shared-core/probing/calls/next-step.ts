/** The one thing to do with a board next, by its call and its forecast: every screen and list takes it from here. */
import { z } from 'zod';
import { DAY_MS } from '../../time.ts';
import type { Forecast } from '../../wood/drying/forecast.ts';
import { type Message, message, messageSchema } from '../../words/message.ts';
import type { Call } from './assessment.ts';
import { bestElsewhere } from './forecast-reasons.ts';

/** Wetter boards dry outdoors first, % MC: in a heated room they may check. Common practice, no source. */
export const DRY_ENOUGH_FOR_INDOORS_PCT = 20;
/** A forecast does not overrule a call of ready that is younger than this. Common practice, no source. */
const YOUNG_DAYS = 7;

/** What a board is due for today, the most urgent first. */
export const dueKindSchema = z.enum([
  'first-round',
  'should-be-ready',
  'probe-again',
  'may-not-be-ready',
  'could-change-call',
  'learns-rate',
  'bring-in',
  /** It won't get there where it is, but has to dry there first. */
  'move-later',
]);
export type DueKind = z.infer<typeof dueKindSchema>;

/** Beside its button; null where the call's own sentence is reason enough. */
const why = messageSchema.nullable();

export const nextStepSchema = z.discriminatedUnion('step', [
  z.object({ step: z.literal('probe'), due: dueKindSchema.exclude(['bring-in', 'move-later']), why }),
  /** `placeId` is null where the forecast names no place that is dry enough. */
  z.object({
    step: z.literal('move'),
    due: z.literal('bring-in'),
    placeId: z.number().int().nullable(),
    why,
  }),
  z.object({ step: z.literal('label'), due: z.null(), why }),
  /** Nothing today. UTC, ms: when readings are next of use; null where that is not known. */
  z.object({
    step: z.literal('wait'),
    due: z.literal('move-later').nullable(),
    probeMs: z.number().nullable(),
    why,
  }),
]);
export type NextStep = z.infer<typeof nextStepSchema>;

export interface NextStepFacts {
  /** The call of the board's newest round, and when that was (UTC, ISO 8601); null where it was never probed. */
  latest: { call: Call; at: string } | null;
  /** Null where none can be made. */
  forecast: Pick<Forecast, 'now' | 'places' | 'nextProbe'> | null;
  /** Why there is none. */
  whyNot?: Message | null;
  /** UTC, ms: the end of the day that the forecast calls today. */
  nowMs: number;
}

type Probed = NonNullable<NextStepFacts['latest']>;
type Ahead = NonNullable<NextStepFacts['forecast']>;

export function nextStepOf({ latest, forecast, whyNot = null, nowMs }: NextStepFacts): NextStep {
  if (latest === null || latest.call === 'probe-again' || latest.call === 'too-dry' || forecast === null)
    return nextStepByCall(latest?.call ?? null, whyNot);
  const recheck = whereForecastDisagrees(latest, forecast, nowMs);
  if (recheck) return recheck;
  if (latest.call === 'keep-drying') return whileDrying(latest, forecast, nowMs);
  if (latest.call === 'bring-in') return move(forecast, null);
  return {
    step: 'label',
    due: null,
    why: disagrees(latest, forecast) ? callAndForecast('still-ready', latest, nowMs) : null,
  };
}

/**
 * Where there is no forecast, or none is needed.
 * @param call    null where it was never probed
 * @param whyNot  why there is no forecast; null where that is not known
 */
export function nextStepByCall(call: Call | null, whyNot: Message | null = null): NextStep {
  switch (call) {
    case null:
      return probe('first-round', message('next-step.not-probed'));
    case 'probe-again':
      return probe('probe-again', null);
    case 'bring-in':
      return move(null, null);
    case 'too-dry':
      return wait(null, message('next-step.too-dry'));
    case 'keep-drying':
      return wait(null, whyNot ?? message('next-step.no-forecast'));
    case 'ready':
      return { step: 'label', due: null, why: null };
  }
}

const probe = (due: Exclude<DueKind, 'bring-in' | 'move-later'>, why: Message | null): NextStep => ({
  step: 'probe',
  due,
  why,
});
const wait = (probeMs: number | null, why: Message): NextStep => ({ step: 'wait', due: null, probeMs, why });
const waitUntil = (probeMs: number, why: Message): NextStep =>
  wait(probeMs, message('next-step.probe-on', { probeOn: new Date(probeMs).toISOString(), why }));
/** To the place that is first to make it ready; where the forecast knows none, that is said. */
function move(forecast: Ahead | null, why: Message | null): NextStep {
  const placeId = (forecast && bestElsewhere(forecast.places)?.placeId) ?? null;
  const noneIsDry = forecast !== null && placeId === null;
  return {
    step: 'move',
    due: 'bring-in',
    placeId,
    why: why ?? (noneIsDry ? message('next-step.no-place-dry-enough') : null),
  };
}
const isDue = ({ nextProbe: { atMs } }: Ahead, nowMs: number): boolean =>
  atMs !== null && atMs - nowMs < DAY_MS;

/** What today's forecast says against the call of an earlier day, both with their days; null where it says nothing. */
function whereForecastDisagrees({ call, at }: Probed, forecast: Ahead, nowMs: number): NextStep | null {
  if (!disagrees({ call, at }, forecast)) return null;
  const due = call === 'ready' ? 'may-not-be-ready' : 'should-be-ready';
  const isYoung = nowMs - Date.parse(at) < YOUNG_DAYS * DAY_MS;
  if (call === 'ready' ? isYoung : !isDue(forecast, nowMs)) return null;
  return probe(due, callAndForecast(due, { call, at }, nowMs));
}

const disagrees = ({ call }: Probed, { now }: Ahead): boolean =>
  (call === 'ready') !== now.probabilityReady >= 0.5;

const callAndForecast = (
  which: 'still-ready' | 'still-not-ready' | 'should-be-ready' | 'may-not-be-ready',
  { call, at }: Probed,
  nowMs: number,
): Message =>
  message(`next-step.${which}`, {
    callName: message(`call.${call}`),
    probedOn: at,
    todayOn: new Date(nowMs).toISOString(),
  });

function whileDrying(probed: Probed, forecast: Ahead, nowMs: number): NextStep {
  const { now, places, nextProbe } = forecast;
  const isDryEnough = now.average.median <= DRY_ENOUGH_FOR_INDOORS_PCT;
  // Read so lately that the forecast asks for no reading, and called wet all the same: the readings hold for a week.
  if (disagrees(probed, forecast))
    return waitUntil(
      Math.max(nextProbe.atMs ?? 0, Date.parse(probed.at) + YOUNG_DAYS * DAY_MS),
      callAndForecast('still-not-ready', probed, nowMs),
    );
  if (nextProbe.atMs === null)
    return isDryEnough
      ? move(forecast, nextProbe.why.code === 'forecast.probe.never' ? null : nextProbe.why)
      : {
          step: 'wait',
          due: 'move-later',
          probeMs: null,
          why: message('next-step.too-wet-to-move', { dryEnoughLimitPct: DRY_ENOUGH_FOR_INDOORS_PCT }),
        };
  if (isDryEnough && places[0]?.reach.likelyMs == null && bestElsewhere(places)) return move(forecast, null);
  if (!isDue(forecast, nowMs)) return waitUntil(nextProbe.atMs, nextProbe.why);
  return nextProbe.why.code === 'forecast.probe.learns-rate'
    ? probe('learns-rate', message('next-step.learns-rate-now'))
    : probe('could-change-call', message('forecast.probe.decides'));
}
