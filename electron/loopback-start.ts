import { join } from 'node:path';
import { setTimeout as pause, setImmediate } from 'node:timers/promises';
import type { App } from './app/app.ts';
import { hasStuckThread } from './app/own-thread.ts';
import { createSignal, type Signal } from './app/signal.ts';
import { dataDir } from './data-dir.ts';
import { followEnter } from './enter-key.ts';
import { goOnAfterFaults } from './going-on.ts';
import { createLog } from './log/log-file.ts';
import { startLoopbackHost } from './loopback-host.ts';
import { forgetRunningHost, lastPort, runningHost, saveRunningHost } from './running-host.ts';
import { startPageFolder, writeStartPage } from './start-page.ts';

/** A browser that runs has the window by then, ms; one that is only being started asks later. */
const LOADS_WITHIN_MS = 1500;

/** The parts of the app, loaded one after the other: all at once would keep a browser waiting. */
const partsOfApp: readonly (() => Promise<unknown>)[] = [
  () => import('../shared-core/words/languages.ts'),
  () => import('../shared-core/contract/round.ts'),
  () => import('../shared-core/contract/requests.ts'),
  () => import('./store/yard.ts'),
  () => import('./app/judging/assessing.ts'),
  () => import('./loopback/loopback-app.ts'),
];

const once = (signal: Signal<void>): Promise<void> => new Promise((resolve) => signal.follow(resolve));

/** A signal after that means that closing hangs. */
const CLOSES_WITHIN_MS = 5000;

/**
 * Serves the window, and prints the address that opens it.
 * @param built  the folder of the built host
 */
export async function serveLoopback(built: string): Promise<void> {
  const folder = dataDir();
  const log = createLog(folder);
  let app: App | null = null;
  goOnAfterFaults(
    (error) => {
      log.fault(error);
      if (app !== null) return;
      console.error(`Pintally could not start. The error report is ${log.file}`);
      process.exit(1);
    },
    () => process.exit(1),
  );
  // The terminal was closed: what is printed reaches nobody, which is no fault.
  for (const stream of [process.stdout, process.stderr]) stream.on('error', () => undefined);

  const isOnlyHost = (await runningHost(folder)) === null;
  const printed = createSignal();
  const windowSent = createSignal();
  let isAsked = false;
  const opening = open();
  const host = await startLoopbackHost({
    rendererDir: join(built, '../renderer'),
    connect: opening.then(({ connect }) => connect),
    onAsked: () => {
      isAsked = true;
    },
    onWindowSent: windowSent.give,
    port: isOnlyHost ? lastPort(folder) : 0,
  });
  /** Removes the start page, if there is one. */
  let removePage = (): void => undefined;
  process.once('exit', () => removePage());

  let isRefusalPrinted = false;
  host.opened.follow(() => {
    removePage();
    saveLink();
  });
  const hearsEnter = followEnter(() => {
    console.log(`Pintally is at ${host.address()}`);
    offerStartPage();
  });
  console.log(`Pintally is at ${host.address()}`);
  console.log(
    hearsEnter
      ? 'The address works once. Press Enter for a new one, Ctrl+C to stop.'
      : 'The address works once. Press Ctrl+C to stop.',
  );
  offerStartPage();
  // A second start right after this one finds it.
  saveLink();
  printed.give();
  let closingSinceMs: number | null = null;
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void close());

  if ((await opening).isYardTaken()) forgetRunningHost(folder, host.proof);
  else saveLink();

  /**
   * Loads the app in parts, each of which holds everything else up. Once a browser asks for the window, the rest waits until
   * it was sent: while the browser runs it, nobody waits for the host.
   */
  async function open(): Promise<App> {
    const isWindowThere = Promise.race([once(windowSent), pause(LOADS_WITHIN_MS)]);
    await once(printed);
    for (const load of partsOfApp) {
      await setImmediate();
      if (isAsked) await isWindowThere;
      await load();
    }
    await isWindowThere;
    const { createLoopbackApp } = await import('./loopback/loopback-app.ts');
    app = createLoopbackApp(folder, log, built);
    return app;
  }

  /** For the next start. Another host that serves this folder is left what it saved, also where both began at once. */
  function saveLink(): void {
    if (!isOnlyHost || app?.isYardTaken()) return;
    try {
      saveRunningHost(folder, { startLink: host.address(), proof: host.proof });
    } catch {
      // The fault log is in the same folder.
      if (isRefusalPrinted) return;
      isRefusalPrinted = true;
      console.error(
        `Pintally cannot write to ${folder}. Check that you may write there, and that the disk is not full.`,
      );
    }
  }

  /** Whoever started this process with a channel opens the browser. The printed address is enough where none opens. */
  function offerStartPage(): void {
    if (!process.send) return;
    try {
      const { file, remove } = writeStartPage(host.address(), startPageFolder(folder));
      removePage = remove;
      process.send({ startPage: file });
    } catch (error) {
      log.fault(error);
    }
  }

  async function close(): Promise<void> {
    if (closingSinceMs !== null) {
      // A terminal stops this process and the one that started it, which passes that on: once is meant.
      if (performance.now() - closingSinceMs > CLOSES_WITHIN_MS) process.exit(1);
      return;
    }
    closingSinceMs = performance.now();
    // No yard is open, and none is to be made or changed now.
    if (app === null) process.exit(0);
    await host.close();
    await app.close();
    // An ordinary exit would wait for it, for as long as a network drive is away.
    if (hasStuckThread()) process.kill(process.pid, 'SIGKILL');
    process.exit(0);
  }
}
