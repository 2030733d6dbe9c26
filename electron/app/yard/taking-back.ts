import type { Yard } from '../../store/yard.ts';
import { isDisturbance } from '../fault-message.ts';

/** So many changes at a time: where this is ended too, it goes on from there. */
const MOST_AT_A_TIME = 5000;

/**
 * Takes back what unfinished acts did, before anybody sees the yard. Where the disk refuses it, it is left for the
 * background (`acting-in-slices.ts`).
 * @returns whether something was taken back, all of it
 */
export function takeBackUnfinished({ acts, findings, transaction }: Yard, now: () => string): boolean {
  try {
    const unfinished = acts.unfinished();
    for (const id of unfinished) {
      let isDone = false;
      while (!isDone) {
        isDone = transaction(() => {
          const taken = acts.takeBack(id, MOST_AT_A_TIME, now());
          findings.outdate(taken.boardIds);
          return taken.isDone;
        });
      }
    }
    return unfinished.length > 0;
  } catch (error) {
    if (isDisturbance(error)) return false;
    throw error;
  }
}
