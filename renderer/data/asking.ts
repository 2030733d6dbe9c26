import { notifyManager, type Query, QueryClient, queryOptions } from '@tanstack/react-query';
import {
  type CheckedInput,
  type QueryName,
  type RequestInput,
  type RequestOutput,
  topicsOf,
} from '../../shared-core/contract/requests.ts';
import { isTouched, type Topic } from '../../shared-core/contract/topics.ts';
import { useLink } from '../stores/link.ts';
import { isShown, useYard } from '../stores/yard.ts';
import { bridge } from './bridge.ts';
import { inBatches } from './in-batches.ts';

/** Every answer that the window has, so that a list asked for by five parts is asked once, and shown at once again. */
export const client = new QueryClient({
  defaultOptions: {
    queries: {
      // The machine is on this computer: what it refused once it refuses again, and no network comes and goes.
      retry: false,
      networkMode: 'always',
      refetchOnWindowFocus: false,
      refetchOnReconnect: false,
      // Changes arrive by topic. What depends on the time of day is asked again when it is next shown.
      staleTime: 60_000,
    },
  },
});

// An answer is on screen in the same turn that it came.
notifyManager.setScheduler(queueMicrotask);

type Key<N extends QueryName> = readonly [yard: string | null, name: N, input: RequestInput<N>];

/** How a query is asked for and under what it is remembered. */
export const queryOf = <N extends QueryName>(name: N, input: RequestInput<N>) =>
  queryOptions({
    queryKey: [useYard.getState().info?.uuid ?? null, name, input] as Key<N>,
    queryFn: (): Promise<RequestOutput<N>> => bridge().query(name, input),
  });

/**
 * From now on, asks again for whatever a change touches, and for everything after the machine came back.
 * @returns a function that ends it
 */
export function followChanges(): () => void {
  /** While an answer is on its way no second one is asked for; what changed meanwhile is followed up when it is there. */
  const meanwhile = new Map<string, Set<Topic>>();
  const cache = client.getQueryCache();

  function askIfTouched(query: Query, changed: ReadonlySet<Topic>): void {
    const [, name, input] = query.queryKey as unknown as Key<QueryName>;
    const output = query.state.data;
    // Before the first answer nobody knows what would touch it.
    const touched =
      output === undefined ||
      isTouched(topicsOf(name, input as CheckedInput<QueryName>, output as never), changed);
    // By its key, the library would make a text of the key of every query, for each of them.
    if (touched) void client.invalidateQueries({ predicate: (each) => each === query });
  }

  const follow = inBatches((changed) => {
    for (const query of cache.getAll()) {
      if (query.state.fetchStatus === 'idle') askIfTouched(query, changed);
      else meanwhile.set(query.queryHash, new Set([...(meanwhile.get(query.queryHash) ?? []), ...changed]));
    }
  });
  const stopHearing = bridge().on('changed', ({ yard, topics }) => {
    if (isShown(yard) && topics.length > 0) follow(topics);
  });
  const stopFollowingUp = cache.subscribe((event) => {
    if (event.type !== 'updated' || !['success', 'error'].includes(event.action.type)) return;
    const changed = meanwhile.get(event.query.queryHash);
    meanwhile.delete(event.query.queryHash);
    if (changed) queueMicrotask(() => askIfTouched(event.query, changed));
  });
  const stopWatchingLink = useLink.subscribe((link, before) => {
    if (link.returns !== before.returns) void client.invalidateQueries();
  });
  return () => {
    stopHearing();
    stopFollowingUp();
    stopWatchingLink();
  };
}
