import { setImmediate } from 'node:timers/promises';
import type { Topic } from '../../../shared-core/contract/topics.ts';
import type { AppContext } from '../context.ts';
import { isDisturbance } from '../fault-message.ts';

/**
 * Work in the background holds up the window, and the meter, by hardly more than this at a time: with a commit, which waits
 * for the disk, it is within the frame in which a live value is drawn.
 */
export const MOST_AT_A_TIME_MS = 4;
/** With more topics than this, everything may have changed. */
const MOST_TOPICS = 200;

/**
 * Lets everything else have its turn when it is due; awaited between the steps of long work.
 * @returns false once another yard was opened: work on the one before then stops
 */
export type YieldIfDue = () => Promise<boolean>;

/**
 * Boards or rounds of the open yard that wait for something to be worked out, one after the other in the background.
 * What that changed is known when none is left. Where the disk refuses it, all wait and are tried again later; one that
 * fails by a fault of ours is left for the next opening of the yard, and the others are worked out.
 *
 * @param workOut  what it does for one, and what that changed
 */
export function createBacklog(
  context: AppContext,
  workOut: (id: number, yieldIfDue: YieldIfDue) => readonly Topic[] | Promise<readonly Topic[]>,
  whenNoneIsLeft: () => void = () => undefined,
) {
  const waiting = new Set<number>();
  let working = false;
  let retry: NodeJS.Timeout | undefined;
  /** Raised when another yard is opened. */
  let era = 0;

  async function work(mine: number): Promise<void> {
    // What is under way is answered first.
    let beganMs = Number.NEGATIVE_INFINITY;
    const changed = new Set<Topic>();
    let disturbance: unknown = null;
    let isFaultReported = false;
    const yieldIfDue = async () => {
      if (performance.now() - beganMs >= MOST_AT_A_TIME_MS) {
        await setImmediate();
        beganMs = performance.now();
      }
      return mine === era;
    };
    while (disturbance === null && (await yieldIfDue())) {
      const [id] = waiting;
      if (id === undefined) break;
      waiting.delete(id);
      try {
        const topics = await workOut(id, yieldIfDue);
        if (changed.size <= MOST_TOPICS) for (const topic of topics) changed.add(topic);
      } catch (error) {
        if (mine !== era) return;
        if (isDisturbance(error)) {
          waiting.add(id);
          disturbance = error;
        } else if (!isFaultReported) {
          // A thousand boards that fail alike are one line of the fault log.
          isFaultReported = true;
          context.reportFault(error);
        }
      }
    }
    if (mine !== era) return;
    if (disturbance === null) end();
    else {
      context.delays.begin(waiting, disturbance);
      retry = setTimeout(() => void work(mine), context.retryAfterMs);
      retry.unref();
    }
    context.changed(changed.size > MOST_TOPICS ? ['yard'] : changed);
  }

  function end(): void {
    working = false;
    context.delays.end(waiting);
    try {
      whenNoneIsLeft();
    } catch (error) {
      context.reportFault(error);
    }
  }

  return {
    add: (ids: readonly number[]): void => {
      for (const id of ids) waiting.add(id);
      if (working || waiting.size === 0) return;
      working = true;
      void work(era);
    },
    /** Forgets everything that waits, when another yard is opened. */
    leave: (): void => {
      era++;
      working = false;
      waiting.clear();
      clearTimeout(retry);
      context.delays.end(waiting);
    },
  };
}
