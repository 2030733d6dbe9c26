/**
 * The whole app behind the loopback host, as a process that can be attacked: `fork` it with a data folder and the
 * window's folder. It sends its address, and answers each message with what it has in use.
 */
import { createApp } from '../../electron/app/app.ts';
import { threadSources } from '../../electron/app/thread-files.ts';
import { startLoopbackHost } from '../../electron/loopback-host.ts';
import { noMeter } from '../unit/app/no-meter.ts';

const [dataDir = '', rendererDir = ''] = process.argv.slice(2);
const app = createApp({
  dataDir,
  links: noMeter,
  threads: threadSources,
});
const host = await startLoopbackHost({
  rendererDir,
  connect: app.connect,
  patience: { hello: 300, headers: 300, check: 100 },
});
process.on('message', () =>
  process.send?.({
    residentBytes: process.memoryUsage.rss(),
    openSockets: process.getActiveResourcesInfo().filter((resource) => resource === 'TCPSocketWrap').length,
  }),
);
process.send?.({ address: host.address() });
