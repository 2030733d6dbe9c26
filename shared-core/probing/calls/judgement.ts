/**
 * Everything that is stated of one board today: its call with the reasons, its average, the lowest EMC where it is, when
 * it is ready where, and what to do next. Board page, lists, stack, plan, labels and the form for moves take it from here,
 * so that no two of them contradict each other (`tests/unit/probing/one-story.test.ts`).
 */
import { z } from 'zod';
import { DAY_MS, instantSchema, isoOf } from '../../time.ts';
import type { Forecast, PlaceForecast } from '../../wood/drying/forecast.ts';
import { type Message, message, messageSchema, type PctRange, type When } from '../../words/message.ts';
import type { AverageIs } from '../readings/estimate.ts';
import { type Call, callSchema, type SpotsRead } from './assessment.ts';
import {
  callHere,
  type Found,
  isTooWet,
  isTooWetForIndoors,
  type LowestEmc,
  lowestEmcSchema,
} from './call-here.ts';
import { type FoundToday, foundToday } from './call-today.ts';
import { NEVER_QUITE_PCT } from './never-quite.ts';
import {
  isReadyInDoubt,
  isYoung,
  type NextStepFacts,
  nextStepByCall,
  nextStepOf,
  nextStepSchema,
} from './next-step.ts';
import { type DayOf, entersAtMs, isReached, type Ready, readyIn, readySchema, whenOf } from './ready-in.ts';
import { bestOf, driestOf, isHeated, type Today, underCover } from './where-to.ts';

/** The average that is stated, and that weight and size follow from: as it was read last, or as the forecast has it. */
const averageSchema = z.object({
  averagePct: z.number(),
  /** When it was read, UTC; null where it is the forecast's, for today. */
  readOn: instantSchema.nullable(),
  /** Of that day, by its shell alone. */
  isEstimated: z.boolean().default(false),
});
export type KnownAverage = z.infer<typeof averageSchema>;

export const judgementSchema = z.object({
  /** Null where it was never probed, or too few of its spots are read. */
  call: callSchema.nullable(),
  /** The first decides, or says how many spots are read; none where it was never probed. */
  reasons: z.array(messageSchema),
  /** Null where nothing is known of it. */
  average: averageSchema.nullable(),
  /** Where it is; null where its air is not known. */
  lowestEmc: lowestEmcSchema.nullable(),
  /** Where it is, then the other places, in the order of the forecast; none without one. Null: no day is stated. */
  places: z.array(z.object({ placeId: z.number().int(), ready: readySchema.nullable() })),
  /** The other place where it is ready first, if that gains enough to move it there. */
  bestPlaceId: z.number().int().nullable(),
  next: nextStepSchema,
});
export type Judgement = z.infer<typeof judgementSchema>;

export interface JudgedPlace {
  placeId: number;
  name: string;
  kind: 'outdoors' | 'open-shed' | 'shop' | 'heated-room';
  /** Null where its air is not known. */
  lowestEmc: LowestEmc | null;
}

/** As much of a forecast as a judgement is made from. */
export type Ahead = Pick<Forecast, 'nextProbe'> & {
  now: Pick<Forecast['now'], 'average' | 'core' | 'probabilityReady'>;
  places: readonly Pick<PlaceForecast, 'reach' | 'best' | 'band'>[];
};

export interface JudgementFacts {
  /** Of the newest round that makes the call: a half-probed one does not replace a full one. Null where it was never probed. */
  found: Found | null;
  target: PctRange;
  /** Checks spoil it: not firewood. */
  mayCheck: boolean;
  /** Where it is, then the others, in the order of `forecast.places`. */
  places: readonly [JudgedPlace, ...JudgedPlace[]];
  /** The newest; null where none can be made, or none was made yet. */
  forecast: Ahead | null;
  /** Why there is none; null where that is not known. */
  whyNot: Message | null;
  /** UTC, ms: the end of the day that the forecast calls today. */
  nowMs: number;
  dayOf: DayOf;
}

