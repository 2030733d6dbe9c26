import { join } from 'node:path';
import { app, BrowserWindow, ipcMain, Menu, protocol, session } from 'electron';
import { message } from '../shared-core/words/message.ts';
import { createApp } from './app/app.ts';
import { builtThreads } from './app/thread-files.ts';
import { dataDir } from './data-dir.ts';
import { linkMakers } from './link-makers.ts';
import { windowFile } from './window-files.ts';

/** A protocol of our own: a page from a file could read other files. */
const SCHEME = 'pintally';
const pageUrl = `${SCHEME}://window/`;
protocol.registerSchemesAsPrivileged([{ scheme: SCHEME, privileges: { standard: true, secure: true } }]);

if (!app.requestSingleInstanceLock()) app.quit();
else app.whenReady().then(start);

function start(): void {
  // Nothing in the window needs a permission; printing and sound do not ask for one.
  session.defaultSession.setPermissionRequestHandler((_contents, _permission, answer) => answer(false));
  session.defaultSession.setPermissionCheckHandler(() => false);
  protocol.handle(SCHEME, async ({ url }) => {
    const path = new URL(url).pathname.slice(1);
    const file = await windowFile(join(import.meta.dirname, '../renderer'), path, '').catch(() => null);
    return file
      ? new Response(new Uint8Array(file.bytes), { headers: file.headers })
      : new Response(null, { status: 404 });
  });
  Menu.setApplicationMenu(
    Menu.buildFromTemplate([
      { role: 'appMenu' },
      { role: 'editMenu' },
      { role: 'viewMenu' },
      { role: 'windowMenu' },
    ]),
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
    },
  });
  window.webContents.setWindowOpenHandler(() => ({ action: 'deny' }));
  window.webContents.on('will-navigate', (event, url) => {
    if (url.split('#')[0] !== pageUrl) event.preventDefault();
  });

  const pintally = createApp({
    dataDir: dataDir(),
    links: linkMakers(import.meta.dirname),
    threads: builtThreads(import.meta.dirname),
  });
  const connection = pintally.connect(`electron-${window.webContents.id}`, (name, data) => {
    if (!window.isDestroyed()) window.webContents.send('event', name, data);
  });
  ipcMain.handle('request', (event, name: string, input: unknown, envelope: unknown) =>
    event.senderFrame?.url.split('#')[0] === pageUrl
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
