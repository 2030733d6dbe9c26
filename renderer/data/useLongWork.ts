import { useEffect, useState } from 'react';
import type { EventData } from '../../shared-core/contract/events.ts';
import { attempt } from '../stores/notices.ts';
import { bridge } from './bridge.ts';
import { newUuid } from './uuid.ts';

/** Work that takes long: how far the machine is with it, and how to stop it. */
export function useLongWork() {
  const [underWay, setUnderWay] = useState<EventData<'work.progress'> | null>(null);
  useEffect(
    () =>
      bridge().on('work.progress', (news) => setUnderWay((now) => (now?.work === news.work ? news : now))),
    [],
  );
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
    /** @returns what came of it; undefined where it was stopped or failed, and the person reads why */
    run: <T>(ask: (work: string) => Promise<T>): Promise<T | undefined> => attempt(follow(ask)),
    cancel: (): void => {
      if (underWay) void attempt(bridge().command('work.cancel', { work: underWay.work }));
    },
  };
}
