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
  return {
    /** Null while there is none; `total` 0 until that is known. */
    underWay,
    /** @returns what came of it; undefined where it was stopped or failed, which the person is told */
    async run<T>(ask: (work: string) => Promise<T>): Promise<T | undefined> {
      const work = newUuid();
      setUnderWay({ work, done: 0, total: 0 });
      try {
        return await attempt(ask(work));
      } finally {
        setUnderWay(null);
      }
    },
    cancel: (): void => {
      if (underWay) void attempt(bridge().command('work.cancel', { work: underWay.work }));
    },
  };
}
