/** The one thing to do with a board next, by its call and its forecast. */
import type { Forecast } from '../../wood/drying/forecast.ts';
import { type Message, message } from '../../words/message.ts';
import type { Call } from './assessment.ts';
import { bestElsewhere, whenToProbe } from './forecast-reasons.ts';
import { probeWhyOf } from './outlook.ts';

/** Wetter boards dry outdoors first, % MC: in a heated room they may check. Common practice, no source. */
const DRY_ENOUGH_FOR_INDOORS_PCT = 20;

export type NextStep = {
  /** Beside its button; null where the call's own sentence is reason enough. */
  why: Message | null;
} & (
  | { step: 'probe' | 'probe-again' | 'label' }
  /** `placeId` is null where the forecast names no place that is dry enough. */
  | { step: 'move'; placeId: number | null }
);

export interface NextStepFacts {
  /** The call of the board's newest round, and when that was (UTC, ISO 8601); null where it was never probed. */
  latest: { call: Call; at: string } | null;
  /** Null where none can be made. */
  forecast: Pick<Forecast, 'now' | 'places' | 'nextProbe'> | null;
  /** UTC, ms: the instant that the forecast calls today. */
  nowMs: number;
}

export function nextStepOf({ latest, forecast, nowMs }: NextStepFacts): NextStep {
  if (latest === null) return { step: 'probe', why: message('next-step.not-probed') };
  const { call, at } = latest;
  if (call === 'probe-again') return { step: 'probe-again', why: null };
  const otherwise = forecast && otherwiseToday(call, at, forecast, nowMs);
  if (otherwise) return { step: 'probe-again', why: otherwise };
  if (call === 'ready') return { step: 'label', why: null };
  const best = forecast && bestElsewhere(forecast.places);
  if (call === 'bring-in') return { step: 'move', placeId: best?.placeId ?? null, why: null };
  if (best && forecast && isStuck(forecast)) {
    const isSaid = forecast.nextProbe.atMs === null;
    const why = isSaid ? whenToProbe(forecast, nowMs) : message('next-step.not-here');
    return { step: 'move', placeId: best.placeId, why };
  }
  return { step: 'probe-again', why: forecast && whenToProbe(forecast, nowMs) };
}

/** What today's forecast says against the call of an earlier day, both with their days; null where it says nothing. */
function otherwiseToday(
  call: Call,
  at: string,
  forecast: Pick<Forecast, 'now' | 'nextProbe'>,
  nowMs: number,
): Message | null {
  const which = probeWhyOf(forecast, call, nowMs);
  if (which === null || which === 'could-change-call') return null;
  return message(`next-step.${which}`, {
    callName: message(`call.${call}`),
    probedOn: at,
    todayOn: new Date(nowMs).toISOString(),
  });
}

/** Whether it is dry enough to move indoors, and less likely than not to get to its target where it is. */
const isStuck = ({ now, places: [here] }: Pick<Forecast, 'now' | 'places'>): boolean =>
  here?.reach.likelyMs == null && now.average.median <= DRY_ENOUGH_FOR_INDOORS_PCT;