export function judge(facts: JudgementFacts): Judgement {
  const { target, places, forecast, whyNot, nowMs } = facts;
  const [here] = places;
  const expected = forecast === null ? [] : expectedIn(facts, forecast);
  const getsThere = forecast === null ? null : isReached(expected[0]);
  const carriedOn =
    facts.found && forecast && foundToday(facts.found, forecast.now, target, getsThere, nowMs);
  const found = carriedOn?.found ?? facts.found;
  const today = wettestToday(facts);
  const byPlace =
    found &&
    callHere(found, { placeName: here.name, lowestEmc: here.lowestEmc, target, getsThere, ...today });
  const isStuck = found !== null && isTooWet(found, target) && getsThere === false;
  const bestIfStuck = forecast && isStuck ? bestOf(facts, forecast, expected, today, isStuck) : null;
  const driest = forecast && isStuck && bestIfStuck === null ? driestOf(facts, forecast, today) : null;
  // No air is drier than that of the room it is in.
  const isInAlready = driest?.placeId === here.placeId && isHeated(here);
  const call = isInAlready ? 'keep-drying' : (byPlace?.call ?? null);
  const called = found && call ? { call, at: found.at } : null;
  const isInDoubt = called !== null && forecast !== null && isReadyInDoubt(called, forecast, nowMs);
  // What was read and the forecast differ: no day goes with both.
  const isDryByReadingsOnly =
    called?.call === 'too-dry' && forecast !== null && forecast.now.average.median >= target.minPct;
  const isToGoBack =
    facts.mayCheck &&
    call === 'keep-drying' &&
    isHeated(here) &&
    isTooWetForIndoors(today.averagePct, today.corePct);
  const mayMove = !isDryByReadingsOnly && !isToGoBack && call !== 'ready' && call !== 'probe-again';
  const bestPlaceId = forecast && mayMove ? bestOf(facts, forecast, expected, today, isStuck) : null;
  const lastGain = forecast && isStuck && bestPlaceId === null ? lastGainHere(facts, forecast) : [];
  const next = nextStepOf({
    called,
    spotsRead: found?.spotsRead ?? null,
    isReadThen: found !== null && !isYoung(found, nowMs),
    forecast,
    whyNot,
    getsThere,
    isDryEnough: found === null || !isTooWet({ ...found, call: 'keep-drying' }, target),
    bestPlaceId,
    regain:
      isDryByReadingsOnly || forecast === null ? null : regainIn(facts, forecast, expected, bestPlaceId),
    driest: driest && {
      ...driest,
      isHere: driest.placeId === here.placeId,
      isIndoors: isHeated(driest),
      target,
    },
    backTo: isToGoBack ? { placeId: underCover(places)?.placeId ?? null } : null,
    nowMs,
  });
  // Readings could not tell more on their day; a board that has dried since they can.
  const isStillSo = ({ code }: Message): boolean =>
    code === 'call.dry-enough-to-bring-in'
      ? call === 'bring-in'
      : code !== 'call.more-will-not-help' ||
        // It is to be probed again once it has taken up moisture.
        (called !== null && called.call !== 'too-dry' && next.step !== 'probe' && isYoung(called, nowMs));
  return {
    call: called?.call ?? null,
    reasons: [...(byPlace?.reasons ?? []), ...lastGain].filter(isStillSo),
    average: averageOf(facts, carriedOn),
    lowestEmc: here.lowestEmc,
    places: expected.map((ready, index) => ({
      placeId: places[index]!.placeId,
      ready:
        (index === 0 && isInDoubt) || isDryByReadingsOnly
          ? null
          : stated(ready, index === 0, called?.call ?? null),
    })),
    bestPlaceId,
    next,
  };
}

/**
 * As wet as it can be today by its forecast or, for as long as no forecast overrules them, by its readings: it must not
 * check. The average is 0, and the core null, where nothing is known of it.
 */
function wettestToday({ found, forecast, nowMs }: JudgementFacts): Today {
  const now = forecast?.now;
  const read = found !== null && (!now || isYoung(found, nowMs)) ? found : null;
  const cores = [now?.core.median, read?.corePct].filter((pct) => pct != null);
  return {
    averagePct: Math.max(now?.average.median ?? 0, read?.averagePct ?? 0),
    corePct: cores.length === 0 ? null : Math.max(...cores),
  };
}

/** What the forecast alone says of each place. */
function expectedIn({ places, target, nowMs, dayOf }: JudgementFacts, forecast: Ahead): Ready[] {
  return forecast.places.map((place, index) => {
    if (index === 0 && forecast.now.probabilityReady >= 0.5) return { kind: 'any-day' };
    const emcPct = places[index]!.lowestEmc?.emcPct ?? null;
    return readyIn(place, emcPct, forecast.now.average.median, target, nowMs, dayOf);
  });
}

/**
 * What is stated of a place beside the call: a board called ready is so now, and one to be probed again has no day yet. One
 * that is not probed, or only in part, has the day of its forecast, but nobody knows that it is about there.
 */
