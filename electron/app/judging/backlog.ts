import { setImmediate } from 'node:timers/promises';
import type { AppContext } from '../context.ts';

/** Work in the background holds up the window, and the meter, by no more than this at a time. */
const MOST_AT_A_TIME_MS = 8;

/**
 * Lets everything else have its turn when it is due; awaited between the steps of long work.
 * @returns false once another yard was opened: what was begun on the one before is then let be
 */
export type YieldIfDue = () => Promise<boolean>;

/**
 * Boards or rounds of the open yard that wait for something to be worked out, one after the other in the background.
 * When none is left the window is told to look again.
 */
export function createBacklog(
  context: AppContext,
  workOut: (id: number, yieldIfDue: YieldIfDue) => void | Promise<void>,
  whenNoneIsLeft: () => void = () => undefined,
) {
  const waiting = new Set<number>();
  let working = false;
  /** Raised when another yard is opened. */
  let era = 0;

  async function work(mine: number): Promise<void> {
    let since = performance.now();
    const yieldIfDue = async () => {
      if (performance.now() - since >= MOST_AT_A_TIME_MS) {
        await setImmediate();
        since = performance.now();
      }
      return mine === era;
    };
    try {
      while (await yieldIfDue()) {
        const [id] = waiting;
        if (id === undefined) break;
        waiting.delete(id);
        await workOut(id, yieldIfDue);
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
    context.emit('yard.changed', {});
  }

  return {
    add: (ids: readonly number[]): void => {
      for (const id of ids) waiting.add(id);
      if (working || waiting.size === 0) return;
      working = true;
      void work(era);
    },
    /** Lets everything that waits be, when another yard is opened. */
    leave: (): void => {
      era++;
      working = false;
      waiting.clear();
    },
  };
}
