import { join } from 'node:path';
import { createApp } from './app/app.ts';
import { builtThreads } from './app/thread-files.ts';
import { dataDir } from './data-dir.ts';
import { linkMakers } from './link-makers.ts';
import { createLog } from './log/log-file.ts';
import { startLoopbackHost } from './loopback-host.ts';

/** The same app without Electron: built as `out/main/loopback.js`, prints the address that opens the window. */
const folder = dataDir();
const log = createLog(folder);
const pintally = createApp({
  dataDir: folder,
  log,
  links: linkMakers(import.meta.dirname),
  threads: builtThreads(import.meta.dirname),
});
const host = await startLoopbackHost({
  rendererDir: join(import.meta.dirname, '../renderer'),
  connect: pintally.connect,
});
console.log(`Pintally is at ${host.address}`);
console.log('The address opens once. Press Ctrl+C to stop.');

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, async () => {
    await host.close();
    await pintally.close();
    process.exit(0);
  });
}
