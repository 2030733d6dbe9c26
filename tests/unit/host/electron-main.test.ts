import type { EventEmitter } from 'node:events';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';

/**
 * How Electron is set up, seen from what `main.ts` asks of it. Electron itself is stood in for, since its binary may
 * not be on this machine; `tests/e2e/electron.spec.ts` opens the real window where it is. What is wanted here:
 * Electron's own security checklist (electronjs.org/docs/latest/tutorial/security, from memory).
 */
const seen = vi.hoisted(() => ({
  windowOptions: undefined as { webPreferences: Record<string, unknown> } | undefined,
  openHandler: undefined as (() => { action: string }) | undefined,
  contents: undefined as EventEmitter | undefined,
  window: undefined as EventEmitter | undefined,
  loaded: undefined as string | undefined,
  permissionAnswers: [] as boolean[],
  permissionCheck: undefined as (() => boolean) | undefined,
  call: undefined as
    | ((event: unknown, name: string, input: unknown, envelope: unknown) => Promise<unknown>)
    | undefined,
  sent: [] as unknown[],
  scheme: undefined as string | undefined,
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
    });
    constructor(options: typeof seen.windowOptions) {
      super();
      seen.windowOptions = options;
      seen.contents = this.webContents;
      seen.window = this;
    }
    isDestroyed = () => false;
    loadURL(url: string) {
      seen.loaded = url;
    }
  }
  return {
    BrowserWindow,
    app: Object.assign(new EventEmitter(), {
      requestSingleInstanceLock: () => true,
      whenReady: () => Promise.resolve(),
      quit: () => undefined,
    }),
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
        setPermissionRequestHandler: (
          handler: (contents: unknown, permission: string, answer: (allowed: boolean) => void) => void,
        ) => {
          for (const permission of ['media', 'geolocation', 'notifications', 'clipboard-read', 'bluetooth']) {
            handler(null, permission, (allowed) => seen.permissionAnswers.push(allowed));
          }
        },
        setPermissionCheckHandler: (handler: () => boolean) => {
          seen.permissionCheck = handler;
        },
      },
    },
  };
});

const dataBefore = process.env.PINTALLY_DATA;
beforeAll(async () => {
  process.env.PINTALLY_DATA = mkdtempSync(join(tmpdir(), 'pintally-electron-'));
  await import('../../../electron/main.ts');
  await vi.waitFor(() => expect(seen.loaded).toBeDefined());
});
afterAll(() => {
  seen.window?.emit('closed');
  process.env.PINTALLY_DATA = dataBefore;
});

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

  test('is granted no permission', () => {
    expect(seen.permissionAnswers).toEqual([false, false, false, false, false]);
    expect(seen.permissionCheck?.()).toBe(false);
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
});
