/** Keeps the app's threads for the next yard of a test file. */
import { vi } from 'vitest';
import { threadSources } from '../../electron/app/thread-files.ts';
import { keptWorkers } from '../kept-workers.ts';

vi.mock('node:worker_threads', async (importOriginal) => {
  const original = await importOriginal<typeof import('node:worker_threads')>();
  return { ...original, Worker: keptWorkers(original.Worker, new Set(Object.values(threadSources))) };
});
