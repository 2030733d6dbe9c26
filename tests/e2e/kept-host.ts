/**
 * A loopback host that goes on from test to test, as starting one takes a second of the processor's time. `fork` it: for
 * a data folder it answers with the address that opens the app there, and for null once that app is closed. The window
 * and the threads are the built ones. Where the start is what is tested, `startPintally` starts the host that was built.
 */
import { syncBuiltinESMExports } from 'node:module';
import { join, resolve } from 'node:path';
import workerThreads from 'node:worker_threads';
import { createApp } from '../../electron/app/app.ts';
import { builtThreads } from '../../electron/app/thread-files.ts';
import { linkMakers } from '../../electron/link-makers.ts';
import { createLog } from '../../electron/log/log-file.ts';
import { startLoopbackHost } from '../../electron/loopback-host.ts';
import { keptWorkers } from '../kept-workers.ts';

const built = resolve(import.meta.dirname, '../../out/main');
const threads = builtThreads(built);
Object.assign(workerThreads, { Worker: keptWorkers(workerThreads.Worker, new Set(Object.values(threads))) });
syncBuiltinESMExports();

let close = async (): Promise<void> => undefined;

async function open(dataDir: string): Promise<string> {
  const app = createApp({ dataDir, log: createLog(dataDir), links: linkMakers(built), threads });
  const host = await startLoopbackHost({
    rendererDir: join(built, '../renderer'),
    connect: app.connect,
  });
  close = async () => {
    await host.close();
    await app.close();
  };
  return host.address();
}

process.on('message', async (dataDir: string | null) => {
  if (dataDir === null) await close();
  process.send?.(dataDir === null ? null : await open(dataDir));
});
process.on('disconnect', () => process.exit());
