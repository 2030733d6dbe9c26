import { Worker } from 'node:worker_threads';
import type { BoardForeseen, BoardToForesee, ForecastQuestion, ForecastReply } from './forecast-messages.ts';

interface Waiting {
  resolve: (answers: BoardForeseen[]) => void;
  reject: (error: Error) => void;
}

/**
 * Asks a thread of its own for forecasts, so that nothing else waits for them. The thread is started with the first
 * question, and again after it ended by a fault.
 *
 * @param script  the built, or in tests the bare, `forecast-worker`
 */
export function createForecaster(script: string) {
  let worker: Worker | null = null;
  let nextId = 1;
  const waiting = new Map<number, Waiting>();

  function start(): Worker {
    const started = new Worker(script);
    started.unref();
    started.on('message', (reply: ForecastReply) => {
      const asker = waiting.get(reply.id);
      waiting.delete(reply.id);
      if ('fault' in reply) asker?.reject(new Error(reply.fault));
      else asker?.resolve(reply.answers);
    });
    started.on('error', (error) => end(error as Error));
    started.on('exit', () => end(new Error('The forecaster ended before it answered.')));

    function end(error: Error): void {
      if (worker !== started) return;
      worker = null;
      for (const { reject } of waiting.values()) reject(error);
      waiting.clear();
    }
    return started;
  }

  return {
    foresee: (boards: BoardToForesee[], wanted: number[]): Promise<BoardForeseen[]> => {
      worker ??= start();
      const question: ForecastQuestion = { id: nextId++, boards, wanted };
      return new Promise((resolve, reject) => {
        waiting.set(question.id, { resolve, reject });
        worker?.postMessage(question);
      });
    },
    close: async (): Promise<void> => {
      await worker?.terminate();
    },
  };
}
export type Forecaster = ReturnType<typeof createForecaster>;
