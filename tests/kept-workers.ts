import type { Worker as Thread } from 'node:worker_threads';

/**
 * Threads that are kept for the next yard. Each yard has its own, and loading one takes a tenth to a quarter of a second
 * of the processor's time, longer than most tests. A thread that still owes an answer is ended, as in the app. None of
 * them remembers anything of a yard but that of a table to import, which is first asked to read one.
 *
 * @param Worker   Node's own
 * @param scripts  what is kept; other threads are Node's as ever
 * @returns what takes the place of Node's own
 */
export function keptWorkers(Worker: typeof Thread, scripts: ReadonlySet<unknown>) {
  const idle = new Map<string, Thread[]>();

  function start(script: string): Thread {
    const worker = new Worker(script);
    let unanswered = 0;
    const post = worker.postMessage.bind(worker);
    const end = worker.terminate.bind(worker);
    const hear = (reply: unknown) => {
      if (typeof reply === 'object' && reply !== null && !('done' in reply)) unanswered--;
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

  /** Says that it is ready once whoever takes it listens. */
  function again(worker: Thread): Thread {
    void Promise.resolve().then(() => worker.emit('message', 'ready'));
    return worker;
  }

  return function KeptWorker(script: string) {
    if (!scripts.has(script)) return new Worker(script);
    const worker = idle.get(script)?.pop();
    return worker === undefined ? start(script) : again(worker);
  };
}
