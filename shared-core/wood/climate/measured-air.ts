/**
 * The air of a place as a hygrometer there had it: which values can be right, what they say of each day, and what wood
 * followed meanwhile. Where nothing was measured, the place's months hold.
 */
import { z } from 'zod';
import { DAY_MS, HOUR_MS } from '../../time.ts';
import { mean } from '../maths/mean.ts';
import { emcOfYear } from './climate.ts';
import { DAMPEST_RH } from './emc.ts';
import { followedEmcPct } from './followed-emc.ts';
import { airSdPct, type MonthlyAir } from './monthly-air.ts';
import { SEASON_SHARE, SWINGS_OUTDOORS } from './swings.ts';
import { withinYear } from './within-year.ts';

/** One value of a log. */
export interface LoggedAir {
  /** UTC, ms. */
  atMs: number;
  tempC: number;
  /** Fraction, 0 to 1. */
  rh: number;
  /** A person typed or imported it as that of its day; else it is one of a log. */
  isOfDay: boolean;
  /** One of a day for which a person saved another value later. That one counts. */
  isOutdated?: boolean;
}

/** Why values of a log are not used. */
export const airDoubtSchema = z.enum([
  'stuck',
  'saturated',
  'jump',
  'unlike',
  'part-of-day',
  'later',
  'excluded',
]);
export type AirDoubt = z.infer<typeof airDoubtSchema>;

export const measuredDaySchema = z.object({
  /** Midnight UTC, ms. */
  dayMs: z.number(),
  tempC: z.number(),
  rh: z.number(),
  /** What wood followed in its hours, % MC. */
  emcPct: z.number(),
  /** Values of it. */
  values: z.number().int(),
  /** Why it is not used; null where it is. */
  doubt: airDoubtSchema.nullable(),
});
export type MeasuredDay = z.infer<typeof measuredDaySchema>;

/** What of a log can be used. */
export interface LogUse {
  /** The air there goes by day and night, as outdoors: a part of a day does not tell of the day. */
  isOpen: boolean;
  /** What is later than today's end was logged by a clock that was ahead. UTC, ms. */
  untilMs: number;
  /** Midnights UTC, ms, of days on which a person does not want what sensors logged. */
  excluded: ReadonlySet<number>;
}

/** No month has more (`airSchema`). */
const MOST_EMC_PCT = 30;

/** A sensor whose every value is the same for so long is stuck. Common practice, no source. */
const STUCK_MS = 2 * DAY_MS;
/** So near to 0 or 1 for so long, the sensor is wet, broken or not connected. Common practice, no source. */
const [SATURATED_BY, SATURATED_MS] = [0.005, 3 * DAY_MS];
/**
 * Warmer or colder by more within `JUMP_WITHIN_MS`, the sensor was carried elsewhere. What it says until it is back, for
 * `AWAY_MS` at most, is not of the place. Common practice, no source.
 */
const [JUMP_C, JUMP_WITHIN_MS, BACK_C, AWAY_MS] = [15, 2 * HOUR_MS, 8, 3 * DAY_MS];
/** A day further from its month is of other air, as in a truck or a house. Common practice, no source. */
const [UNLIKE_C, UNLIKE_EMC_PCT] = [20, 9];
/** Of the four quarters of a day, as many must have values: nights are damper than days. */
const LEAST_QUARTERS = 3;

/** Its midnight UTC, ms. */
const dayOf = ({ atMs }: LoggedAir): number => Math.floor(atMs / DAY_MS) * DAY_MS;

function groupedBy<T>(all: readonly T[], keyOf: (each: T) => number): Map<number, T[]> {
  const groups = new Map<number, T[]>();
  for (const each of all) {
    const key = keyOf(each);
    const group = groups.get(key);
    if (group) group.push(each);
    else groups.set(key, [each]);
  }
  return groups;
}

/** Rounded as hygrometers show them: two that differ by less are the same. */
const sameAs = (a: LoggedAir, b: LoggedAir): boolean =>
  Math.abs(a.tempC - b.tempC) < 0.005 && Math.abs(a.rh - b.rh) < 0.00005;

/** Marks runs of values, one after another, that are alike by a rule for long. */
function markRuns(
  log: readonly LoggedAir[],
  doubts: (AirDoubt | null)[],
  doubt: AirDoubt,
  longMs: number,
  goesOn: (value: LoggedAir, before: LoggedAir) => boolean,
): void {
  let start = 0;
  for (let at = 1; at <= log.length; at++) {
    const [value, before] = [log[at], log[at - 1]];
    if (value && before && goesOn(value, before)) continue;
    const [first, last] = [log[start], log[at - 1]];
    if (first && last && last.atMs - first.atMs >= longMs) doubts.fill(doubt, start, at);
    start = at;
  }
}

