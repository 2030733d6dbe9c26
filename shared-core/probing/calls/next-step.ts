/** The one thing to do with a board next, by its call and its forecast: part of its judgement (`judgement.ts`). */
import { z } from 'zod';
import { DAY_MS, isoOf } from '../../time.ts';
import type { Forecast } from '../../wood/drying/forecast.ts';
import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import { type Message, message, messageSchema, type PctRange } from '../../words/message.ts';
import type { Call, SpotsRead } from './assessment.ts';
import { limitsForIndoors } from './call-here.ts';

/** A forecast does not overrule a call that is younger than this. Common practice, no source. */
export const YOUNG_DAYS = 7;

/** What a board is due for today, the most urgent first. */
export const dueKindSchema = z.enum([
  /** Its heated room may check it. */
  'move-back',
  'first-round',
  'should-be-ready',
  'probe-again',
  'may-not-be-ready',
  'could-change-call',
  'learns-rate',
  'bring-in',
  /** The same where no place of the yard is drier by enough. */
  'add-place',
  /** It won't get there where it is, but has to dry there first. */
  'move-later',
]);
export type DueKind = z.infer<typeof dueKindSchema>;

const moveKinds = ['move-back', 'bring-in', 'add-place'] as const satisfies readonly DueKind[];
export type ProbeKind = Exclude<DueKind, (typeof moveKinds)[number] | 'move-later'>;

/** Beside its button; null where the call's own sentence is reason enough. */
const why = messageSchema.nullable();

