import { createHash } from 'node:crypto';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { Act } from '../store/act-table.ts';
import type { Afterwards } from './afterwards.ts';
import type { AppContext } from './context.ts';
import type { Progress, Slices } from './slices.ts';

/** What an act came to, which is on disk, and why some of what follows from it failed. */
export interface Done<T> {
  output: T;
  failures: readonly unknown[];
}
/** An act before it is done. */
export type AskedAct = Omit<Act, 'at'>;
/** Does an act: everything that `work` writes, in one transaction, and then what follows from it. */
export type DoAct = <T>(act: AskedAct, work: () => T) => Done<T>;

/** The disk failed while an act was committed, and failed again when it was asked what came of it. */
export class OutcomeUnknown extends Error {
  override name = 'OutcomeUnknown';
  constructor(cause: unknown) {
    super(String(cause), { cause });
  }
}

export const hashOf = (input: unknown): string =>
  createHash('sha256').update(JSON.stringify(input)).digest('hex');

const isFull = (error: unknown): boolean => (error as { code?: unknown } | null)?.code === 'SQLITE_FULL';

/** Acts, whether a window asked for them or, as with a value that settles, nobody. */
export function createActing({ yard, now }: Pick<AppContext, 'yard' | 'now'>, afterwards: Afterwards) {
  /**
   * What came of an act whose commit failed.
   * @throws the error itself where it is not finished; OutcomeUnknown
   */
  function findOut<T>(id: string, error: unknown): T {
    // A full disk takes the last page of a commit or it does not: without it nothing is saved.
    if (isFull(error)) throw error;
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

  /** Commits all that `write` writes of an act, and then does what follows from that. */
  function commit<T>(write: () => T, whenCommitFailed: (error: unknown) => T): Done<T> {
    const { transaction, rememberNewestAct } = yard();
    let isWritten = false;
    return afterwards.run(() => {
      try {
        const output = transaction(() => {
          const written = write();
          isWritten = true;
          return written;
        });
        rememberNewestAct();
        return output;
      } catch (error) {
        // A refusal comes before the commit.
        if (!isWritten || error instanceof Refusal) throw error;
        return whenCommitFailed(error);
      }
    });
  }

  const tryAct: DoAct = (asked, work) => {
    const { acts } = yard();
    return commit(
      () => {
        acts.begin({ ...asked, at: now() });
        const outcome = work();
        acts.finish(outcome);
        return outcome;
      },
      (error) => findOut(asked.id, error),
    );
  };

  const act: DoAct = (asked, work) => {
    try {
      return tryAct(asked, work);
    } catch (error) {
      if (!isFull(error)) throw error;
      // Once the WAL is in the file, it begins again where it has room. Nothing came of the act so far.
      yard().checkpoint();
      return tryAct(asked, work);
    }
  };

  /** Does the next slice of an act, which is finished with the last one. */
  function slice<T>(
    asked: AskedAct,
    slices: Slices<T>,
    which: 'first' | 'next',
  ): Done<IteratorResult<Progress, T>> {
    const { acts } = yard();
    return commit(
      () => {
        if (which === 'first') acts.begin({ ...asked, at: now() });
        else acts.resume(asked.id);
        const came = slices.next();
        if (came.done) acts.finish(came.value);
        else acts.pause();
        return came;
      },
      (error) => ({ done: true, value: findOut<T>(asked.id, error) }),
    );
  }

  return { act, slice };
}
export type Acting = ReturnType<typeof createActing>;
