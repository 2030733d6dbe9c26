import { type UseQueryResult, useQueries, useQuery as useRemembered } from '@tanstack/react-query';
import type { QueryName, RequestInput, RequestOutput } from '../../shared-core/contract/requests.ts';
import { wentWithLink } from '../stores/link.ts';
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

/** An error's sentence, made and logged once however often it is shown. */
const sentences = new WeakMap<Error, string>();

function askedOf<T>({ data, error: failure, isPending, refetch }: UseQueryResult<T>): Asked<T> {
  // The notice at the top says that nothing answers, and all is asked again once something does.
  const isLost = failure !== null && wentWithLink(failure);
  const error = isLost ? null : failure;
  if (error && !sentences.has(error)) sentences.set(error, sentenceOf(error));
  return {
    output: data ?? null,
    error: error && (sentences.get(error) ?? null),
    loading: isPending || (isLost && data === undefined),
    again: refetch,
  };
}

/** Asks the machine for something to show, and again whenever it changes or the machine comes back. */
export const useQuery = <N extends QueryName>(name: N, input: RequestInput<N>): Asked<RequestOutput<N>> =>
  askedOf(useRemembered(queryOf(name, input), client));

/** The same query with several inputs, as the pages of a list; in the order of the inputs. */
export const useEach = <N extends QueryName>(
  name: N,
  inputs: readonly RequestInput<N>[],
): Asked<RequestOutput<N>>[] =>
  useQueries({ queries: inputs.map((input) => queryOf(name, input)) }, client).map((answer) =>
    askedOf<RequestOutput<N>>(answer),
  );
