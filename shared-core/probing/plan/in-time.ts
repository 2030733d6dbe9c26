import type { Judgement } from '../calls/judgement.ts';
import type { Ready } from '../calls/ready-in.ts';

/** Whether a board will be ready by a day, and where. Local ISO days. */
export type InTime =
  | { is: 'ready' }
  /** Where it is; `isSure` where it is so with 9 chances in 10. */
  | { is: 'here'; on: string; isSure: boolean }
  /** In these places alone, if moved there now; the one where it is ready first comes first. */
  | { is: 'elsewhere'; places: { placeId: number; on: string }[] }
  /** Nowhere; where it is ready first, and when. */
  | { is: 'late'; on: string; placeId: number }
  /** No place gets it to its target as far as forecasts look. */
  | { is: 'never' }
  /** No day can be stated of it. */
  | { is: 'unknown' };

/** The day on which it is likely ready there; null where none is. */
function dayOf(ready: Ready | null, today: string): string | null {
  if (ready?.kind === 'likely') return ready.when.likely;
  return ready?.kind === 'now' || ready?.kind === 'any-day' ? today : null;
}

const isSureBy = (ready: Ready | null, neededBy: string): boolean =>
  ready?.kind === 'likely' && ready.when.to !== null && ready.when.to <= neededBy;

/**
 * Whether a board will be ready by the day on which a project needs it, by its newest forecast.
 *
 * @param neededBy  null: on any day
 */
export function inTime(
  { call, places }: Pick<Judgement, 'call' | 'places'>,
  neededBy: string | null,
  today: string,
): InTime {
  if (call === 'ready') return { is: 'ready' };
  const [here] = places;
  // Where it is to be probed again first, no day is stated.
  if (here === undefined || places.every(({ ready }) => ready === null)) return { is: 'unknown' };
  const by = neededBy ?? '9999-12-31';
  const dated = places
    .flatMap(({ placeId, ready }) => {
      const on = dayOf(ready, today);
      return on === null ? [] : [{ placeId, on }];
    })
    // Where it is comes first of the same day: it need not be moved.
    .toSorted((one, other) => one.on.localeCompare(other.on));
  const soonest = dated[0];
  const onHere = dayOf(here.ready, today);
  if (onHere !== null && onHere <= by) return { is: 'here', on: onHere, isSure: isSureBy(here.ready, by) };
  const early = dated.filter(({ on }) => on <= by);
  if (early.length > 0) return { is: 'elsewhere', places: early };
  return soonest ? { is: 'late', ...soonest } : { is: 'never' };
}
