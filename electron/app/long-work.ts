import { Refusal } from '../../shared-core/contract/answer.ts';
import { message } from '../../shared-core/words/message.ts';
import type { AppContext } from './context.ts';
import type { Commands } from './handlers.ts';

/** A window need not be told more often. */
const TELL_EVERY_MS = 100;

/** What long work is given: to tell how far it is, and to know when it is to stop. */
export interface UnderWay {
  tell(done: number, total: number): void;
  signal: AbortSignal;
}

/** Work of windows that takes long: each window hears how far its own is, and can stop it. */
export function createLongWork({ emitTo }: Pick<AppContext, 'emitTo'>) {
  const underWay = new Map<string, AbortController>();
  /** Work that no window follows, too. */
  const all = new Set<AbortController>();
  return {
    /**
     * @param work  the window's id of it; null for work that it does not follow
     * @throws Refusal once it was stopped
     */
    async run<T>(window: string, work: string | null, make: (underWay: UnderWay) => Promise<T>): Promise<T> {
      const stop = new AbortController();
      const key = `${window} ${work}`;
      all.add(stop);
      if (work !== null) underWay.set(key, stop);
      let toldMs = Number.NEGATIVE_INFINITY;
      const tell = (done: number, total: number): void => {
        if (work === null || performance.now() - toldMs < TELL_EVERY_MS) return;
        toldMs = performance.now();
        emitTo(window, 'work.progress', { work, done, total });
      };
      try {
        return await make({ tell, signal: stop.signal });
      } catch (error) {
        stop.signal.throwIfAborted();
        throw error;
      } finally {
        all.delete(stop);
        if (underWay.get(key) === stop) underWay.delete(key);
      }
    },
    /** The app ends. */
    stop: (): void => {
      for (const each of all) each.abort(new Refusal(message('refusal.closing')));
    },
    commands: {
      'work.cancel': ({ work }, window) => {
        underWay.get(`${window} ${work}`)?.abort(new Refusal(message('refusal.stopped')));
        return {};
      },
    } satisfies Partial<Commands>,
  };
}
/** The long work of all windows: its progress, and the way to stop it. */
export type LongWork = ReturnType<typeof createLongWork>;
