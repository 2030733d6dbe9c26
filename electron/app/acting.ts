import { createHash } from 'node:crypto';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { Act } from '../store/act-table.ts';
import type { Afterwards } from './afterwards.ts';
import type { AppContext } from './context.ts';

/** What an act came to, which is on disk, and why some of what follows from it failed. */
export interface Done<T> {
  output: T;
  failures: readonly unknown[];
}
/** Does an act: everything that `work` writes, in one transaction, and then what follows from it. */
export type DoAct = <T>(act: Omit<Act, 'at'>, work: () => T) => Done<T>;

/** The disk failed while an act was committed, and failed again when it was asked what came of it. */
export class OutcomeUnknown extends Error {
  override name = 'OutcomeUnknown';
  constructor(cause: unknown) {
    super(String(cause), { cause });
  }
}

export const hashOf = (input: unknown): string =>
  createHash('sha256').update(JSON.stringify(input)).digest('hex');

/** Acts, whether a window asked for them or, as with a value that settles, nobody. */
export function createActing({ yard, now }: Pick<AppContext, 'yard' | 'now'>, afterwards: Afterwards): DoAct {
  /**
   * What came of an act whose commit failed.
   * @throws the error itself where nothing was saved; OutcomeUnknown
   */
  function findOut<T>(id: string, error: unknown): T {
    // A full disk takes the last page of a commit or it does not: without it nothing is saved.
    if (String((error as { code?: unknown })?.code) === 'SQLITE_FULL') throw error;
    const { acts, transaction } = yard();
    try {
      const done = acts.find(id);
      if (done) return done.outcome as T;
      transaction(acts.overwriteFailedCommit);
    } catch {
      throw new OutcomeUnknown(error);
    }
    throw error;
  }

  return (act, work) => {
    const { acts, transaction, rememberNewestAct } = yard();
    let isWritten = false;
    return afterwards.run(() => {
      try {
        const output = transaction(() => {
          acts.begin({ ...act, at: now() });
          const outcome = work();
          acts.finish(outcome);
          isWritten = true;
          return outcome;
        });
        rememberNewestAct();
        return output;
      } catch (error) {
        // A refusal comes before the commit.
        if (!isWritten || error instanceof Refusal) throw error;
        return findOut(act.id, error);
      }
    });
  };
}
