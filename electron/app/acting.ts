import { createHash } from 'node:crypto';
import type { Act } from '../store/act-table.ts';
import type { Afterwards } from './afterwards.ts';
import type { AppContext } from './context.ts';

/** What an act came to, and why something that follows from it failed. */
export interface Done<T> {
  output: T;
  failure: { cause: unknown } | null;
}
/** Does an act: everything that `work` writes, in one transaction, and then what follows from it. */
export type DoAct = <T>(act: Omit<Act, 'at'>, work: () => T) => Done<T>;

export const hashOf = (input: unknown): string =>
  createHash('sha256').update(JSON.stringify(input)).digest('hex');

/** Acts, whether a window asked for them or, as with a value that settles, nobody. */
export function createActing({ yard, now }: Pick<AppContext, 'yard' | 'now'>, afterwards: Afterwards): DoAct {
  return (act, work) => {
    const { acts, transaction } = yard();
    return afterwards.run(() =>
      transaction(() => {
        acts.begin({ ...act, at: now() });
        const outcome = work();
        acts.finish(outcome);
        return outcome;
      }),
    );
  };
}
