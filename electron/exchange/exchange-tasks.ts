import type { Outcome } from '../../shared-core/outcome.ts';
import { catalogFor } from '../../shared-core/words/languages.ts';
import type { UnderWay } from '../app/long-work.ts';
import { createOwnThread, type OwnThread } from '../app/own-thread.ts';
import { orRefused, outcomeOf } from '../app/thread-outcome.ts';
import { bringIn } from './bringing-in.ts';
import { type Export, writeExport } from './export-file.ts';

type Tell = UnderWay['tell'];

const exchangeTasks = {
  export: async (what: Export, tell: Tell) => writeExport(what, await catalogFor(what.display.locale), tell),
  bringIn,
};
type ExchangeTasks = typeof exchangeTasks;
type TaskName = keyof ExchangeTasks;

interface ExchangeQuestion {
  task: TaskName;
  input: unknown;
}
type ExchangeThread = OwnThread<ExchangeQuestion, Outcome<unknown>>;

export const doExchangeTask = ({ task, input }: ExchangeQuestion, tell: Tell): Promise<Outcome<unknown>> =>
  outcomeOf(() => exchangeTasks[task](input as never, tell));

/**
 * Has tasks done, each on its own thread, so that stopping one ends it at once and no other.
 * @param script  what the thread runs
 */
export function createExchangeThread(script: string) {
  return async <N extends TaskName>(
    task: N,
    input: Parameters<ExchangeTasks[N]>[0],
    { tell, signal }: UnderWay,
  ): Promise<Awaited<ReturnType<ExchangeTasks[N]>>> => {
    signal.throwIfAborted();
    const thread: ExchangeThread = createOwnThread(script);
    const stop = () => void thread.close();
    signal.addEventListener('abort', stop);
    try {
      return orRefused(await thread.ask({ task, input }, tell)) as Awaited<ReturnType<ExchangeTasks[N]>>;
    } finally {
      signal.removeEventListener('abort', stop);
      await thread.close();
    }
  };
}
export type AskExchange = ReturnType<typeof createExchangeThread>;
