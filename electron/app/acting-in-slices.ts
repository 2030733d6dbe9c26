import { setTimeout as pause, setImmediate } from 'node:timers/promises';
import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import type { Yard } from '../store/yard.ts';
import type { Acting, AskedAct, Done } from './acting.ts';
import type { AppContext } from './context.ts';
import { isDisturbance } from './fault-message.ts';
import type { LongWork, UnderWay } from './long-work.ts';
import { createBatches, isSlices, type Progress, type Slices } from './slices.ts';

/** How often other windows hear how far it is. They hear nothing of a shorter act. */
const TELL_OTHERS_EVERY_MS = 500;
/** Writing is held while a backup takes the place of the yard. */
const ASK_AGAIN_MS = 50;

/** Rolls back the first slice of an act that has more: it is done when its turn comes. */
class NotOneSlice extends Error {
  override name = 'NotOneSlice';
}

interface UnderWayAct extends AskedAct {
  done: Promise<Done<unknown>>;
}

/**
 * Does acts on many records in slices, between which everybody else has their turn; one such act after the other. It is
 * all or nothing: where one is stopped or refused on the way, its slices are taken back. Where the app ends in between, the next
 * opening of the yard does that (`opening.ts`). One that is a single slice is done as any other act.
 */
export function createActingInSlices(
  context: AppContext,
  slice: Acting['slice'],
  longWork: Pick<LongWork, 'run'>,
) {
  const underWay = new Map<string, UnderWayAct>();
  /** Done once no act is under way that came before. */
  let turn: Promise<unknown> = Promise.resolve();

  function isOpen(yard: Yard): boolean {
    try {
      return context.yard() === yard;
    } catch {
      return false;
    }
  }

  /** Lets everybody else have their turn. Answers false once the yard is no longer open. */
  async function mayGoOn(yard: Yard): Promise<boolean> {
    await setImmediate();
    if (isOpen(yard) && context.mayWrite() && yard.checkpointInSlices()) await setImmediate();
    while (isOpen(yard) && !context.mayWrite()) await pause(ASK_AGAIN_MS);
    return isOpen(yard);
  }

  /** @throws what the disk refused it by */
  async function takeBack(id: string, yard: Yard): Promise<void> {
    const batches = createBatches();
    let isLeft = true;
    while (isLeft) {
      if (!(await mayGoOn(yard))) return;
      yard.transaction(() =>
        batches.fill((size) => {
          const { boardIds, isDone } = yard.acts.takeBack(id, size, context.now());
          yard.findings.outdate(boardIds);
          isLeft = !isDone;
          return isLeft;
        }),
      );
    }
    context.changed(['yard']);
  }

  /** Where the disk refuses it, it is tried again until it is done, and no other act in slices begins before. */
  async function takeBackLater(id: string, yard: Yard): Promise<void> {
    const me = {};
    for (;;) {
      try {
        await takeBack(id, yard);
        break;
      } catch (error) {
        if (!isDisturbance(error)) return context.reportFault(error);
        context.delays.begin(me, error, message('refusal.partly-changed'));
        await pause(context.retryAfterMs, undefined, { ref: false });
      }
    }
    context.delays.end(me);
  }

  /** Calls `work` once all before it are done. */
  function inTurn<T>(work: () => Promise<T>): Promise<T> {
    const mine = turn.then(work);
    turn = mine.catch(() => undefined);
    return mine;
  }

  /** Other windows see boards of which some are changed, and some are not yet. */
  function createTellingOthers(window: string) {
    let toldMs = context.monotonicMs();
    let isTold = false;
    return {
      tell: (progress: Progress): void => {
        if (context.monotonicMs() - toldMs < TELL_OTHERS_EVERY_MS) return;
        toldMs = context.monotonicMs();
        isTold = true;
        context.emitToOthers(window, 'work.ofOther', { progress });
      },
      end: (): void => {
        if (isTold) context.emitToOthers(window, 'work.ofOther', { progress: null });
      },
    };
  }

  async function goOn<T>(
    act: AskedAct,
    begin: () => Slices<T>,
    { signal, tell }: UnderWay,
  ): Promise<Done<T>> {
    const yard = context.yard();
    // It was tried as one slice, or another act had its last one just now.
    if (!(await mayGoOn(yard))) throw new Refusal(message('refusal.stopped'));
    signal.throwIfAborted();
    const slices = begin();
    const failures: unknown[] = [];
    const others = createTellingOthers(act.who);
    let which: 'first' | 'next' = 'first';
    try {
      for (;;) {
        const came = slice(act, slices, which);
        failures.push(...came.failures);
        if (came.output.done) return { output: came.output.value, failures };
        which = 'next';
        tell(came.output.value.done, came.output.value.total);
        others.tell(came.output.value);
        if (!(await mayGoOn(yard))) throw new Refusal(message('refusal.stopped'));
        signal.throwIfAborted();
      }
    } catch (error) {
      if (which === 'first' || !isOpen(yard)) throw error;
      try {
        await takeBack(act.id, yard);
      } catch {
        turn = takeBackLater(act.id, yard);
        throw new Refusal(message('refusal.taken-back-later'));
      }
      throw error;
    } finally {
      others.end();
    }
  }

  return {
    /** The same act while it is under way. */
    find: (id: string): UnderWayAct | undefined => underWay.get(id),
    /**
     * @param work  the window's id of it; null for work that it does not follow
     * @param begin  does it at once, or makes its slices, with nothing written before the first is asked for
     */
    async run<T>(act: AskedAct, work: string | null, begin: () => T | Slices<T>): Promise<Done<T>> {
      try {
        return context.act(act, () => {
          const came = begin();
          if (!isSlices(came)) return came;
          const { done, value } = came.next();
          if (!done) throw new NotOneSlice();
          return value;
        });
      } catch (error) {
        if (!(error instanceof NotOneSlice)) throw error;
      }
      const done = longWork
        .run(act.who, work, (following) => inTurn(() => goOn(act, begin as () => Slices<T>, following)))
        .finally(() => underWay.delete(act.id));
      underWay.set(act.id, { ...act, done });
      return done;
    },
    /** Until none is under way. */
    whenIdle: async (): Promise<void> => {
      for (let seen: unknown; seen !== turn; ) {
        seen = turn;
        await seen;
      }
    },
    /** A yard was opened: what is unfinished in it is taken back, where its opening could not. */
    takeUp: (): void => {
      const yard = context.yard();
      for (const id of yard.acts.unfinished()) void inTurn(() => takeBackLater(id, yard));
    },
  };
}
export type ActingInSlices = ReturnType<typeof createActingInSlices>;
