import { app, type BrowserWindow, dialog } from 'electron';
import type { Say } from '../../shared-core/words/words.ts';
import type { Log } from '../log/log-file.ts';
import { createCrashWatch } from './crash-watch.ts';
import { openedAgain } from './pages.ts';

interface WatchOptions {
  window: BrowserWindow;
  log: Log;
  say: Say;
  openLog(): Promise<unknown>;
  /** By a clock that only runs forward, ms. */
  nowMs(): number;
}

/** Logs what ends or hangs. A window whose process ended is opened again, and says so; after three in a minute, asks. */
export function watchWindow({ window, log, say, openLog, nowMs }: WatchOptions): void {
  const { webContents } = window;
  const crashes = createCrashWatch(nowMs);

  const openAgain = () => window.loadURL(openedAgain(webContents.getURL()));

  async function ask(): Promise<void> {
    const { response } = await dialog.showMessageBox(window, {
      type: 'error',
      message: say('shell.keeps-stopping'),
      detail: say('shell.keeps-stopping-detail'),
      buttons: [say('common.try-again'), say('log.open'), say('shell.menu.quit')],
      defaultId: 0,
      cancelId: 2,
    });
    if (response === 2) return window.close();
    if (response === 1) {
      await openLog();
      return ask();
    }
    crashes.forget();
    await openAgain();
  }

  webContents.on('render-process-gone', (_event, { reason, exitCode }) => {
    if (reason === 'clean-exit') return;
    log.note(`window-gone ${reason} ${exitCode}`);
    const next = crashes.ended() === 'open-again' ? openAgain() : ask();
    next.catch(log.fault);
  });
  window.on('unresponsive', () => log.note('window-unresponsive'));
  window.on('responsive', () => log.note('window-responsive'));
  app.on('child-process-gone', (_event, { type, reason, exitCode, serviceName }) =>
    log.note(`process-gone ${serviceName ?? type} ${reason} ${exitCode}`),
  );
}
