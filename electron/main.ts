import { join } from 'node:path';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session, shell } from 'electron';
import { english } from '../shared-core/words/en/index.ts';
import { catalogFor } from '../shared-core/words/languages.ts';
import { message } from '../shared-core/words/message.ts';
import { createWords } from '../shared-core/words/words.ts';
import { createApp } from './app/app.ts';
import { builtThreads } from './app/thread-files.ts';
import { dataDir } from './data-dir.ts';
import { goOnAfterFaults } from './going-on.ts';
import { linkMakers } from './link-makers.ts';
import { createLog } from './log/log-file.ts';
import { monotonicMs } from './monotonic.ts';
import { closeToOutside, denyPermissions } from './shell/closed-to-outside.ts';
import { fileDialogs } from './shell/file-dialogs.ts';
import { menuTemplate } from './shell/menu.ts';
import { guideOn, isOurPage, pageUrl, SCHEME } from './shell/pages.ts';
import { utilityRadio } from './shell/utility-radio.ts';
import { watchWindow } from './shell/watched-window.ts';
import { windowFile } from './window-files.ts';

protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: { standard: true, secure: true } }]);

const log = createLog(dataDir());
goOnAfterFaults(log.fault, () => app.exit(1));

if (!app.requestSingleInstanceLock()) app.quit();
else app.whenReady().then(start).catch(giveUp);

async function start(): Promise<void> {
  // Menu and dialogs are there before any yard is, so they follow the computer and no setting.
  const locale = app.getLocale();
  const { say } = createWords({
    catalog: await catalogFor(locale),
    locale,
    timeZone: 'UTC',
    units: 'metric',
    today: null,
  });
  const openFile = async (file: string) => (await shell.openPath(file)) === '';
  denyPermissions(session.defaultSession);
  protocol.handle(SCHEME, async ({ url }) => {
    const path = new URL(url).pathname.slice(1);
    const file = await windowFile(join(import.meta.dirname, '../renderer'), path, '').catch(() => null);
    return file
      ? new Response(new Uint8Array(file.bytes), { headers: file.headers })
      : new Response(null, { status: 404 });
  });
  const openLog = () => openFile(log.file);
  const { isPackaged } = app;
  const isMac = process.platform === 'darwin';
  const openGuide = () => void window.loadURL(guideOn(window.webContents.getURL()));
  Menu.setApplicationMenu(
    Menu.buildFromTemplate(menuTemplate({ say, isMac, isPackaged, openGuide, openLog })),
  );

  const window = new BrowserWindow({
    width: 1280,
    height: 860,
    minWidth: 720,
    minHeight: 560,
    title: 'Pintally',
    webPreferences: {
      preload: join(import.meta.dirname, '../preload/preload.cjs'),
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      devTools: !isPackaged,
    },
  });
  closeToOutside(window.webContents);
  watchWindow({ window, log, say, openLog, nowMs: monotonicMs });

  const pintally = createApp({
    dataDir: dataDir(),
    log,
    openFile,
    chooseFile: fileDialogs(window, say, () => new Date().toLocaleDateString('sv-SE')),
    links: linkMakers(import.meta.dirname, utilityRadio),
    threads: builtThreads(import.meta.dirname),
  });
  const connection = pintally.connect(`electron-${window.webContents.id}`, (name, data) => {
    if (!window.isDestroyed()) window.webContents.send('event', name, data);
  });
  ipcMain.handle('request', (event, name: string, input: unknown, envelope: unknown) =>
    isOurPage(event.senderFrame?.url)
      ? connection.answer(name, input, envelope)
      : { ok: false, problem: message('refusal.foreign-page') },
  );

  window.loadURL(pageUrl);
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore();
    window.focus();
  });
  window.on('closed', () => pintally.close().finally(() => app.quit()));
}

function giveUp(error: unknown): void {
  log.fault(error);
  const { say } = createWords({
    catalog: english,
    locale: 'en-US',
    timeZone: 'UTC',
    units: 'metric',
    today: null,
  });
  dialog.showErrorBox(say('frame.app-name'), say('shell.not-started', { file: log.file }));
  app.exit(1);
}
