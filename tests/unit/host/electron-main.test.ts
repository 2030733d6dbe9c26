import type { EventEmitter } from 'node:events';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { windowFile } from '../../../electron/window-files.ts';

/**
 * How Electron is set up, seen from what `main.ts` asks of it. Electron itself is stood in for, since its binary may
 * not be on this machine; `tests/e2e/electron.spec.ts` opens the real window where it is. What is wanted here:
 * Electron's own security checklist (electronjs.org/docs/latest/tutorial/security, from memory).
 */
type PermissionRequest = (
  contents: { getURL(): string },
  permission: string,
  answer: (allowed: boolean) => void,
  details: { mediaTypes?: string[] },
) => void;
type PermissionCheck = (
  contents: unknown,
  permission: string,
  origin: string,
  details: { mediaType?: string },
) => boolean;

const seen = vi.hoisted(() => ({
  windowOptions: undefined as { webPreferences: Record<string, unknown> } | undefined,
  openHandler: undefined as (() => { action: string }) | undefined,
  contents: undefined as EventEmitter | undefined,
  window: undefined as EventEmitter | undefined,
  loaded: undefined as string | undefined,
  requestPermission: undefined as PermissionRequest | undefined,
  checkPermission: undefined as PermissionCheck | undefined,
  call: undefined as
    | ((event: unknown, name: string, input: unknown, envelope: unknown) => Promise<unknown>)
    | undefined,
  sent: [] as unknown[],
  scheme: undefined as string | undefined,
  /** What the person was asked, and the button that they press. */
  asked: [] as { message: string; buttons: string[] }[],
  presses: 0,
  opened: [] as string[],
  /** The dialogs that were shown, and what the person chooses in each. */
  dialogs: [] as object[],
  chosen: null as string | null,
  forked: undefined as EventEmitter | undefined,
  ordered: [] as unknown[],
  app: undefined as EventEmitter | undefined,
  focused: 0,
  exitCode: undefined as number | undefined,
  serve: undefined as ((request: { url: string }) => Promise<Response>) | undefined,
}));

vi.mock('electron', async () => {
  const { EventEmitter } = await import('node:events');
  class BrowserWindow extends EventEmitter {
    webContents = Object.assign(new EventEmitter(), {
      id: 1,
      setWindowOpenHandler: (handler: () => { action: string }) => {
        seen.openHandler = handler;
      },
      send: (...message: unknown[]) => seen.sent.push(message),
      getURL: () => `${seen.scheme}://window/#/round/3`,
    });
    constructor(options: typeof seen.windowOptions) {
      super();
      seen.windowOptions = options;
      seen.contents = this.webContents;
      seen.window = this;
    }
    isDestroyed = () => false;
    isMinimized = () => false;
    focus = () => seen.focused++;
    close = () => undefined;
    async loadURL(url: string) {
      seen.loaded = url;
    }
  }
  const app = Object.assign(new EventEmitter(), {
    isPackaged: true,
    requestSingleInstanceLock: () => true,
    whenReady: () => Promise.resolve(),
    getLocale: () => 'en-US',
    quit: () => undefined,
    exit: (code: number) => {
      seen.exitCode = code;
    },
  });
  seen.app = app;
  return {
    BrowserWindow,
    app,
    dialog: {
      showSaveDialog: async (_: unknown, options: object) => {
        seen.dialogs.push(options);
        return { canceled: seen.chosen === null, filePath: seen.chosen ?? '' };
      },
      showOpenDialog: async (_: unknown, options: object) => {
        seen.dialogs.push(options);
        return { canceled: seen.chosen === null, filePaths: seen.chosen === null ? [] : [seen.chosen] };
      },
      showMessageBox: async (_: unknown, question: (typeof seen.asked)[number]) => {
        seen.asked.push(question);
        return { response: seen.presses };
      },
    },
    shell: {
      openPath: async (path: string) => {
        seen.opened.push(path);
        return '';
      },
    },
    utilityProcess: {
      fork: () => {
        const child = Object.assign(new EventEmitter(), {
          pid: undefined,
          kill: () => true,
          stderr: null,
          postMessage: (order: unknown) => seen.ordered.push(order),
        });
        seen.forked = child;
        return child;
      },
    },
    ipcMain: {
      handle: (_: string, handler: typeof seen.call) => {
        seen.call = handler;
      },
    },
    protocol: {
      registerSchemesAsPrivileged: () => undefined,
      handle: (scheme: string, handler: typeof seen.serve) => {
        seen.scheme = scheme;
        seen.serve = handler;
      },
    },
    Menu: { setApplicationMenu: () => undefined, buildFromTemplate: () => ({}) },
    session: {
      defaultSession: {
        setPermissionRequestHandler: (handler: PermissionRequest) => {
          seen.requestPermission = handler;
        },
        setDevicePermissionHandler: () => undefined,
        setPermissionCheckHandler: (handler: PermissionCheck) => {
          seen.checkPermission = handler;
        },
      },
    },
  };
});

