import { HOUR_MS } from '../../../shared-core/time.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';

/** A clock that was corrected by less than this since the last act is no news. */
const LEAST_BEHIND_MS = HOUR_MS;

/**
 * Whether the machine's clock can be right.
 * @param builtAt  when the app was built; null where that is not known
 */
export function createClockCheck(context: QueryContext, builtAt: string | null) {
  function problem(): Message | null {
    const nowAt = context.now();
    const isBefore = (at: string) => Date.parse(nowAt) < Date.parse(at) - LEAST_BEHIND_MS;
    const lastAt = context.yard().acts.newestAt();
    if (lastAt !== null && isBefore(lastAt)) return message('clock.before-last-act', { nowAt, lastAt });
    if (builtAt !== null && isBefore(builtAt))
      return message('clock.before-build', { nowAt, builtOn: builtAt });
    return null;
  }
  return {
    /** What is wrong with it; null where nothing is known to be. */
    problem,
    queries: { 'rounds.clock': () => ({ problem: problem() }) } satisfies Partial<Queries>,
  };
}
