import type { ReactNode } from 'react';
import type { Asked } from '../data/useQuery.ts';
import { Failed, Loading } from './Screen.tsx';

/** A query that is waited for. Without `again` there is nothing to try again. */
type Awaited<T> = Pick<Asked<T>, 'output' | 'error'> & { again?: (() => void) | undefined };

/**
 * What is shown of one or several queries once all of them have come: until then that they are loading, and why where
 * one failed. A newer asking that fails leaves the last answer on screen.
 */
export function Await<T extends readonly unknown[]>({
  of,
  children,
}: {
  of: { [K in keyof T]: Awaited<T[K]> };
  children: (...outputs: T) => ReactNode;
}) {
  const asked: readonly Awaited<unknown>[] = of;
  const failed = asked.find(({ error }) => error !== null);
  const isThere = asked.every(({ output }) => output !== null);
  return (
    <>
      {failed?.error && <Failed sentence={failed.error} again={failed.again} />}
      {isThere && children(...(asked.map(({ output }) => output) as unknown as T))}
      {!isThere && !failed && <Loading />}
    </>
  );
}
