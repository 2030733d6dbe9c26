import { DAY_MS } from '../../time.ts';

/** So long after a move to drier air a board's shell is ahead of its core, days. Common practice, no source. */
export const NEW_HERE_DAYS = 60;
/** A board that was entered within so many days of sawing was there from the first. */
export const ENTERED_AT_ONCE_DAYS = 14;

/** A place where a board was, with its EMC in the month of the readings, % MC. */
export interface Stop {
  /** UTC, ISO 8601. */
  since: string;
  emcPct: number | null;
}

/**
 * Whether a board came to where it is from damper air within the last two months. Null where nobody knows: where it was
 * before, or how damp that was; and where it came from drier air, of which no gradient is expected.
 *
 * @param stops   oldest first; those after the readings are left out
 * @param sawnOn  day, local, or null
 * @param at      of the readings, UTC, ISO 8601
 */
export function isNewHere(stops: readonly Stop[], sawnOn: string | null, at: string): boolean | null {
  const until = stops.filter(({ since }) => Date.parse(since) <= Date.parse(at));
  const here = until.at(-1);
  if (here === undefined) return null;
  const cameMs = Date.parse(here.since);
  if (Date.parse(at) - cameMs > NEW_HERE_DAYS * DAY_MS) return false;
  const before = until.at(-2);
  if (before === undefined) {
    const isGreen = sawnOn !== null && cameMs - Date.parse(sawnOn) <= ENTERED_AT_ONCE_DAYS * DAY_MS;
    return isGreen ? false : null;
  }
  if (before.emcPct === null || here.emcPct === null) return null;
  return before.emcPct > here.emcPct ? true : null;
}
