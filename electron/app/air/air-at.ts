import type { Place } from '../../../shared-core/contract/yard.ts';
import { DAY_MS, isoOf } from '../../../shared-core/time.ts';
import { airTempAt } from '../../../shared-core/wood/climate/measured-air.ts';
import { asLog } from '../../store/air-log-table.ts';
import type { YardReader } from '../../store/yard.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import { logUse } from './measured-places.ts';

/** So much of the log before an instant tells whether its sensor is stuck, or was carried elsewhere. */
const LEAD_MS = 4 * DAY_MS;
const MINUTE_MS = 60_000;
/** More are forgotten: those of a round are asked for again and again. */
const MOST_KNOWN = 500;

/** By the file and the state of its logs: a lively meter asks fifty times a second. */
const known = new WeakMap<object, { state: string; temps: Map<string, number | null> }>();

/**
 * How warm the air of a place was at an instant, by what was measured there, °C; null where nothing tells.
 * @param at  to the minute
 */
export function measuredTempC(
  { airLogs }: Pick<YardReader, 'airLogs'>,
  place: Pick<Place, 'id' | 'air' | 'kind'>,
  at: string,
): number | null {
  const newestId = airLogs.newestId();
  if (newestId === 0) return null;
  const state = `${newestId}/${airLogs.stamp()}`;
  const before = known.get(airLogs);
  const temps = before?.state === state && before.temps.size < MOST_KNOWN ? before.temps : new Map();
  if (temps !== before?.temps) known.set(airLogs, { state, temps });
  const atMs = Math.floor(Date.parse(at) / MINUTE_MS) * MINUTE_MS;
  const key = `${place.id}/${atMs}/${JSON.stringify(place.air)}`;
  const found = temps.get(key);
  if (found !== undefined) return found;
  const last = endOfDay(at);
  const day = new Date(at);
  day.setHours(0, 0, 0, 0);
  const log = asLog(airLogs.partAtPlace(place.id, isoOf(atMs - LEAD_MS), last));
  const tempC = airTempAt(log, place.air, logUse({ airLogs }, place, last), {
    atMs,
    dayFromMs: day.getTime(),
    dayToMs: Date.parse(last),
  });
  temps.set(key, tempC);
  return tempC;
}
