import { useQueries, useQuery as useRemembered } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { QueryName, RequestInput, RequestOutput } from '../../shared-core/contract/requests.ts';
import { sentenceOf } from '../stores/notices.ts';
import { client, queryOf } from './asking.ts';

/** What a screen knows of something it asked for. `output` stays on screen while a newer one is on its way. */
export interface Asked<T> {
  output: T | null;
  /** Why the newest asking failed; null where it did not. */
  error: string | null;
  loading: boolean;
  again: () => void;
}

/** Asks the machine for something to show, and again whenever it changes or the machine comes back. */
export function useQuery<N extends QueryName>(name: N, input: RequestInput<N>): Asked<RequestOutput<N>> {
  const { data, error, isPending, refetch } = useRemembered(queryOf(name, input), client);
  const sentence = useMemo(() => error && sentenceOf(error), [error]);
  return { output: data ?? null, error: sentence, loading: isPending, again: refetch };
}

/** The same query with several inputs, as the pages of a list; in the order of the inputs. */
export function useEach<N extends QueryName>(
  name: N,
  inputs: readonly RequestInput<N>[],
): Asked<RequestOutput<N>>[] {
  const answers = useQueries({ queries: inputs.map((input) => queryOf(name, input)) }, client);
  return answers.map(({ data, error, isPending, refetch }) => ({
    output: data ?? null,
    error: error && sentenceOf(error),
    loading: isPending,
    again: refetch,
  }));
}