function markJumps(log: readonly LoggedAir[], doubts: (AirDoubt | null)[]): void {
  for (let at = 1; at < log.length; at++) {
    const [value, before] = [log[at] as LoggedAir, log[at - 1] as LoggedAir];
    if (value.atMs - before.atMs > JUMP_WITHIN_MS || Math.abs(value.tempC - before.tempC) <= JUMP_C) continue;
    const isBack = ({ tempC, atMs }: LoggedAir): boolean =>
      Math.abs(tempC - before.tempC) <= BACK_C || atMs - value.atMs > AWAY_MS;
    while (at < log.length && !isBack(log[at] as LoggedAir)) doubts[at++] = 'jump';
  }
}

/** Of each value, why it cannot be right, by the others. @param log  rising in time, of one sensor */
function doubtsOf(log: readonly LoggedAir[]): (AirDoubt | null)[] {
  const doubts: (AirDoubt | null)[] = log.map(() => null);
  markJumps(log, doubts);
  const isSaturated = ({ rh }: LoggedAir): boolean => rh <= SATURATED_BY || rh >= 1 - SATURATED_BY;
  markRuns(log, doubts, 'saturated', SATURATED_MS, (a, b) => isSaturated(a) && isSaturated(b));
  markRuns(log, doubts, 'stuck', STUCK_MS, sameAs);
  return doubts;
}

/** Of what sensors logged, why it is not used. What is excluded, or of a clock that was ahead, says nothing of the rest. */
function doubtsOfSensed(
  log: readonly LoggedAir[],
  { untilMs, excluded }: Pick<LogUse, 'untilMs' | 'excluded'>,
): Map<LoggedAir, AirDoubt | null> {
  const sensed = log.filter(({ isOfDay, atMs }) => !isOfDay && atMs <= untilMs);
  const isExcluded = (value: LoggedAir): boolean => excluded.has(dayOf(value));
  const left = sensed.filter((value) => !isExcluded(value));
  const doubts = doubtsOf(left);
  return new Map<LoggedAir, AirDoubt | null>([
    ...left.map((value, at) => [value, doubts[at] ?? null] as const),
    ...sensed.filter(isExcluded).map((value) => [value, 'excluded'] as const),
  ]);
}

/**
 * What a log says of each day, day by day. What a person gave for a day counts in place of what sensors logged.
 *
 * @param log  rising in time
 * @param air  the place's months
 */
export function* eachMeasuredDay(
  log: readonly LoggedAir[],
  air: MonthlyAir,
  use: LogUse,
): Generator<MeasuredDay, void> {
  const { isOpen, untilMs } = use;
  const doubts = doubtsOfSensed(log, use);
  const byDay = groupedBy(log, dayOf);
  const { monthlyEmcPct } = emcOfYear(air);
  for (const [dayMs, values] of byDay) {
    const sound = values.filter((value) => (doubts.get(value) ?? null) === null);
    const ofDay = sound.filter(({ isOfDay, isOutdated }) => isOfDay && !isOutdated);
    const used = [ofDay, sound, values].find(({ length }) => length > 0) ?? [];
    const hours = used.map(({ tempC, rh }) => ({ tempC, rh: Math.min(DAMPEST_RH, rh) }));
    const day = {
      dayMs,
      tempC: mean(hours.map(({ tempC }) => tempC)),
      rh: mean(hours.map(({ rh }) => rh)),
      emcPct: followedEmcPct(hours),
      values: values.length,
    };
    const noonMs = dayMs + DAY_MS / 2;
    const usualC = withinYear(
      air.map(({ tempC }) => tempC),
      noonMs,
    );
    const isUnlike =
      Math.abs(day.tempC - usualC) > UNLIKE_C ||
      Math.abs(day.emcPct - withinYear(monthlyEmcPct, noonMs)) > UNLIKE_EMC_PCT;
    const quarters = new Set(used.map(({ atMs }) => Math.floor((atMs - dayMs) / (DAY_MS / 4)))).size;
    const isPart = isOpen && quarters < LEAST_QUARTERS && !used.some(({ isOfDay }) => isOfDay);
    const ofValues = sound.length > 0 ? null : (doubts.get(values[0] as LoggedAir) ?? null);
    const isLater = dayMs > untilMs ? 'later' : null;
    yield { ...day, doubt: isLater ?? ofValues ?? (isUnlike ? 'unlike' : isPart ? 'part-of-day' : null) };
  }
}

