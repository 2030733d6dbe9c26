import { isoOf } from '../../../shared-core/time.ts';
import type { RoundRow } from '../../store/round-table.ts';
import type { AppContext } from '../context.ts';

/** What time it is in a round: never before it began, though the clock is set back meanwhile. */
export function createRoundClock(context: AppContext) {
  /** When each round began that was started since this yard was opened, on the clock that only runs forward, ms. */
  const began = new Map<number, number>();
  return {
    begin: (roundId: number): void => {
      began.set(roundId, context.monotonicMs());
    },
    /** Now; where the clock tells a time before the round, its beginning and what is known to have passed since. */
    now: ({ id, startedAt }: Pick<RoundRow, 'id' | 'startedAt'>): string => {
      const now = context.now();
      const startMs = Date.parse(startedAt);
      if (Date.parse(now) >= startMs) return now;
      const passedMs = context.monotonicMs() - (began.get(id) ?? context.monotonicMs());
      return isoOf(startMs + Math.round(passedMs));
    },
    leave: (): void => began.clear(),
  };
}
export type RoundClock = ReturnType<typeof createRoundClock>;
