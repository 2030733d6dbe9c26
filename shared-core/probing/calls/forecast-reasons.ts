/** What a forecast means for a board. */

import { DAY_MS } from '../../time.ts';
import type { Forecast, PlaceForecast } from '../../wood/drying/forecast.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { type Message, message, type PctRange, type When } from '../../words/message.ts';
import { NEVER_QUITE_PCT } from './never-quite.ts';

/** Another place is worth naming where it gains more than this. */
const WORTH_MOVING_DAYS = 7;
/** Nothing of wood is surer than this, %. */
const MOST_SURE_PCT = 99;

export interface ForecastFacts {
  forecast: Pick<Forecast, 'now' | 'places' | 'nextProbe'>;
  /** UTC, ms: the instant that the forecast calls today. */
  nowMs: number;
  endUse: Pick<EndUse, 'minPct' | 'maxPct'>;
  /** In the order of `forecast.places`. */
  placeNames: readonly string[];
}

/**
 * What is to be expected where the board is, whether another place would do better, and when to probe next: two to four
 * sentences, the one that decides first.
 */
export function forecastReasons(facts: ForecastFacts): [Message, ...Message[]] {
  const { forecast, nowMs, endUse } = facts;
  const { atMs, why } = forecast.nextProbe;
  const probe =
    atMs === null
      ? why
      : atMs - nowMs < DAY_MS
        ? message('forecast.probe-now', { why })
        : message('forecast.probe-on', { probeOn: instant(atMs), why });
  const { probabilityReady, average } = forecast.now;
  if (probabilityReady >= 0.9) {
    const readyNow = message('forecast.ready-now', {
      averagePct: average.median,
      targetRange: targetOf(endUse),
      sureChancePct: Math.min(MOST_SURE_PCT, Math.floor(100 * probabilityReady)),
    });
    return [readyNow, probe];
  }
  const [here, ...others] = forecast.places as [PlaceForecast, ...PlaceForecast[]];
  return [whereItIs(here, facts), ...elsewhere(here, others, facts), probe];
}

const instant = (atMs: number): string => new Date(atMs).toISOString();
const targetOf = ({ minPct, maxPct }: ForecastFacts['endUse']): PctRange => ({ minPct, maxPct });
const endOf = ({ band }: PlaceForecast): number => band.atMs.at(-1) as number;

/** When it gets there; null where that is less likely than not. */
function whenOf({ reach: { earlyMs, likelyMs, lateMs } }: PlaceForecast): When | null {
  if (likelyMs === null) return null;
  return {
    likely: instant(likelyMs),
    from: instant(earlyMs ?? likelyMs),
    to: lateMs === null ? null : instant(lateMs),
  };
}

function whereItIs(here: PlaceForecast, { nowMs, endUse, forecast, placeNames }: ForecastFacts): Message {
  const { earlyMs, likelyMs, lateMs } = here.reach;
  const place = { placeName: placeNames[0] as string, targetRange: targetOf(endUse) };
  const isNow = (atMs: number) => atMs - nowMs < DAY_MS;
  const untilOn = instant(endOf(here));
  const likelyWhen = whenOf(here);
  if (likelyMs !== null && likelyWhen !== null) {
    if (!isNow(likelyMs)) return message('forecast.reach', { ...place, likelyWhen });
    return lateMs === null
      ? message('forecast.reach-now-open', { ...place, untilOn })
      : message('forecast.reach-now', { ...place, lateOn: instant(lateMs) });
  }
  if (earlyMs !== null) {
    return isNow(earlyMs)
      ? message('forecast.may-reach-now', place)
      : message('forecast.may-reach', { ...place, earlyOn: instant(earlyMs) });
  }
  if (here.floorPct.median > endUse.maxPct) {
    const gainsUntilMs = lowestFrom(here);
    const floor = { ...place, driestMonth: here.floorMonth, floorPct: here.floorPct.median };
    return isNow(gainsUntilMs)
      ? message('forecast.too-damp-now', floor)
      : message('forecast.too-damp', { ...floor, gainsUntilOn: instant(gainsUntilMs) });
  }
  const averagePct = forecast.now.average.median;
  return averagePct < endUse.minPct
    ? message('forecast.too-dry', { ...place, averagePct, untilOn })
    : message('forecast.not-by', { ...place, untilOn });
}

/** From when on the average stays as low as it ever comes in that air, to a margin not worth waiting for. */
function lowestFrom({ band }: PlaceForecast): number {
  const medians = band.average.map(({ median }) => median);
  const lowest = Math.min(...medians);
  return band.atMs[medians.findIndex((median) => median <= lowest + NEVER_QUITE_PCT)] as number;
}

function elsewhere(
  here: PlaceForecast,
  others: readonly PlaceForecast[],
  { nowMs, placeNames }: ForecastFacts,
): Message[] {
  const reached = others.flatMap((place, index) => {
    const likelyWhen = whenOf(place);
    return likelyWhen === null
      ? []
      : [
          {
            placeName: placeNames[index + 1] as string,
            likelyMs: place.reach.likelyMs as number,
            likelyWhen,
          },
        ];
  });
  const [best] = reached.toSorted((a, b) => a.likelyMs - b.likelyMs);
  if (best === undefined) {
    return here.reach.likelyMs === null && others.length > 0
      ? [message('forecast.nowhere', { untilOn: instant(endOf(here)) })]
      : [];
  }
  const { placeName, likelyMs, likelyWhen } = best;
  const gainDays = ((here.reach.likelyMs ?? Number.POSITIVE_INFINITY) - likelyMs) / DAY_MS;
  if (gainDays < WORTH_MOVING_DAYS) return [];
  return [
    likelyMs - nowMs < DAY_MS
      ? message('forecast.moved-now', { placeName })
      : message('forecast.moved', { placeName, likelyWhen }),
  ];
}
