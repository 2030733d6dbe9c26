import type { Topic } from '../../shared-core/contract/topics.ts';

/** What changes so soon after another change is followed up together with what else does. */
const TOGETHER_MS = 100;

/**
 * Follows up a change at once, and what changes soon after it together: where hundreds of changes a second come, as while
 * all boards are forecast, asking again for each would be all that window and machine do.
 */
export function inBatches(follow: (changed: ReadonlySet<Topic>) => void): (topics: readonly Topic[]) => void {
  /** Null where the last change was long ago. */
  let waiting: Set<Topic> | null = null;

  function begin(changed: ReadonlySet<Topic>): void {
    waiting = new Set();
    setTimeout(goOn, TOGETHER_MS);
    follow(changed);
  }

  function goOn(): void {
    const changed = waiting;
    waiting = null;
    if (changed && changed.size > 0) begin(changed);
  }

  return (topics) => {
    if (waiting === null) begin(new Set(topics));
    else for (const topic of topics) waiting.add(topic);
  };
}
