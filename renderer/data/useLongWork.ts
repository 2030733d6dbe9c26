import { useEffect, useRef, useState } from 'react';
import { Refusal } from '../../shared-core/contract/answer.ts';
import type { EventData } from '../../shared-core/contract/events.ts';
import { attempt, tellDone, tellProblem } from '../stores/notices.ts';
import { useYard } from '../stores/yard.ts';
import { bridge } from './bridge.ts';
import { newUuid } from './uuid.ts';

/** What this person did, and not what went wrong. */
const STOPPED_BY_PERSON = ['refusal.stopped', 'refusal.yard-left'];

const stop = (work: string): void => void attempt(bridge().command('work.cancel', { work }));

/** Work that takes long: how far the machine is with it, and how to stop it. */
export function useLongWork() {
  const [underWay, setUnderWay] = useState<EventData<'work.progress'> | null>(null);
  /** What `run` waits for: it goes on while another screen is open, and ends where the person opens another yard. */
  const running = useRef<{ work: string; yard: string | null | undefined } | null>(null);
  useEffect(() => {
    const unfollow = bridge().on('work.progress', (news) =>
      setUnderWay((now) => (now?.work === news.work ? news : now)),
    );
    return () => {
      unfollow();
      const { work, yard } = running.current ?? {};
      if (work !== undefined && useYard.getState().info?.uuid !== yard) stop(work);
    };
  }, []);
  async function follow<T>(ask: (work: string) => Promise<T>): Promise<T> {
    const work = newUuid();
    setUnderWay({ work, done: 0, total: 0 });
    try {
      return await ask(work);
    } finally {
      setUnderWay(null);
    }
  }
  return {
    /** Null while there is none; `total` 0 until that is known. */
    underWay,
    /** Throws as what was asked for does. */
    follow,
    /**
     * @param stopped  what is said where the person stopped it
     * @returns what came of it; undefined where it was stopped or failed, and the person reads why
     */
    async run<T>(ask: (work: string) => Promise<T>, stopped: string): Promise<T | undefined> {
      try {
        return await follow((work) => {
          running.current = { work, yard: useYard.getState().info?.uuid };
          return ask(work);
        });
      } catch (error) {
        if (error instanceof Refusal && STOPPED_BY_PERSON.includes(error.problem.code)) tellDone(stopped);
        else tellProblem(error);
        return undefined;
      } finally {
        running.current = null;
      }
    },
    cancel: (): void => {
      if (underWay) stop(underWay.work);
    },
  };
}
/** What a part needs that shows long work of its screen. */
export type LongWork = ReturnType<typeof useLongWork>;
