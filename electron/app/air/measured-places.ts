import type { Place } from '../../../shared-core/contract/yard.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import {
  type LogUse,
  type MeasuredDay,
  type MeasuredMonths,
  type MeasuredStretch,
  measuredDays,
  measuredMonths,
  measuredStretches,
} from '../../../shared-core/wood/climate/measured-air.ts';
import type { MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import type { YardReader } from '../../store/yard.ts';
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

/** A sensor that is stuck or wet shows within some days. */
const LOOK_BACK_MS = 5 * DAY_MS;

type AirOf = Pick<Place, 'id' | 'air' | 'kind'>;

/** By the file, as a query and a command read it over their own connections. */
const known = new WeakMap<object, Map<number, Known>>();

/** Whether the air goes by day and night there. */
const isOpenAir = (kind: Place['kind']): boolean => kind === 'outdoors' || kind === 'open-shed';

/** What of a place's log can be used. @param until  the end of today: what is later was logged by a clock that was ahead */
export const logUse = ({ kind }: Pick<Place, 'kind'>, until: string): LogUse => ({
  isOpen: isOpenAir(kind),
  untilMs: Date.parse(until),
});

/**
 * The air of a place as it was measured there. A year of hours is read once; then what came since.
 * @param now  what was logged for a later day, by a clock that was ahead, does not count
 */
export function measuredAt(
  { airLogs }: Pick<YardReader, 'airLogs'>,
  place: AirOf,
  now: string,
): MeasuredPlace {
  const ofYard = known.get(airLogs) ?? new Map<number, Known>();
  known.set(airLogs, ofYard);
  const before = ofYard.get(place.id);
  const until = endOfDay(now);
  const stamp = `${airLogs.stamp()}/${airLogs.isLater(until) ? until : ''}`;
  const newestId = airLogs.newestId();
  const isSame = before?.stamp === stamp && before.ofAir === place.air && before.kind === place.kind;
  if (before && isSame && before.newestId === newestId) return before;
  const earliest = before && isSame ? airLogs.earliestSince(before.newestId) : null;
  const fromMs = earliest === null ? null : startOfDay(Date.parse(earliest) - LOOK_BACK_MS);
  const read = measuredDays(
    airLogs.atPlace(place.id, fromMs === null ? '' : isoOf(fromMs)),
    place.air,
    logUse(place, until),
  );
  // Of the first days that were read again, what is before them is not known.
  const sureMs = fromMs === null ? null : fromMs + LOOK_BACK_MS - DAY_MS;
  const days =
    sureMs === null || before === undefined
      ? read
      : [
          ...before.days.filter(({ dayMs }) => dayMs < sureMs),
          ...read.filter(({ dayMs }) => dayMs >= sureMs),
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
  ofYard.set(place.id, made);
  return made;
}

const startOfDay = (atMs: number): number => Math.floor(atMs / DAY_MS) * DAY_MS;
