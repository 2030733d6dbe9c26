/** Where a board is best moved to: where it is ready first, where it gets driest, or back under cover. */
import { DAY_MS } from '../../time.ts';
import { isShownAbove } from '../../wood/moisture/shown-points.ts';
import { isTooWetForIndoors } from './call-here.ts';
import type { Ahead, JudgedPlace, JudgementFacts } from './judgement.ts';
import { driestIn, isReached, type Ready } from './ready-in.ts';

/** Another place is worth naming where it gains more than this. */
export const WORTH_MOVING_DAYS = 7;
/** The same where none gets the board to its target, points of MC. Common practice, no source. */
export const WORTH_MOVING_POINTS = 1;

/** A place that gets a board so far below its target is no place to leave it, points of MC. Common practice, no source. */
const FAR_TOO_DRY_POINTS = 2;

/** The board today, by its forecast or else as it was read, % MC. */
export interface Today {
  averagePct: number;
  corePct: number | null;
}

export const isHeated = ({ kind }: JudgedPlace): boolean => kind === 'heated-room';

/** Where wood dries slowly enough not to check: in a shed first. */
export const underCover = (places: readonly JudgedPlace[]): JudgedPlace | undefined =>
  (['open-shed', 'shop', 'outdoors'] as const).flatMap((kind) =>
    places.filter((place) => place.kind === kind),
  )[0];

/** Where a board that no place gets to its target gets driest, and to what: where it is, unless another gains enough. */
export function driestOf(
  { places }: JudgementFacts,
  forecast: Ahead,
  { averagePct, corePct }: Today,
): (JudgedPlace & { driestPct: number }) | null {
  const isWet = isTooWetForIndoors(averagePct, corePct);
  const [here, ...others] = forecast.places.map((place, index) => ({
    ...places[index]!,
    driestPct: driestIn(place),
  }));
  const [best] = others
    .filter((place) => !(isWet && isHeated(place)))
    .toSorted((a, b) => a.driestPct - b.driestPct);
  return here && best && best.driestPct <= here.driestPct - WORTH_MOVING_POINTS ? best : (here ?? null);
}

/**
 * The other place where it is likely ready first, if that gains enough; heated rooms are none for a board that may still
 * check there, and where it has to dry first no other place is. One that makes it far too dry is none either, unless it is
 * `isStuck`: too wet, and not getting there where it is.
 */
export function bestOf(
  { places, target }: JudgementFacts,
  forecast: Ahead,
  expected: readonly Ready[],
  { averagePct, corePct }: Today,
  isStuck: boolean,
): number | null {
  const isWet = isTooWetForIndoors(averagePct, corePct);
  if (isWet && !isReached(expected[0])) return null;
  const likelyMs = (index: number): number =>
    isReached(expected[index])
      ? (forecast.places[index]!.reach.likelyMs as number)
      : Number.POSITIVE_INFINITY;
  const isTooDryNow = isShownAbove(target.minPct, forecast.now.average.median);
  const isFarTooDryIn = (index: number): boolean =>
    !isTooDryNow && isShownAbove(target.minPct - FAR_TOO_DRY_POINTS, driestIn(forecast.places[index]!));
  const hereMs = forecast.now.probabilityReady >= 0.5 ? 0 : likelyMs(0);
  const [best] = places
    .map((place, index) => ({ ...place, index }))
    .slice(1)
    .filter((place) => !(isWet && isHeated(place)) && isReached(expected[place.index]))
    .filter(({ index }) => isStuck || !isFarTooDryIn(index))
    .toSorted((a, b) => likelyMs(a.index) - likelyMs(b.index));
  return best && likelyMs(best.index) + WORTH_MOVING_DAYS * DAY_MS <= hereMs ? best.placeId : null;
}