function stated(ready: Ready, isHere: boolean, call: Judgement['call']): Ready | null {
  if (call === 'probe-again' || (call === null && ready.kind === 'any-day')) return null;
  return call === 'ready' && (isHere || ready.kind === 'any-day') ? { kind: 'now' } : ready;
}

const averageOf = ({ found, forecast }: JudgementFacts, carriedOn: FoundToday | null): Judgement['average'] =>
  (carriedOn?.isByForecast ? null : averageRead(found)) ??
  (forecast && { averagePct: forecast.now.average.median, readOn: null, isEstimated: false });

const averageRead = (
  found: Pick<Found, 'at' | 'averagePct' | 'averageIs' | 'isQuestionable'> | null,
): Judgement['average'] =>
  found === null ||
  found.averagePct === null ||
  found.averageIs === 'unknown' ||
  found.averageIs === 'above' ||
  found.isQuestionable
    ? null
    : {
        averagePct: found.averagePct,
        readOn: found.at,
        isEstimated: found.averageIs === 'estimated',
      };

/** Where a board that is too dry is to take up moisture, and until when: where it is, if that air does it. */
function regainIn(
  { places, target }: JudgementFacts,
  forecast: Ahead,
  [here]: readonly Ready[],
  bestPlaceId: number | null,
): NextStepFacts['regain'] {
  // One that is too dry comes into its target before it leaves that.
  const isHere = isReached(here) || here?.kind === 'leaves';
  const index = isHere ? 0 : places.findIndex(({ placeId }) => placeId === bestPlaceId);
  const ahead = forecast.places[index];
  if (ahead === undefined) return null;
  const entersMs = ahead.reach.likelyMs ?? entersAtMs(ahead, forecast.now.average.median, target);
  return { placeName: places[index]!.name, isHere, entersMs };
}

/** So near the lowest EMC of a place a board is about as dry as the place makes it, % MC. Common practice, no source. */
const NEAR_EMC_PCT = 2;

/** From when on it is as dry as the place ever makes it, to a margin not worth waiting for; none where that is now. */
function lastGainHere({ places: [here], nowMs }: JudgementFacts, forecast: Ahead): Message[] {
  const { atMs, average } = forecast.places[0]!.band;
  const lowest = Math.min(...average.map(({ median }) => median));
  // A slow board's forecast ends long before the place has dried it.
  if (here.lowestEmc !== null && lowest > here.lowestEmc.emcPct + NEAR_EMC_PCT) return [];
  const lastMs = atMs[average.findIndex(({ median }) => median <= lowest + NEVER_QUITE_PCT)]!;
  return lastMs - nowMs < DAY_MS
    ? []
    : [
        message('call.last-gain', {
          placeName: here.name,
          gainsUntilOn: isoOf(lastMs),
          gainPoints: NEVER_QUITE_PCT,
        }),
      ];
}

/** What is stated until a forecast says more, and where none can be made. @param found null where it was never probed */
export function judgeByFinding(
  found: {
    call: Call | null;
    reason: Message;
    at: string;
    averagePct: number | null;
    averageIs: AverageIs;
    isQuestionable: boolean;
    spotsRead: SpotsRead | null;
  } | null,
): Judgement {
  return {
    call: found?.call ?? null,
    reasons: found === null ? [] : [found.reason],
    average: averageRead(found),
    lowestEmc: null,
    places: [],
    bestPlaceId: null,
    next: nextStepByCall(found?.call ?? null, found?.spotsRead ?? null),
  };
}

/** The day on which a board is likely ready, as lists show and sort it: where it is, else where it is ready first. */
export function readyOf({
  places: [here, ...others],
  bestPlaceId,
}: Pick<Judgement, 'places' | 'bestPlaceId'>): { when: When; placeId: number | null } | null {
  const whenHere = whenOf(here?.ready ?? null);
  if (whenHere !== null) return { when: whenHere, placeId: null };
  if (here?.ready?.kind === 'any-day') return null;
  const when = whenOf(others.find(({ placeId }) => placeId === bestPlaceId)?.ready ?? null);
  return when && { when, placeId: bestPlaceId };
}

/** What the latest round found, with the call of today and what decides it. */
export const asJudged = <F extends { call: Call | null; reason: Message }>(
  finding: F,
  { call, reasons: [reason] }: Pick<Judgement, 'call' | 'reasons'>,
): F => ({ ...finding, call: call ?? finding.call, reason: reason ?? finding.reason });
