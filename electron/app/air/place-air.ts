import { Refusal } from '../../../shared-core/contract/answer.ts';
import { DAY_MS, HOUR_MS, isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands, Queries } from '../handlers.ts';
import { startOfDay } from '../stock/board-days.ts';
import { openPlace } from '../stock/open-ones.ts';
import { measuredAt, readMeasured } from './measured-places.ts';

/** A chart shows no more. */
const MOST_DAYS_SHOWN = 400;
/** A value of a day counts at this hour. */
const HOUR_OF_DAY = 12;

/** The instant that a value of a local day counts at. @param minutes  since midnight; null where only the day is known */
export function instantOfAir({ day, minutes }: { day: string; minutes: number | null }): string {
  if (minutes === null) return isoOf(startOfDay(day) + HOUR_OF_DAY * HOUR_MS);
  const local = new Date(`${day}T00:00`);
  local.setMinutes(minutes);
  return isoOf(local.getTime());
}

export const placeAirQueries = (context: QueryContext) =>
  ({
    'air.ofPlace': async ({ placeId }) => {
      await readMeasured(context);
      const yard = context.yard();
      const { days, shiftPct } = measuredAt(yard, orRefuse(yard.places.get(placeId), 'place'), context.now());
      const used = days.filter(({ doubt }) => doubt === null);
      const [first] = used;
      const last = yard.airLogs.newestAt(placeId, endOfDay(context.now()));
      return {
        days: days.slice(-MOST_DAYS_SHOWN),
        from: first ? isoOf(first.dayMs + DAY_MS / 2) : null,
        usedDays: used.length,
        last: last ? { ...last, isOfDay: yard.airLogs.isTyped({ placeId, ...last }) } : null,
        shiftPct,
      };
    },
  }) satisfies Partial<Queries>;

export const placeAirCommands = (context: AppContext) =>
  ({
    'air.type': ({ placeId, measuredOn, tempC, rh }) => {
      const { acts, airLogs } = context.yard();
      const { name: placeName } = openPlace(context, placeId);
      if (startOfDay(measuredOn) > Date.parse(context.now())) throw new Refusal(message('refusal.air-later'));
      const row = { placeId, at: instantOfAir({ day: measuredOn, minutes: null }), tempC, rh };
      if (airLogs.isTyped(row)) throw new Refusal(message('refusal.air-known', { placeName, measuredOn }));
      airLogs.add({ ...row, sensorId: null });
      return { act: acts.now() };
    },
  }) satisfies Partial<Commands>;