const dataBefore = process.env.PINTALLY_DATA;
const faultListeners: ((fault: Error) => void)[] = [];
beforeAll(async () => {
  const before = process.listeners('uncaughtException');
  process.env.PINTALLY_DATA = mkdtempSync(join(tmpdir(), 'pintally-electron-'));
  await import('../../../electron/main.ts');
  await vi.waitFor(() => expect(seen.loaded).toBeDefined(), { timeout: 30_000 });
  const added = process.listeners('uncaughtException').filter((each) => !before.includes(each));
  faultListeners.push(...(added as typeof faultListeners));
  // Everything is loaded here, on a busy computer.
});
afterAll(() => {
  seen.window?.emit('closed');
  process.env.PINTALLY_DATA = dataBefore;
});

function aWindow(): string {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-window-'));
  writeFileSync(join(folder, 'index.html'), '<title>the window</title>');
  return folder;
}

const navigatesTo = (url: string): boolean => {
  let prevented = false;
  seen.contents?.emit('will-navigate', { preventDefault: () => (prevented = true) }, url);
  return !prevented;
};

describe('the Electron window', () => {
  test('is isolated, sandboxed and without Node', () => {
    expect(seen.windowOptions?.webPreferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      devTools: false,
    });
    expect(seen.windowOptions?.webPreferences).not.toHaveProperty('webSecurity');
  });

  test('shows a page of our own protocol and goes nowhere else', () => {
    expect(seen.loaded).toBe(`${seen.scheme}://window/`);
    for (const url of [
      'https://example.org/',
      'file:///etc/passwd',
      'javascript:alert(1)',
      'data:text/html,x',
    ]) {
      expect(navigatesTo(url)).toBe(false);
    }
  });

  test('serves only files of the window', async () => {
    for (const path of ['no-such-file.js', '../../package.json', '..%2f..%2fpackage.json']) {
      expect((await seen.serve?.({ url: `${seen.loaded}${path}` }))?.status).toBe(404);
    }
  });

  test('opens no other window', () => {
    expect(seen.openHandler?.()).toEqual({ action: 'deny' });
  });

  test('may use the camera, which it asks for to scan a label, and nothing else', () => {
    const answerTo = (permission: string, mediaTypes?: string[], url = seen.loaded ?? '') => {
      const answers: boolean[] = [];
      const details = mediaTypes ? { mediaTypes } : {};
      seen.requestPermission?.(
        { getURL: () => url },
        permission,
        (allowed) => answers.push(allowed),
        details,
      );
      return answers[0];
    };
    expect(answerTo('media', ['video'])).toBe(true);
    expect(answerTo('media', ['video', 'audio'])).toBe(false);
    expect(answerTo('media', ['audio'])).toBe(false);
    expect(answerTo('media')).toBe(false);
    expect(answerTo('media', ['video'], 'https://example.org/')).toBe(false);
    for (const permission of ['geolocation', 'notifications', 'clipboard-read', 'bluetooth']) {
      expect(answerTo(permission)).toBe(false);
    }
    expect(seen.checkPermission?.(null, 'media', seen.loaded ?? '', { mediaType: 'video' })).toBe(true);
    expect(seen.checkPermission?.(null, 'media', seen.loaded ?? '', { mediaType: 'audio' })).toBe(false);
    expect(seen.checkPermission?.(null, 'geolocation', seen.loaded ?? '', {})).toBe(false);
  });

  test('is answered; a page that is not ours is not', async () => {
    const ours = { senderFrame: { url: `${seen.loaded}#/stacks` } };
    expect(await seen.call?.(ours, 'yard.info', {}, { yard: null, act: null })).toMatchObject({
      ok: true,
      output: { kind: 'own' },
    });
    for (const url of ['https://example.org/', 'file:///tmp/other.html']) {
      expect(
        await seen.call?.({ senderFrame: { url } }, 'yard.info', {}, { yard: null, act: null }),
      ).toMatchObject({ ok: false });
    }
    expect(
      await seen.call?.({ senderFrame: null }, 'yard.info', {}, { yard: null, act: null }),
    ).toMatchObject({ ok: false });
  });

  test('holds no other page, and is not led to one', () => {
    for (const event of ['will-attach-webview', 'will-redirect']) {
      let prevented = false;
      seen.contents?.emit(event, { preventDefault: () => (prevented = true) }, 'https://example.org/');
      expect(prevented, event).toBe(true);
    }
  });

  test('may connect to nothing but its own page', async () => {
    const { headers } = (await windowFile(aWindow(), '', ''))!;
    expect(headers['Content-Security-Policy']).toMatch(/connect-src 'self'\s*;/);
    expect(headers['Content-Security-Policy']).not.toContain('*');
  });

  test('a second start brings the window to the front', () => {
    seen.app?.emit('second-instance');
    expect(seen.focused).toBe(1);
  });
});

