import { once } from 'node:events';
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import type { Emit } from '../../../electron/app/windows.ts';
import { startLoopbackHost } from '../../../electron/loopback-host.ts';
import { welcomeSchema } from '../../../shared-core/contract/hello.ts';

/** How fast one window is answered, and what becomes of one that sends too fast or does not read. */
let host: Awaited<ReturnType<typeof startLoopbackHost>>;
let key: string;
/** The windows that are there, by their ids. */
let emitTo: Map<string, Emit>;
let underWay: number;
let mostUnderWay: number;
let answered: string[];
let answerSize: number;
let answeredBeforeDrop: number;

beforeEach(async () => {
  const rendererDir = mkdtempSync(join(tmpdir(), 'pintally-window-'));
  writeFileSync(join(rendererDir, 'index.html'), '<title>the window</title>');
  emitTo = new Map();
  [underWay, mostUnderWay, answered, answerSize] = [0, 0, [], 4];
  host = await startLoopbackHost({
    rendererDir,
    patience: { hello: 500, headers: 500, check: 100 },
    connect: (window, emit) => {
      emitTo.set(window, emit);
      return {
        answer: async (name) => {
          mostUnderWay = Math.max(mostUnderWay, ++underWay);
          await pause(name === 'slow' ? 20 : 0);
          underWay--;
          answered.push(name);
          return { ok: true, output: 'x'.repeat(answerSize) };
        },
        close: () => {
          answeredBeforeDrop = answered.length;
          emitTo.delete(window);
        },
      };
    },
  });
  const { searchParams } = new URL(host.address());
  const { socket, welcome } = await enter(WINDOWS[0], { ticket: searchParams.get('open') });
  key = welcomeSchema.parse(JSON.parse(welcome)).session.key;
  socket.terminate();
  await vi.waitFor(() => expect(emitTo.size).toBe(0));
});
afterEach(() => host.close());

const WINDOWS = ['0b5c1d4e-9d53-4c3b-8f55-7f1b0a3f8f10', '0b5c1d4e-9d53-4c3b-8f55-7f1b0a3f8f11'] as const;

async function enter(window: string, shown: object = { key }) {
  const { host: name, origin } = new URL(host.address());
  const socket = new WebSocket(`ws://${name}/ws`, { headers: { Origin: origin } });
  await once(socket, 'open');
  socket.send(JSON.stringify({ window, ...shown }));
  const [welcome] = await once(socket, 'message');
  return { socket, welcome: String(welcome) };
}

const send = (socket: WebSocket, name: string, count = 1): void => {
  for (let id = 1; id <= count; id++) socket.send(JSON.stringify({ id, name, input: {}, envelope: {} }));
};

const until = (condition: () => boolean) =>
  vi.waitFor(() => expect(condition()).toBe(true), { timeout: 10_000, interval: 20 });

test('a burst of 5,000 requests is answered whole, few requests at a time', async () => {
  const { socket } = await enter(WINDOWS[0]);
  const ids: number[] = [];
  socket.on('message', (data) => ids.push(JSON.parse(String(data)).id));
  send(socket, 'quick', 5000);
  await until(() => ids.length === 5000);
  expect(new Set(ids).size).toBe(5000);
  expect(mostUnderWay).toBeLessThanOrEqual(100);
});

test('60 pages that a list asks for at once are all under way at once', async () => {
  const { socket } = await enter(WINDOWS[0]);
  send(socket, 'slow', 60);
  await until(() => answered.length === 60);
  expect(mostUnderWay).toBeGreaterThan(50);
});

test('while one window has 5,000 requests waiting, another one is answered', async () => {
  const [{ socket: flooding }, { socket: other }] = [await enter(WINDOWS[0]), await enter(WINDOWS[1])];
  send(flooding, 'slow', 5000);
  const reply = once(other, 'message');
  send(other, 'quick');
  await reply;
  expect(answered.filter((name) => name === 'slow').length).toBeLessThan(1000);
  await until(() => answered.length === 5001);
});

test('a request that was sent before the window closed is still done', async () => {
  const { socket } = await enter(WINDOWS[0]);
  send(socket, 'slow', 300);
  send(socket, 'the last one');
  socket.close();
  await until(() => answered.includes('the last one'));
});

test('a window that asks and does not read is given no more than fits, and is dropped', async () => {
  answerSize = 1024 * 1024;
  const { socket } = await enter(WINDOWS[0]);
  socket.pause();
  send(socket, 'quick', 2000);
  await until(() => emitTo.size === 0);
  // What the two sockets hold, and what was under way when they were full.
  expect(answeredBeforeDrop).toBeLessThan(200);
});

test('a window that leaves its events unread is dropped, and hears them again when it comes back', async () => {
  const { socket } = await enter(WINDOWS[0]);
  socket.pause();
  const changed = () => emitTo.get(WINDOWS[0])?.('changed', { yard: null, topics: ['boards'] });
  for (let event = 0; event < 300_000 && emitTo.size === 1; event++) {
    changed();
    if (event % 1000 === 0) await pause(0);
  }
  expect(emitTo.size).toBe(0);
  const again = await enter(WINDOWS[0]);
  const heard = once(again.socket, 'message');
  changed();
  await heard;
});

test('a window with nothing to read is never dropped', async () => {
  const { socket } = await enter(WINDOWS[0]);
  await pause(500);
  expect(socket.readyState).toBe(WebSocket.OPEN);
});
