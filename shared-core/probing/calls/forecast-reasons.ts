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
  forecast: Pick<Forecast, 'now' | 'places'>;
  /** UTC, ms: the instant that the forecast calls today. */
  nowMs: number;
  endUse: Pick<EndUse, 'minPct' | 'maxPct'>;
  /** In the order of `forecast.places`, each with the lowest EMC that it is shown with, % MC. */
  places: readonly { name: string; lowestEmcPct: number }[];
}

/**
 * What is to be expected where the board is, and whether another place would do better: one or two sentences, the one
 * that decides first. What to do about it is its next step (`next-step.ts`).
 */
export function forecastReasons(facts: ForecastFacts): [Message, ...Message[]] {
  const { forecast, endUse } = facts;
  const { probabilityReady, average } = forecast.now;
  if (probabilityReady >= 0.9) {
    return [
      message('forecast.ready-now', {
        averagePct: average.median,
        targetRange: targetOf(endUse),
        sureChancePct: Math.min(MOST_SURE_PCT, Math.floor(100 * probabilityReady)),
      }),
    ];
  }
  const here = forecast.places[0] as PlaceForecast;
  return [whereItIs(here, facts), ...elsewhere(facts)];
}

const instant = (atMs: number): string => new Date(atMs).toISOString();
const targetOf = ({ minPct, maxPct }: ForecastFacts['endUse']): PctRange => ({ minPct, maxPct });
const endOf = ({ band }: PlaceForecast): number => band.atMs.at(-1) as number;

/** When it gets there; null where that is less likely than not. */
export function whenOf({ reach: { earlyMs, likelyMs, lateMs } }: PlaceForecast): When | null {
  if (likelyMs === null) return null;
  return {
    likely: instant(likelyMs),
    from: instant(earlyMs ?? likelyMs),
    to: lateMs === null ? null : instant(lateMs),
  };
}

function whereItIs(here: PlaceForecast, { nowMs, endUse, forecast, places }: ForecastFacts): Message {
  const { earlyMs, likelyMs, lateMs } = here.reach;
  const { name: placeName, lowestEmcPct } = places[0] as ForecastFacts['places'][number];
  const place = { placeName, targetRange: targetOf(endUse) };
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
  if (here.floorPct.median > endUse.maxPct && lowestEmcPct > endUse.maxPct) {
    const gainsUntilMs = lowestFrom(here);
    return isNow(gainsUntilMs)
      ? message('forecast.too-damp-now', { placeName })
      : message('forecast.too-damp', {
          placeName,
          gainsUntilOn: instant(gainsUntilMs),
          gainPoints: NEVER_QUITE_PCT,
        });
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

/** The other place where it is likely ready first, if that gains enough to move it there. */
export function bestElsewhere([here, ...others]: readonly PlaceForecast[]): PlaceForecast | null {
  const likelyMs = (place: PlaceForecast | undefined): number =>
    place?.reach.likelyMs ?? Number.POSITIVE_INFINITY;
  const [best] = others.toSorted((a, b) => likelyMs(a) - likelyMs(b));
  const isWorth = likelyMs(best) + WORTH_MOVING_DAYS * DAY_MS <= likelyMs(here);
  return best !== undefined && Number.isFinite(likelyMs(best)) && isWorth ? best : null;
}

function elsewhere({ forecast: { places }, nowMs, places: named }: ForecastFacts): Message[] {
  const best = bestElsewhere(places);
  const likelyWhen = best && whenOf(best);
  if (best && likelyWhen) {
    const placeName = named[places.indexOf(best)]?.name as string;
    return [
      Date.parse(likelyWhen.likely) - nowMs < DAY_MS
        ? message('forecast.moved-now', { placeName })
        : message('forecast.moved', { placeName, likelyWhen }),
    ];
  }
  const [here, ...others] = places as [PlaceForecast, ...PlaceForecast[]];
  const isNowhere = places.every(({ reach }) => reach.likelyMs === null);
  return isNowhere && others.length > 0
    ? [message('forecast.nowhere', { untilOn: instant(endOf(here)) })]
    : [];
}
