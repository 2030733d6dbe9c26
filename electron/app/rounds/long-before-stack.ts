import { DAY_MS } from '../../../shared-core/time.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { AppContext } from '../context.ts';

/** A date that is so much earlier than the stack was added may be that of a flat clock battery. */
const LONG_BEFORE_YEARS = 3;
const YEAR_MS = 365.25 * DAY_MS;

/**
 * Asks whether the year is right where it is long before the stack was added; null where it is not.
 * @param change  what waits for the answer: the start of a round, a new date of one, or a page of past readings
 */
export function longBeforeStack(
  context: AppContext,
  stackId: number,
  startedAt: string,
  change: 'start' | 'date' | 'page',
): Message | null {
  const addedAt = context.yard().boards.firstAddedAt(stackId);
  if (addedAt === null) return null;
  const years = Math.floor((Date.parse(addedAt) - Date.parse(startedAt)) / YEAR_MS);
  return years >= LONG_BEFORE_YEARS ? message('round-date.long-before-stack', { years, change }) : null;
}
