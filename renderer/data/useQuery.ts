import { useEffect, useState } from 'react';
import type { QueryName, RequestInput, RequestOutput } from '../../shared-core/contract/requests.ts';
import { useLink } from '../stores/link.ts';
import { sentenceOf } from '../stores/notices.ts';
import { keepAsking } from './keep-asking.ts';

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
  const [answered, setAnswered] = useState<{
    key: string;
    output: RequestOutput<N> | null;
    error: string | null;
  }>();
  const [asked, setAsked] = useState(0);
  const returns = useLink((link) => link.returns);
  const key = JSON.stringify([name, input]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: `returns` and `asked` are reasons to ask again; `input` is in `key`.
  useEffect(() => {
    const [askedName, askedInput] = JSON.parse(key) as [N, RequestInput<N>];
    return keepAsking(askedName, askedInput, (answer) => {
      if ('output' in answer) return setAnswered({ key, output: answer.output, error: null });
      setAnswered((before) => ({
        key,
        output: before?.key === key ? before.output : null,
        error: sentenceOf(answer.error),
      }));
    });
  }, [key, returns, asked]);

  const current = answered?.key === key ? answered : undefined;
  return {
    output: current?.output ?? null,
    error: current?.error ?? null,
    loading: current === undefined,
    again: () => setAsked((count) => count + 1),
  };
}