/** The same of all days at once. */
export const measuredDays = (log: readonly LoggedAir[], air: MonthlyAir, use: LogUse): MeasuredDay[] => [
  ...eachMeasuredDay(log, air, use),
];

/** What was measured longer ago says nothing of the air of the moment. Common practice, no source. */
const FRESH_MS = 3 * HOUR_MS;

/** Whether a value still tells of the air. @param nowMs  UTC, ms */
export const isFreshAir = (atMs: number, nowMs: number): boolean => nowMs - atMs <= FRESH_MS;

/** An instant, and the first and the last of its day where the person is, UTC, ms. */
export interface InstantOfDay {
  atMs: number;
  dayFromMs: number;
  dayToMs: number;
}

/**
 * How warm the air was: by the last value of a log until then, where that is fresh and can be right, else by what a person
 * gave for that day. What a log has of later counts for nothing, so that what was read stays as it was.
 *
 * @param log  rising in time, from some days before: they tell whether a sensor is stuck, or was carried elsewhere
 * @returns    °C; null where neither is known
 */
export function airTempAt(
  log: readonly LoggedAir[],
  air: MonthlyAir,
  { untilMs, excluded }: Pick<LogUse, 'untilMs' | 'excluded'>,
  { atMs, dayFromMs, dayToMs }: InstantOfDay,
): number | null {
  const usualC = withinYear(
    air.map(({ tempC }) => tempC),
    atMs,
  );
  const isLike = ({ tempC }: LoggedAir): boolean => Math.abs(tempC - usualC) <= UNLIKE_C;
  const doubts = doubtsOfSensed(log, { untilMs: Math.min(untilMs, atMs), excluded });
  const logged = [...doubts].findLast(
    ([value, doubt]) => doubt === null && isFreshAir(value.atMs, atMs) && isLike(value),
  )?.[0];
  const typed = log.findLast(
    (value) =>
      value.isOfDay && !value.isOutdated && value.atMs >= dayFromMs && value.atMs <= dayToMs && isLike(value),
  );
  return (logged ?? typed)?.tempC ?? null;
}

/** `typed`: a person gave the air of that day. `outdated`: and gave another value for it later. */
export type UnusedWhy = AirDoubt | 'typed' | 'outdated';

/** Of each value of a log, why it is not used; null where it is. As `measuredDays` takes it. */
export function unusedOf(log: readonly LoggedAir[], air: MonthlyAir, use: LogUse): (UnusedWhy | null)[] {
  const ofDays = new Map(measuredDays(log, air, use).map(({ dayMs, doubt }) => [dayMs, doubt]));
  const ofValues = doubtsOfSensed(log, use);
  const typedDays = new Set(log.filter(({ isOfDay }) => isOfDay).map(dayOf));
  return log.map(
    (value) =>
      ofValues.get(value) ??
      (value.isOutdated ? 'outdated' : null) ??
      ofDays.get(dayOf(value)) ??
      (!value.isOfDay && typedDays.has(dayOf(value)) ? 'typed' : null),
  );
}

/** A stretch of measured air: the EMC runs straight from its start to its end. */
export const measuredStretchSchema = z.object({
  fromMs: z.number(),
  toMs: z.number(),
  emcStartPct: z.number(),
  emcEndPct: z.number(),
  tempC: z.number(),
});
export type MeasuredStretch = z.infer<typeof measuredStretchSchema>;

/** Days are taken together: boards do not follow single ones, and a run through many short stretches takes long. */
const BLOCK_DAYS = 5;
const BLOCK_MS = BLOCK_DAYS * DAY_MS;
/** Over a gap of so many blocks the difference from the months goes straight from one side to the other. */
const MOST_GAP_BLOCKS = 3;

/**
 * What wood followed while the air was measured. Of a block of which few days are measured, the others are as likely as
 * those before to be like the months: with a correlation of 0.5 from one day to the next, n days say 1 - 0.5ⁿ of the block.
 *
 * @param days  those without doubt are used
 * @returns     stretches that do not overlap, rising in time; none where nothing was measured
 */
