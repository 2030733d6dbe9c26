import { setImmediate } from 'node:timers/promises';
import type { Place } from '../../../shared-core/contract/yard.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import {
  eachMeasuredDay,
  type LoggedAir,
  type LogUse,
  type MeasuredDay,
  type MeasuredMonths,
  type MeasuredStretch,
  measuredMonths,
  measuredStretches,
} from '../../../shared-core/wood/climate/measured-air.ts';
import type { MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import { asLog, type RowAtPlace } from '../../store/air-log-table.ts';
import type { YardReader } from '../../store/yard.ts';
import type { QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';

/** The air of a place as it was measured; without days where nothing was. */
export interface MeasuredPlace extends MeasuredMonths {
  /** Rising in time. */
  days: readonly MeasuredDay[];
  stretches: MeasuredStretch[];
}

/** What is known of a place's log, and of which state of the yard. */
interface Known extends MeasuredPlace {
  stamp: string;
  newestId: number;
  ofAir: MonthlyAir;
  kind: Place['kind'];
}

/**
 * A new value can change what is said of this many days before its own: a run of values that are not right becomes long
 * enough to show. What a log begins with can be wrong for longer, where that is a sensor on its way back.
 */
const [CHANGED_DAYS, LEAD_DAYS] = [4, 7];

/** Reading so many values, or working out so many days, takes some 5 ms at first, when everything takes long. */
const [VALUES_A_SLICE, DAYS_A_SLICE] = [500, 25];

type AirOf = Pick<Place, 'id' | 'air' | 'kind'>;

/** By the file, as a query and a command read it over their own connections. */
const known = new WeakMap<object, Map<number, Known>>();

/** Whether the air goes by day and night there. */
const isOpenAir = (kind: Place['kind']): boolean => kind === 'outdoors' || kind === 'open-shed';

/** What of a place's log can be used. @param until  the end of today */
export const logUse = (
  { airLogs }: Pick<YardReader, 'airLogs'>,
  { id, kind }: Pick<Place, 'id' | 'kind'>,
  until: string,
): LogUse => ({
  isOpen: isOpenAir(kind),
  untilMs: Date.parse(until),
  excluded: new Set(airLogs.excludedDays(id).map((day) => Date.parse(day))),
});

interface Asked {
  airLogs: YardReader['airLogs'];
  place: AirOf;
  until: string;
}

const knownOf = ({ airLogs, place }: Asked): Known | undefined => known.get(airLogs)?.get(place.id);

const stateOf = ({ airLogs, until }: Asked) => ({
  stamp: `${airLogs.stamp()}/${airLogs.isLater(until) ? until : ''}`,
  newestId: airLogs.newestId(),
});

/** Whether only rows came since. */
const isOf = (before: Known, stamp: string, { air, kind }: AirOf): boolean =>
  before.stamp === stamp && before.ofAir === air && before.kind === kind;

/** As it is known; null where something is to be read. */
function upToDate(asked: Asked): Known | null {
  const before = knownOf(asked);
  if (before === undefined) return null;
  const { stamp, newestId } = stateOf(asked);
  return before.newestId === newestId && isOf(before, stamp, asked.place) ? before : null;
}

/** Reads what came since, or everything, in slices: each `yield` ends one. */
function* reading(asked: Asked): Generator<void, Known> {
  const { airLogs, place, until } = asked;
  const before = knownOf(asked);
  // What comes between slices has no part in these.
  const { stamp, newestId } = stateOf(asked);
  const earliest = before && isOf(before, stamp, place) ? airLogs.earliestSince(before.newestId) : null;
  const changedMs =
    before === undefined || earliest === null
      ? null
      : startOfDay(Date.parse(earliest)) - CHANGED_DAYS * DAY_MS;
  const log = yield* logOf(asked, changedMs === null ? null : changedMs - LEAD_DAYS * DAY_MS);
  const read: MeasuredDay[] = [];
  for (const day of eachMeasuredDay(log, place.air, logUse(asked, place, until))) {
    read.push(day);
    if (read.length % DAYS_A_SLICE === 0) yield;
  }
  const days =
    changedMs === null || before === undefined
      ? read
      : [
          ...before.days.filter(({ dayMs }) => dayMs < changedMs),
          ...read.filter(({ dayMs }) => dayMs >= changedMs),
        ];
  const months = measuredMonths(days, place.air, isOpenAir(place.kind));
  const made: Known = {
    days,
    stretches: measuredStretches(days, place.air),
    ...(months ?? { air: place.air, shiftPct: 0 }),
    stamp,
    newestId,
    ofAir: place.air,
    kind: place.kind,
  };
  const ofYard = known.get(airLogs) ?? new Map<number, Known>();
  known.set(airLogs, ofYard.set(place.id, made));
  return made;
}

/** @param fromMs  null for all of the log */
function* logOf({ airLogs, place }: Asked, fromMs: number | null): Generator<void, LoggedAir[]> {
  const bounds = airLogs.bounds();
  if (bounds === null) return [];
  const rows: RowAtPlace[][] = [];
  const lastMs = Date.parse(bounds.last);
  let days = 1;
  for (let startMs = fromMs ?? startOfDay(Date.parse(bounds.first)); startMs <= lastMs; ) {
    const endMs = Math.min(startMs + days * DAY_MS, lastMs + 1);
    const part = airLogs.partAtPlace(place.id, isoOf(startMs), isoOf(endMs - 1));
    rows.push(part);
    days = Math.max(1, Math.min(2 * days, Math.floor((days * VALUES_A_SLICE) / Math.max(1, part.length))));
    startMs = endMs;
    yield;
  }
  return asLog(rows.flat());
}

/**
 * The air of a place as it was measured there. A year of hours is read once; then what came since.
 * @param now  what was logged for a later day, by a clock that was ahead, does not count
 */
export function measuredAt(
  { airLogs }: Pick<YardReader, 'airLogs'>,
  place: AirOf,
  now: string,
): MeasuredPlace {
  const asked = { airLogs, place, until: endOfDay(now) };
  const before = upToDate(asked);
  if (before !== null) return before;
  const slices = reading(asked);
  for (;;) {
    const came = slices.next();
    if (came.done) return came.value;
  }
}

/** Reads the logs of all places that are open, so that `measuredAt` finds them read: each `yield` ends a slice. */
export function* readingMeasured({ airLogs, places }: YardReader, now: string): Generator<void, void> {
  for (const place of places.list()) {
    const asked = { airLogs, place, until: endOfDay(now) };
    while (upToDate(asked) === null) yield* reading(asked);
  }
}

/** Does that while all else has its turn. @throws Refusal where no yard is open any more */
export async function readMeasured(context: QueryContext): Promise<void> {
  const yard = context.yard();
  for (const _ of readingMeasured(yard, context.now())) {
    await setImmediate();
    if (context.yard() !== yard) return;
  }
}

const startOfDay = (atMs: number): number => Math.floor(atMs / DAY_MS) * DAY_MS;