const logged = () => readFileSync(join(process.env.PINTALLY_DATA!, 'logs/pintally.log'), 'utf8');
const windowEnds = () => seen.contents?.emit('render-process-gone', {}, { reason: 'crashed', exitCode: 5 });

describe('what stops', () => {
  test('a window is opened again at its screen, and that is logged; the third time in a minute the person is asked', async () => {
    windowEnds();
    expect(seen.loaded).toBe(`${seen.scheme}://window/?opened-again#/round/3`);
    expect(logged()).toContain(' window-gone crashed 5');
    windowEnds();
    expect(seen.asked).toEqual([]);
    windowEnds();
    await vi.waitFor(() => expect(seen.asked).toHaveLength(1));
    expect(seen.asked[0]).toMatchObject({ buttons: ['Try again', 'Open the error report', 'Quit'] });
  });

  test('other processes and a window that hangs are logged', () => {
    seen.app?.emit('child-process-gone', {}, { type: 'GPU', reason: 'killed', exitCode: 9 });
    seen.window?.emit('unresponsive');
    expect(logged()).toMatch(/ process-gone GPU killed 9\n.* window-unresponsive\n/);
  });

  test('the error report opens in the computer’s own program', async () => {
    const ours = { senderFrame: { url: `${seen.scheme}://window/` } };
    const envelope = { yard: null, act: null };
    expect(await seen.call?.(ours, 'log.open', {}, envelope)).toMatchObject({
      ok: true,
      output: { text: null },
    });
    expect(seen.opened).toEqual([join(process.env.PINTALLY_DATA!, 'logs/pintally.log')]);
  });
});

describe('files and folders', () => {
  const ask = async (name: string, input: object) =>
    (await seen.call?.({ senderFrame: { url: `${seen.scheme}://window/` } }, name, input, {
      yard: null,
      act: null,
    })) as { ok: boolean; output: unknown };

  test('are chosen in the system’s dialogs, for what they are', async () => {
    seen.chosen = join(tmpdir(), 'chosen');
    for (const purpose of ['copy', 'yard', 'folder']) {
      expect(await ask('backups.chooseFile', { purpose })).toMatchObject({ output: { path: seen.chosen } });
    }
    const filters = [{ name: 'Yard files', extensions: ['sqlite'] }];
    expect(seen.dialogs).toEqual([
      {
        title: 'Save a copy',
        defaultPath: expect.stringMatching(/^pintally-\d{4}-\d\d-\d\d\.sqlite$/),
        filters,
      },
      { title: 'Restore from a file …', filters, properties: ['openFile'] },
      { title: 'Choose another folder', properties: ['openDirectory', 'createDirectory'] },
    ]);
    expect(await ask('backups.state', {})).toMatchObject({ output: { hasDialogs: true } });
  });

  test('are not touched where the person cancels', async () => {
    seen.chosen = null;
    for (const purpose of ['copy', 'yard', 'folder']) {
      expect(await ask('backups.chooseFile', { purpose })).toMatchObject({ output: { path: null } });
    }
  });
});

describe('the radio', () => {
  test('runs in a utility process, whose messages are heard and whose end is noticed', async () => {
    const ours = { senderFrame: { url: `${seen.scheme}://window/` } };
    const envelope = { yard: null, act: null };
    await seen.call?.(ours, 'meter.scan', {}, envelope);
    await vi.waitFor(() => expect(seen.ordered).toEqual([{ type: 'scan', on: true }]));
    const first = seen.forked;
    first?.emit('message', { type: 'adapter', reason: 'on' });
    const device = { deviceId: 'aabb', name: 'Yard meter', rssiDbm: -50, serviceUuids: [] };
    first?.emit('message', { type: 'found', devices: [device] });
    expect(await seen.call?.(ours, 'meter.state', {}, envelope)).toMatchObject({
      output: { devices: [{ deviceId: 'aabb', name: 'Yard meter' }] },
    });
    first?.emit('exit', 1);
    // Another one is started by itself.
    await vi.waitFor(() => expect(seen.forked).not.toBe(first), { timeout: 4000 });
    seen.forked?.emit('exit', 0);
  });
});

// Last: it counts faults.
test('a fault that nothing caught is logged and ends nothing; faults that do not stop end the app', () => {
  const fail = (times: number) => {
    for (let fault = 0; fault < times; fault++) for (const each of faultListeners) each(new Error('again'));
  };
  fail(20);
  expect(logged()).toContain('again');
  expect(seen.exitCode).toBeUndefined();
  fail(1);
  expect(seen.exitCode).toBe(1);
});
