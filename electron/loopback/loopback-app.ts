import { createApp } from '../app/app.ts';
import { builtThreads } from '../app/thread-files.ts';
import { linkMakers } from '../link-makers.ts';
import type { Log } from '../log/log-file.ts';

/**
 * The app that the loopback host serves. It is apart from the host, which prints its address before the app is loaded.
 * @param built  the folder of the built host
 */
export const createLoopbackApp = (dataDir: string, log: Log, built: string) =>
  createApp({
    dataDir,
    log,
    links: linkMakers(built),
    simulatesInOwnYard: process.env.PINTALLY_SIMULATED_METER === 'own-yard',
    threads: builtThreads(built),
  });
