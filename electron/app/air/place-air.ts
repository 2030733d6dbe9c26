import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { DAY_MS, HOUR_MS, isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
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
      const shown = days.slice(-MOST_DAYS_SHOWN);
      const used = days.filter(({ doubt }) => doubt === null);
      const [first] = used;
      const last = yard.airLogs.newestAt(placeId, endOfDay(context.now()));
      return {
        days: shown,
        typed: (shown[0] ? yard.airLogs.typedAt(placeId, isoOf(shown[0].dayMs)) : []).map(
          ({ id, atMs, tempC, rh, isOutdated }) => ({ id, at: isoOf(atMs), tempC, rh, isOutdated }),
        ),
        from: first ? isoOf(first.dayMs + DAY_MS / 2) : null,
        usedDays: used.length,
        last: last ? { ...last, isOfDay: yard.airLogs.isTyped({ placeId, ...last }) } : null,
        shiftPct,
      };
    },
  }) satisfies Partial<Queries>;

export function placeAirCommands(context: AppContext, judging: Pick<Judging, 'judgeAgain'>) {
  /** Readings of wood whose temperature nobody measured are corrected by this air. */
  const judgeAt = (placeId: number): void => judging.judgeAgain(context.yard().moves.boardsEverAt(placeId));

  /** @param instead  the row that it is another value of; null: it is new */
  function save({ placeId, measuredOn, tempC, rh, isReplacing }: Typed, instead: number | null): void {
    const { airLogs } = context.yard();
    const { name: placeName } = openPlace(context, placeId);
    const startMs = startOfDay(measuredOn);
    if (startMs > Date.parse(context.now())) throw new Refusal(message('refusal.air-later'));
    const others = airLogs
      .typedAt(placeId, isoOf(startMs))
      .filter(({ id, atMs }) => atMs < nextDay(startMs) && id !== instead);
    const [other] = others;
    if (others.some((each) => each.tempC === tempC && each.rh === rh))
      throw new Refusal(message('refusal.air-known', { placeName, measuredOn }));
    if (other && !isReplacing)
      throw new Refusal(
        message('refusal.air-other', {
          measuredOn,
          airTempC: other.tempC,
          humidityRhPct: 100 * other.rh,
        }),
      );
    for (const { id } of others) airLogs.drop(placeId, id);
    if (instead !== null) airLogs.drop(placeId, instead);
    airLogs.add({
      placeId,
      at: instantOfAir({ day: measuredOn, minutes: null }),
      tempC,
      rh,
      sensorId: null,
    });
    judgeAt(placeId);
  }

  const typedRow = (id: number) => orRefuse(context.yard().airLogs.typed(id), 'air');
  /** Measured days from the first to the last that are excluded, or not, as they are asked for. */
  function daysIn({ placeId, fromOn, toOn }: RequestInput<'air.exclude'>, isExcluded: boolean): string[] {
    const yard = context.yard();
    const { days } = measuredAt(yard, openPlace(context, placeId), context.now());
    const excluded = new Set(yard.airLogs.excludedDays(placeId));
    // What was typed is edited or deleted instead.
    const typed = yard.airLogs.typedAt(placeId, `${fromOn}T00:00`);
    const ofDay = (day: string) => typed.filter(({ atMs }) => utcDay(atMs) === day).length;
    const found = days
      .filter(({ dayMs, values }) => values > ofDay(utcDay(dayMs)))
      .map(({ dayMs }) => utcDay(dayMs))
      .filter((day) => day >= fromOn && day <= toOn && excluded.has(day) === isExcluded);
    if (found.length === 0) throw new Refusal(message('refusal.air-no-days'));
    return found;
  }

  return {
    'air.type': (typed) => {
      save(typed, null);
      return { act: context.yard().acts.now() };
    },
    'air.edit': ({ id, ...typed }) => {
      save({ ...typed, placeId: typedRow(id).placeId }, id);
      return { act: context.yard().acts.now() };
    },
    'air.delete': ({ id }) => {
      const { acts, airLogs } = context.yard();
      const { placeId } = typedRow(id);
      airLogs.drop(placeId, id);
      judgeAt(placeId);
      return { act: acts.now() };
    },
    'air.exclude': (period) => {
      const { acts, airLogs } = context.yard();
      const days = daysIn(period, false);
      for (const day of days) airLogs.excludeDay(period.placeId, day);
      judgeAt(period.placeId);
      return { act: acts.now(), days: days.length };
    },
    'air.include': (period) => {
      const { acts, airLogs } = context.yard();
      const days = daysIn(period, true);
      for (const day of days) airLogs.includeDay(period.placeId, day);
      judgeAt(period.placeId);
      return { act: acts.now(), days: days.length };
    },
  } satisfies Partial<Commands>;
}

const utcDay = (atMs: number): string => isoOf(atMs).slice(0, 10);

type Typed = RequestInput<'air.type'>;

/** Local midnight of the day after. */
const nextDay = (startMs: number): number => Date.parse(endOfDay(isoOf(startMs))) + 1;
