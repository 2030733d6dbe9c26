/**
 * Keeps the app's threads for the next yard of a test file. Each yard has its own, and loading one takes a tenth to a
 * quarter of a second of the processor's time, longer than most tests. A thread that still owes an answer is ended, as
 * in the app. None of them remembers anything of a yard but that of a table to import, which is first asked to read one.
 */
import type { Worker } from 'node:worker_threads';
import { vi } from 'vitest';
import { threadSources } from '../../electron/app/thread-files.ts';

const scripts = new Set<unknown>(Object.values(threadSources));

vi.mock('node:worker_threads', async (importOriginal) => {
  const original = await importOriginal<typeof import('node:worker_threads')>();
  const idle = new Map<string, Worker[]>();

  function start(script: string): Worker {
    const worker = new original.Worker(script);
    let unanswered = 0;
    const post = worker.postMessage.bind(worker);
    const end = worker.terminate.bind(worker);
    const hear = (reply: unknown) => {
      if (typeof reply === 'object' && reply !== null && ('answer' in reply || 'fault' in reply))
        unanswered--;
    };
    worker.on('message', hear);
    return Object.assign(worker, {
      postMessage: (question: unknown) => {
        unanswered++;
        post(question);
      },
      terminate: async () => {
        if (unanswered > 0) return end();
        for (const event of ['message', 'error', 'exit']) worker.removeAllListeners(event);
        worker.on('message', hear);
        idle.set(script, [...(idle.get(script) ?? []), worker]);
        return 0;
      },
    });
  }

  return {
    ...original,
    Worker: function KeptWorker(script: string) {
      if (!scripts.has(script)) return new original.Worker(script);
      return idle.get(script)?.pop() ?? start(script);
    },
  };
});