export const nextStepSchema = z.discriminatedUnion('step', [
  z.object({ step: z.literal('probe'), due: dueKindSchema.exclude([...moveKinds, 'move-later']), why }),
  /** `placeId` is null where no place is known to be dry enough. */
  z.object({
    step: z.literal('move'),
    due: z.enum(moveKinds),
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

/** What a forecast has for today. */
interface Today {
  now: Pick<Forecast['now'], 'probabilityReady'>;
}

export interface NextStepFacts {
  /** As `callHere` has it, and when its readings were taken (UTC, ISO 8601); null where there is none. */
  called: { call: Call; at: string } | null;
  /** Of a board without a call; null where none of its spots is read. */
  spotsRead: SpotsRead | null;
  /** Whether these were read so long ago that nobody goes on with that round. */
  isReadThen: boolean;
  /** Null where none can be made. */
  forecast: (Today & Pick<Forecast, 'nextProbe'>) | null;
  /** Why there is none; null where that is not known. */
  whyNot: Message | null;
  /** By the forecast, whether it gets there where it is; null without one. */
  getsThere: boolean | null;
  /** Dry enough on average, by its readings: it is to equalize. */
  isDryEnough: boolean;
  /** Where it is ready first, if that gains enough to move it; null for nowhere. */
  bestPlaceId: number | null;
  /** Where a board that is too dry takes up enough moisture, and when by its forecast (UTC, ms); null where no forecast says so. */
  regain: { placeName: string; isHere: boolean; entersMs: number | null } | null;
  /** Where a board that no place gets to its target gets driest; null for any other. */
  driest: {
    placeId: number;
    name: string;
    driestPct: number;
    isHere: boolean;
    isIndoors: boolean;
    target: PctRange;
  } | null;
  /** Where a board may check as wet as it is in its heated room: the place to take it back to, null where none is known. */
  backTo: { placeId: number | null } | null;
  /** UTC, ms: the end of the day that the forecast calls today. */
  nowMs: number;
}

type Called = NonNullable<NextStepFacts['called']>;
type Ahead = NonNullable<NextStepFacts['forecast']>;

export function nextStepOf(facts: NextStepFacts): NextStep {
  const { called, spotsRead, forecast, whyNot, nowMs } = facts;
  switch (called?.call) {
    case undefined:
      return probe(
        'first-round',
        spotsRead === null
          ? message('next-step.not-probed')
          : facts.isReadThen
            ? message('next-step.half-probed-then')
            : message('next-step.half-probed', { spots: spotsRead.planned - spotsRead.read }),
      );
    case 'probe-again':
      return probe('probe-again', null);
    case 'too-dry':
      return takeUp(facts.regain, nowMs);
    case 'ready':
      return forecast === null ? label(null) : whileReady(called, forecast, nowMs);
    case 'bring-in':
      return bringIn(facts);
    case 'keep-drying':
      if (facts.backTo !== null) return moveBack(facts.backTo);
      return forecast === null
        ? wait(null, whyNot ?? message('next-step.no-forecast'))
        : whileDrying(called, forecast, facts);
  }
}

/** By its call alone. @param call null where there is none */
export const nextStepByCall = (call: Call | null, spotsRead: SpotsRead | null = null): NextStep =>
  nextStepOf({
    called: call && { call, at: '' },
    spotsRead,
    isReadThen: false,
    forecast: null,
    whyNot: null,
    getsThere: null,
    isDryEnough: false,
    bestPlaceId: null,
    regain: null,
    driest: null,
    backTo: null,
    nowMs: 0,
  });

function bringIn({ bestPlaceId, forecast, driest }: NextStepFacts): NextStep {
  const to = (placeId: number | null, why: Message | null, due: 'bring-in' | 'add-place' = 'bring-in') =>
    ({ step: 'move', due, placeId, why }) as const;
  if (bestPlaceId !== null || forecast === null) return to(bestPlaceId, null);
  return driest === null || driest.isHere
    ? to(null, message('next-step.no-place-dry-enough'), 'add-place')
    : to(driest.placeId, driestPlace(driest));
}

const driestPlace = ({
  name: placeName,
  driestPct,
  isHere,
  isIndoors,
  target: targetRange,
}: NonNullable<NextStepFacts['driest']>): Message =>
  message('next-step.driest-place', {
    placeName,
    driestPct,
    targetRange,
    isHere: isHere ? 'yes' : 'no',
    isIndoors: isIndoors ? 'yes' : 'no',
    isAtTarget: isShownAbove(driestPct, targetRange.maxPct) ? 'no' : 'yes',
  });

const moveBack = ({ placeId }: NonNullable<NextStepFacts['backTo']>): NextStep => ({
  step: 'move',
  due: 'move-back',
  placeId,
  why: message('next-step.back-under-cover', limitsForIndoors),
});

function takeUp(regain: NextStepFacts['regain'], nowMs: number): NextStep {
  if (regain === null) return wait(null, message('next-step.too-dry'));
  const { placeName, isHere, entersMs } = regain;
  const where = isHere ? ('here' as const) : ('there' as const);
  return entersMs === null || entersMs - nowMs < DAY_MS
    ? wait(null, message(`next-step.too-dry-${where}`, { placeName }))
    : wait(entersMs, message(`next-step.too-dry-${where}-until`, { placeName, probeOn: isoOf(entersMs) }));
}

const probe = (due: ProbeKind, why: Message | null): NextStep => ({
  step: 'probe',
  due,
  why,
});
const label = (why: Message | null): NextStep => ({ step: 'label', due: null, why });
const wait = (probeMs: number | null, why: Message): NextStep => ({ step: 'wait', due: null, probeMs, why });
const waitUntil = (probeMs: number, why: Message): NextStep =>
  wait(probeMs, message('next-step.probe-on', { probeOn: new Date(probeMs).toISOString(), why }));

/** Whether today's forecast has the board on the other side of ready than its call. */
const disagrees = (call: Call, { now }: Today): boolean => (call === 'ready') !== now.probabilityReady >= 0.5;

/** Readings this new are not overruled by a forecast. */
export const isYoung = ({ at }: Pick<Called, 'at'>, nowMs: number): boolean =>
  nowMs - Date.parse(at) < YOUNG_DAYS * DAY_MS;

/** Whether a board called ready may be so no longer: today's forecast says so, and its readings are not new. */
export const isReadyInDoubt = (called: Called, forecast: Today, nowMs: number): boolean =>
  called.call === 'ready' && disagrees(called.call, forecast) && !isYoung(called, nowMs);

const callAndForecast = (
  which: 'still-ready' | 'still-not-ready' | 'should-be-ready' | 'may-not-be-ready',
  { call, at }: Called,
  nowMs: number,
): Message =>
  message(`next-step.${which}`, {
    callName: message(`call.${call}`),
    probedOn: at,
    todayOn: new Date(nowMs).toISOString(),
  });

function whileReady(called: Called, forecast: Ahead, nowMs: number): NextStep {
  if (isReadyInDoubt(called, forecast, nowMs))
    return probe('may-not-be-ready', callAndForecast('may-not-be-ready', called, nowMs));
  return label(disagrees('ready', forecast) ? callAndForecast('still-ready', called, nowMs) : null);
}

function whileDrying(called: Called, forecast: Ahead, facts: NextStepFacts): NextStep {
  const { getsThere, isDryEnough, nowMs } = facts;
  const { nextProbe } = forecast;
  if (disagrees(called.call, forecast)) {
    const holdsUntilMs = Date.parse(called.at) + YOUNG_DAYS * DAY_MS;
    const againMs = Math.max(nextProbe.atMs ?? 0, holdsUntilMs);
    return againMs - nowMs < DAY_MS
      ? probe('should-be-ready', callAndForecast('should-be-ready', called, nowMs))
      : waitUntil(againMs, callAndForecast('still-not-ready', called, nowMs));
  }
  if (facts.driest?.isHere && facts.driest.isIndoors) return wait(null, driestPlace(facts.driest));
  if (getsThere === false && !isDryEnough)
    return {
      step: 'wait',
      due: 'move-later',
      probeMs: null,
      why: message('next-step.too-wet-to-move', limitsForIndoors),
    };
  if (nextProbe.atMs === null) return wait(null, message('next-step.equalize'));
  if (nextProbe.atMs - nowMs >= DAY_MS) return waitUntil(nextProbe.atMs, nextProbe.why);
  if (nextProbe.why.code === 'forecast.probe.tries-air') return probe('learns-rate', nextProbe.why);
  return nextProbe.why.code === 'forecast.probe.learns-rate'
    ? probe('learns-rate', message('next-step.learns-rate-now'))
    : probe('could-change-call', message('forecast.probe.decides'));
}
