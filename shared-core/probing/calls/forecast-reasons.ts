/** What a forecast means for a board, in sentences. */
import { monthNames } from '../../units/month-names.ts';
import type { Forecast, PlaceForecast } from '../../wood/drying/forecast.ts';
import type { EndUse } from '../../wood/species/end-use.ts';
import { pct, rangeOf } from './wording.ts';

const DAY_MS = 86_400_000;
/** So near to the lowest that a place brings it to, waiting gains nothing more, % MC (common practice, no source). */
const NEVER_QUITE_PCT = 0.5;
/** Another place is worth naming where it gains more than this. */
const WORTH_MOVING_DAYS = 7;

export interface ForecastFacts {
  forecast: Pick<Forecast, 'now' | 'places' | 'nextProbe'>;
  /** UTC, ms: the instant that the forecast calls today. */
  nowMs: number;
  endUse: Pick<EndUse, 'name' | 'minPct' | 'maxPct'>;
  /** In the order of `forecast.places`. */
  placeNames: readonly string[];
  /** A day as a person writes it, from UTC ms. */
  day: (atMs: number) => string;
}

/**
 * What is to be expected where the board stands, whether another place would do better, and when to probe next: two to
 * four sentences, the one that decides first.
 */
export function forecastReasons(facts: ForecastFacts): string[] {
  const { forecast, nowMs, endUse, placeNames, day } = facts;
  const here = forecast.places[0] as PlaceForecast;
  const { atMs, why } = forecast.nextProbe;
  const probe =
    atMs === null
      ? why
      : atMs - nowMs < DAY_MS
        ? `Probe it now. ${why}`
        : `Probe it next on ${day(atMs)}. ${why}`;
  if (forecast.now.probabilityReady >= 0.9) {
    const certainty = Math.min(99, Math.floor(100 * forecast.now.probabilityReady));
    return [
      `By its history it is fit for ${endUse.name} today, with a probability of ${certainty} %: about ${pct(forecast.now.average.median)}, and ${rangeOf(endUse)} is wanted.`,
      probe,
    ];
  }
  return [whereItStands(here, placeNames[0] as string, facts), ...elsewhere(here, facts), probe];
}

function whereItStands(
  here: PlaceForecast,
  name: string,
  { nowMs, endUse, day, forecast }: ForecastFacts,
): string {
  const { earlyMs, likelyMs, lateMs } = here.reach;
  const wanted = rangeOf(endUse);
  if (likelyMs !== null && earlyMs !== null) {
    const late = lateMs === null ? 'perhaps not within the time looked at' : `very likely by ${day(lateMs)}`;
    return likelyMs - nowMs < DAY_MS
      ? `In ${name} it is about at ${wanted} now; ${lateMs === null ? 'it may yet take longer than the time looked at' : `by ${day(lateMs)} it very likely is`}.`
      : `In ${name} it should reach ${wanted} about ${day(likelyMs)}, ${earlyMs - nowMs < DAY_MS ? 'perhaps already now' : `hardly before ${day(earlyMs)}`} and ${late}.`;
  }
  if (earlyMs !== null) {
    return `In ${name} it may reach ${wanted} from ${earlyMs - nowMs < DAY_MS ? 'now' : day(earlyMs)} on, but more likely it will not.`;
  }
  const floor = `Even the driest month’s air in ${name} (${monthNames[here.floorMonth - 1]}) brings wood no lower than ${pct(here.floorPct.median)}`;
  if (here.floorPct.median > endUse.maxPct) {
    const gainsUntilMs = lowestFrom(here);
    return `${floor}, and ${wanted} is wanted: waiting there gains nothing ${
      gainsUntilMs - nowMs < DAY_MS ? 'any more' : `after ${day(gainsUntilMs)}`
    }.`;
  }
  const until = day(here.band.atMs.at(-1) as number);
  return forecast.now.average.median < endUse.minPct
    ? `At ${pct(forecast.now.average.median)} it is drier than ${wanted}, and the air in ${name} does not bring it up to that before ${until}.`
    : `In ${name} it does not reach ${wanted} before ${until}.`;
}

/** From when on the average stays as low as it ever comes in that air, to a margin not worth waiting for. */
function lowestFrom({ band }: PlaceForecast): number {
  const medians = band.average.map(({ median }) => median);
  const lowest = Math.min(...medians);
  return band.atMs[medians.findIndex((median) => median <= lowest + NEVER_QUITE_PCT)] as number;
}

function elsewhere(here: PlaceForecast, { forecast, nowMs, placeNames, day }: ForecastFacts): string[] {
  const others = forecast.places.slice(1).flatMap(({ reach }, index) => {
    const { likelyMs, lateMs } = reach;
    return likelyMs === null ? [] : [{ name: placeNames[index + 1] as string, likelyMs, lateMs }];
  });
  const [best] = others.toSorted((a, b) => a.likelyMs - b.likelyMs);
  if (best === undefined) {
    return here.reach.likelyMs === null && forecast.places.length > 1
      ? ['No other place of this yard brings it there within the time looked at either.']
      : [];
  }
  const gainDays = ((here.reach.likelyMs ?? Number.POSITIVE_INFINITY) - best.likelyMs) / DAY_MS;
  if (gainDays < WORTH_MOVING_DAYS) return [];
  const when = best.likelyMs - nowMs < DAY_MS ? 'at once' : `about ${day(best.likelyMs)}`;
  const late = best.lateMs === null ? '' : `, very likely by ${day(best.lateMs)}`;
  return [`Moved to ${best.name} today it should get there ${when}${late}.`];
}
