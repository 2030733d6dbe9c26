import type { Outcome } from '../../outcome.ts';
import { message } from '../../words/message.ts';
import { mean } from '../maths/mean.ts';
import { emcPct } from './emc.ts';
import { followedEmcPct } from './followed-emc.ts';
import type { MonthlyAir } from './monthly-air.ts';
import { smoothedMonths } from './smoothed-months.ts';
import type { DayToDay } from './station.ts';

/** A year of hours is 2 MB at most; quarter hours would be 6 MB. */
export const MOST_EPW_BYTES = 8_000_000;

/** What is used of a weather file. */
export interface EpwYear {
  /** The site as the file names it. */
  siteName: string;
  air: MonthlyAir;
  days: DayToDay;
}

const HEADER_LINES = 8;
const MONTH = 1;
const DAY = 2;
const TEMP_C = 6;
const RH_PCT = 8;
/** A month with fewer hours than 20 days have says little of the month. */
const LEAST_HOURS = 480;
/** Outside these nothing was measured: the format then writes 99.9 and 999. */
const MOST_TEMP_C = 60;
const MOST_RH_PCT = 110;
/** The EMC formula ends there. */
const DAMPEST_PCT = 99;

interface Hour {
  month: number;
  day: number;
  tempC: number;
  rhPct: number;
}

/**
 * The year of air in an EPW file (EnergyPlus weather format): 8 header lines, the first with the site; then a row an hour
 * with month, day, dry-bulb temperature in °C (column 7) and relative humidity in % (column 9).
 *
 * A month's EMC is what wood follows in its hours, then smoothed, as in the list of stations.
 *
 * @returns a problem where the text is no such file, or a month is missing
 */
export function epwYear(text: string): Outcome<EpwYear> {
  const lines = text.split(/\r?\n/);
  const [kind, siteName = '', region = ''] = lines[0]?.split(',').map((cell) => cell.trim()) ?? [];
  if (kind?.toUpperCase() !== 'LOCATION') return { ok: false, problem: message('epw.not-epw') };
  const hours = lines.slice(HEADER_LINES).flatMap(hourOf);
  const months = Array.from({ length: 12 }, (_, month) => hours.filter((hour) => hour.month === month + 1));
  const missing = months.findIndex((each) => each.length < LEAST_HOURS);
  if (missing >= 0)
    return { ok: false, problem: message('epw.month-missing', { missingMonth: missing + 1 }) };
  const air = smoothedMonths(
    months.map((each) => ({
      tempC: mean(each.map(({ tempC }) => tempC)),
      rh: mean(each.map(({ rhPct }) => rhPct)) / 100,
      emcPct: followedEmcPct(each.map(({ tempC, rhPct }) => ({ tempC, rh: rhPct / 100 }))),
    })),
  );
  const named = [siteName, region].filter((name) => name !== '' && name !== '-').join(', ');
  return { ok: true, value: { siteName: named.slice(0, 80), air, days: dayToDay(months) } };
}

/** None where the row is no hour, or its temperature or humidity was not measured. */
function hourOf(line: string): Hour[] {
  const cells = line.split(',');
  if (cells.length <= RH_PCT) return [];
  const [month, day, tempC, rhPct] = [MONTH, DAY, TEMP_C, RH_PCT].map((column) =>
    numberIn(cells[column]),
  ) as [number, number, number, number];
  const isMeasured =
    day >= 1 && day <= 31 && Math.abs(tempC) < MOST_TEMP_C && rhPct >= 0 && rhPct <= MOST_RH_PCT;
  if (!isMeasured) return [];
  return [{ month, day, tempC, rhPct: Math.min(DAMPEST_PCT, Math.max(1, rhPct)) }];
}

/** A blank cell is no zero. */
const numberIn = (cell = ''): number => (cell.trim() === '' ? Number.NaN : Number(cell));

const hourlyEmcPct = ({ tempC, rhPct }: Pick<Hour, 'tempC' | 'rhPct'>): number => emcPct(tempC, rhPct / 100);

/** How daily means swing round the mean of their month. */
function dayToDay(months: readonly Hour[][]): DayToDay {
  const swings = months.flatMap((hours) => {
    const days = [...new Set(hours.map(({ day }) => day))].map((day) =>
      mean(hours.filter((hour) => hour.day === day).map(hourlyEmcPct)),
    );
    const monthPct = mean(days);
    return days.map((pct) => pct - monthPct);
  });
  const variance = mean(swings.map((swing) => swing ** 2));
  const together = mean(swings.slice(1).map((swing, at) => swing * (swings[at] as number)));
  return { sdPct: Math.sqrt(variance), lag: variance > 0 ? together / variance : 0 };
}