export function measuredStretches(days: readonly MeasuredDay[], air: MonthlyAir): MeasuredStretch[] {
  const used = days.filter(({ doubt }) => doubt === null);
  const { monthlyEmcPct } = emcOfYear(air);
  const temps = air.map(({ tempC }) => tempC);
  const above = ({ dayMs, emcPct }: MeasuredDay): number =>
    emcPct - withinYear(monthlyEmcPct, dayMs + DAY_MS / 2);
  if (used.length === 0) return [];
  const usual = mean(used.map(above));
  const blocks = [...groupedBy(used, ({ dayMs }) => Math.floor(dayMs / BLOCK_MS))]
    .map(([block, its]) => ({
      block,
      above: usual + (1 - 0.5 ** its.length) * (mean(its.map(above)) - usual),
      warmer: mean(its.map(({ dayMs, tempC }) => tempC - withinYear(temps, dayMs + DAY_MS / 2))),
    }))
    .sort((a, b) => a.block - b.block);
  const stretch = (fromMs: number, toMs: number, from: number, to: number, warmer: number) => ({
    fromMs,
    toMs,
    emcStartPct: Math.max(0, withinYear(monthlyEmcPct, fromMs) + from),
    emcEndPct: Math.max(0, withinYear(monthlyEmcPct, toMs) + to),
    tempC: withinYear(temps, (fromMs + toMs) / 2) + warmer,
  });
  return blocks.flatMap((here, index) => {
    const [before, after] = [blocks[index - 1], blocks[index + 1]];
    const startMs = here.block * BLOCK_MS;
    const middleMs = startMs + BLOCK_MS / 2;
    const isNear = (other: typeof before): other is typeof here =>
      other !== undefined && Math.abs(other.block - here.block) <= MOST_GAP_BLOCKS + 1;
    const lead = isNear(before) ? [] : [stretch(startMs, middleMs, here.above, here.above, here.warmer)];
    const rest = isNear(after)
      ? stretch(
          middleMs,
          after.block * BLOCK_MS + BLOCK_MS / 2,
          here.above,
          after.above,
          (here.warmer + after.warmer) / 2,
        )
      : stretch(middleMs, startMs + BLOCK_MS, here.above, here.above, here.warmer);
    return [...lead, rest];
  });
}

/** Within walls the air hardly swings from day to day, % MC. Common practice, no source. */
const SWING_INDOORS_PCT = 1;
/** How long a season lasts, days. */
const SEASON_DAYS = 91;

/** What measured air teaches of the months of a place. */
export interface MeasuredMonths {
  /** The months with what is measured: for the days to come, and where nothing was measured. */
  air: MonthlyAir;
  /** How far their EMC is from that of the months before, % MC. */
  shiftPct: number;
}

/**
 * The months of a place by what was measured there: shifted by the mean difference of its days, as far as that cannot be the
 * chance of a season and of single days, nor the hygrometer's error. That its error is like that of a station's humidity,
 * `HUMIDITY_SD`, is common practice, no source: usual ones are within 2 to 3 %.
 *
 * @returns null where no day is used
 */
export function measuredMonths(
  days: readonly MeasuredDay[],
  air: MonthlyAir,
  isOpen: boolean,
): MeasuredMonths | null {
  const used = days.filter(({ doubt }) => doubt === null);
  if (used.length === 0) return null;
  const { monthlyEmcPct } = emcOfYear(air);
  const offset = mean(
    used.map(({ dayMs, emcPct }) => emcPct - withinYear(monthlyEmcPct, dayMs + DAY_MS / 2)),
  );
  const swing = isOpen ? SWINGS_OUTDOORS.sdPct : SWING_INDOORS_PCT;
  // Of days that are correlated by 0.5 with the next, three are worth one.
  const ofDays = swing * Math.sqrt(Math.min(1, 3 / used.length));
  const seasons = Math.max(1, used.length / SEASON_DAYS);
  const chance = ofDays ** 2 + (SEASON_SHARE * mean(monthlyEmcPct)) ** 2 / seasons;
  const before = airSdPct(air) ** 2;
  const ofSensor = airSdPct(air.map((month) => ({ ...month, emcSdPct: 0 }))) ** 2;
  // In steps, so that forecasts stay as they are from one day to the next.
  const shiftPct = Math.round((10 * offset * before) / (before + chance + ofSensor)) / 10;
  return {
    shiftPct,
    air: air.map((month, at) => {
      const { emcSdPct = 0 } = month;
      const left = emcSdPct === 0 ? 0 : Math.sqrt((emcSdPct ** 2 * chance) / (emcSdPct ** 2 + chance));
      return {
        ...month,
        emcPct: Math.min(MOST_EMC_PCT, Math.max(0, (monthlyEmcPct[at] as number) + shiftPct)),
        emcSdPct: Math.round(100 * left) / 100,
      };
    }),
  };
}
