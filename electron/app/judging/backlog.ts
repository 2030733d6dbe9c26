import { setImmediate } from 'node:timers/promises';
import type { Topic } from '../../../shared-core/contract/topics.ts';
import type { AppContext } from '../context.ts';

/** Work in the background holds up the window, and the meter, by no more than this at a time. */
const MOST_AT_A_TIME_MS = 8;
/** With more topics than this, everything may have changed. */
const MOST_TOPICS = 200;

/**
 * Lets everything else have its turn when it is due; awaited between the steps of long work.
 * @returns false once another yard was opened: work on the one before then stops
 */
export type YieldIfDue = () => Promise<boolean>;

/**
 * Boards or rounds of the open yard that wait for something to be worked out, one after the other in the background.
 * What that changed is known when none is left.
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
  /** Raised when another yard is opened. */
  let era = 0;

  async function work(mine: number): Promise<void> {
    let beganMs = performance.now();
    const changed = new Set<Topic>();
    const yieldIfDue = async () => {
      if (performance.now() - beganMs >= MOST_AT_A_TIME_MS) {
        await setImmediate();
        beganMs = performance.now();
      }
      return mine === era;
    };
    try {
      while (await yieldIfDue()) {
        const [id] = waiting;
        if (id === undefined) break;
        waiting.delete(id);
        const topics = await workOut(id, yieldIfDue);
        if (changed.size <= MOST_TOPICS) for (const topic of topics) changed.add(topic);
      }
    } catch (error) {
      if (mine !== era) return;
      // What is left is taken up when the yard is opened again.
      waiting.clear();
      context.reportFault(error);
    }
    if (mine !== era) return;
    working = false;
    whenNoneIsLeft();
    context.changed(changed.size > MOST_TOPICS ? ['yard'] : changed);
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
    },
  };
}
