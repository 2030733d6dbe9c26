import { setImmediate } from 'node:timers/promises';

/** Work in the background holds up the window, and the meter, by no more than this at a time. */
const MOST_AT_A_TIME_MS = 8;

/** What long work awaits between its steps: lets everything else have its turn when it is due. */
export function createBreather(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < MOST_AT_A_TIME_MS) return;
    await setImmediate();
    since = performance.now();
  };
}
