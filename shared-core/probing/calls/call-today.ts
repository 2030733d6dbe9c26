/** What old readings still say today: the forecast carries them on, as far as it is sure. */
import type { Forecast } from '../../wood/drying/forecast.ts';
import type { Quantiles } from '../../wood/drying/run-quantiles.ts';
import { normalCdf, Z_90 } from '../../wood/maths/gaussian.ts';
import { message, type PctRange } from '../../words/message.ts';
import { DRY_ENOUGH_CORE_PCT, DRY_ENOUGH_FOR_INDOORS_PCT, type Found, isTooWet } from './call-here.ts';
import { SURE } from './decide.ts';
import { oldByMs } from './old-readings.ts';

type Now = Pick<Forecast['now'], 'average' | 'core' | 'probabilityReady'>;

export interface FoundToday {
  found: Found;
  /** Whether its call and its reasons are the forecast's: then so is the average that is stated. */
  isByForecast: boolean;
}

/** Chance that it is above a limit: half a normal distribution to each side of the median. */
function chanceAbove({ low, median, high }: Quantiles, limitPct: number): number {
  const sdPct = Math.max(1e-6, limitPct < median ? median - low : high - median) / Z_90;
  return normalCdf((median - limitPct) / sdPct);
}

const isUnsure = (chance: number): boolean => chance > 1 - SURE && chance < SURE;

/** Whether it may check indoors, and may not: then it is unknown whether to bring it in. */
const isUnsureForIndoors = ({ average, core }: Now): boolean =>
  isUnsure(
    Math.max(chanceAbove(average, DRY_ENOUGH_FOR_INDOORS_PCT), chanceAbove(core, DRY_ENOUGH_CORE_PCT)),
  );

/**
 * The call of readings that are not old holds. Old ones are carried on by the forecast: one of a board that is too wet
 * holds only where the forecast is sure of it, and says what it has for today. Else the board is to be probed again.
 *
 * @param getsThere  by the forecast, whether it gets to its target where it is
 * @param nowMs      UTC, ms: the end of the day that the forecast calls today
 */
export function foundToday(
  found: Found,
  now: Now,
  target: PctRange,
  getsThere: boolean | null,
  nowMs: number,
): FoundToday {
  const { call, at } = found;
  if (call === null || call === 'probe-again' || nowMs < oldByMs(at)) return { found, isByForecast: false };
  const { average } = now;
  const today = {
    averagePct: average.median,
    likelyInterval: { minPct: average.low, maxPct: average.high },
    targetRange: target,
  };
  const lastRead = message('call.last-read', { probedOn: at });
  const asRead: FoundToday = {
    found: { ...found, reasons: [...found.reasons, lastRead] },
    isByForecast: false,
  };
  const probeAgain: FoundToday = {
    found: {
      ...found,
      call: 'probe-again',
      reasons: [message('call.read-long-ago', { probedOn: at }), message('call.forecast-today', today)],
    },
    isByForecast: true,
  };
  if (call === 'ready') return now.probabilityReady < 0.5 ? probeAgain : asRead;
  if (call === 'too-dry') return chanceAbove(average, target.minPct) > 1 - SURE ? probeAgain : asRead;
  const isMoveUnsure = getsThere === false && isUnsureForIndoors(now);
  if (!isTooWet(found, target) || chanceAbove(average, target.maxPct) < SURE || isMoveUnsure)
    return probeAgain;
  return {
    found: { ...found, reasons: [message('call.forecast-too-wet', today), lastRead] },
    isByForecast: true,
  };
}
