import {
  type CheckedInput,
  type QueryName,
  type RequestInput,
  type RequestOutput,
  topicsOf,
} from '../../shared-core/contract/requests.ts';
import { isTouched, type Topic } from '../../shared-core/contract/topics.ts';
import { isShown } from '../stores/yard.ts';
import { bridge } from './bridge.ts';

/** What came of a query: its output, or why there is none. */
export type Asked<N extends QueryName> = { output: RequestOutput<N> } | { error: unknown };

/**
 * Asks a query, and again whenever something that it shows changes. While one answer is on its way no second one is
 * asked for: a change meanwhile is followed up when it is there.
 *
 * @returns a function that stops asking
 */
export function keepAsking<N extends QueryName>(
  name: N,
  input: RequestInput<N>,
  show: (asked: Asked<N>) => void,
): () => void {
  let stopped = false;
  let isUnderWay = false;
  /** Null before the first answer, when nobody knows what would touch it. */
  let shown: readonly Topic[] | null = null;
  let changedMeanwhile = new Set<Topic>();

  const isNews = (changed: ReadonlySet<Topic>): boolean =>
    changed.size > 0 && (shown === null || isTouched(shown, changed));

  async function ask(): Promise<void> {
    isUnderWay = true;
    changedMeanwhile = new Set();
    try {
      const output = await bridge().query(name, input);
      if (stopped) return;
      shown = topicsOf(name, input as CheckedInput<N>, output);
      show({ output });
    } catch (error) {
      if (stopped) return;
      show({ error });
    }
    isUnderWay = false;
    if (isNews(changedMeanwhile)) void ask();
  }

  const unfollow = bridge().on('changed', ({ yard, topics }) => {
    if (!isShown(yard)) return;
    if (isUnderWay) for (const topic of topics) changedMeanwhile.add(topic);
    else if (isNews(new Set(topics))) void ask();
  });
  void ask();
  return () => {
    stopped = true;
    unfollow();
  };
}
