import { mkdtempSync, writeFileSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import type { Emit } from '../../../electron/app/windows.ts';
import { startLoopbackHost } from '../../../electron/loopback-host.ts';

/**
 * The loopback port can be reached by every program and every web page on the machine. The rules that keep them out
 * are those of the Fetch standard's Origin header and of DNS rebinding defences (Host check), from memory.
 */
type Reply = { status: number; body: string; headers: Record<string, unknown> };

let host: Awaited<ReturnType<typeof startLoopbackHost>>;
let heard: unknown[];
/** The windows that are there, by their ids. */
let emitTo: Map<string, Emit>;

beforeEach(async () => {
  const rendererDir = mkdtempSync(join(tmpdir(), 'pintally-window-'));
  writeFileSync(join(rendererDir, 'index.html'), '<title>the window</title><meta nonce="__NONCE__">');
  heard = [];
  emitTo = new Map();
  host = await startLoopbackHost({
    rendererDir,
    connect: (window, emit) => {
      emitTo.set(window, emit);
      return {
        answer: async (name, input, envelope) => {
          heard.push({ window, name, input, envelope });
          return { ok: true, output: 'done' };
        },
        close: () => emitTo.delete(window),
      };
    },
  });
});
afterEach(() => host.close());

const address = () => new URL(host.address);

/** A raw request, so that any Host header and path can be sent; fetch would correct them. */
function get(path: string, headers: Record<string, string> = {}, method = 'GET'): Promise<Reply> {
  return new Promise((resolve, reject) => {
    const sent = httpRequest(
      {
        host: '127.0.0.1',
        port: address().port,
        path,
        method,
        headers: { Host: address().host, ...headers },
      },
      (response) => {
        let body = '';
        response.on('data', (data) => {
          body += data;
        });
        response.on('end', () =>
          resolve({ status: response.statusCode ?? 0, body, headers: response.headers }),
        );
      },
    );
    sent.on('error', reject);
    sent.end();
  });
}

async function enter(): Promise<string> {
  const { status, headers } = await get(address().pathname);
  expect(status).toBe(303);
  return String(headers.location);
}

/** Opens the socket as a page would; resolves to 'open' or the HTTP status that turned it away. */
function knock(
  path: string,
  headers: Record<string, string>,
): Promise<{ socket: WebSocket; outcome: string }> {
  return new Promise((resolve) => {
    const socket = new WebSocket(`ws://127.0.0.1:${address().port}${path}`, { headers });
    socket.on('open', () => resolve({ socket, outcome: 'open' }));
    socket.on('unexpected-response', (_, response) =>
      resolve({ socket, outcome: String(response.statusCode) }),
    );
    socket.on('error', () => undefined);
  });
}

const nothing = { status: 403, body: '' };
const WINDOW = '0b5c1d4e-9d53-4c3b-8f55-7f1b0a3f8f10';

describe('the door', () => {
  test('opens for the token and leads to the window', async () => {
    const session = await enter();
    const page = await get(session);
    expect(page.status).toBe(200);
    expect(page.body).toContain('the window');
    expect(page.headers['content-security-policy']).toContain("default-src 'none'");
  });

  test('lets in only the styles that carry the nonce of this page, another each time', async () => {
    const session = await enter();
    const nonces = [await get(session), await get(session)].map(({ body, headers }) => {
      const nonce = /nonce="([^"]{22,})"/.exec(body)?.[1];
      expect(headers['content-security-policy']).toContain(`style-src 'self' 'nonce-${nonce}';`);
      return nonce;
    });
    expect(nonces[0]).not.toBe(nonces[1]);
  });

  test('opens once: the same token again gets nothing', async () => {
    await enter();
    expect(await get(address().pathname)).toMatchObject(nothing);
  });

  test('a wrong token gets nothing, and does not use up the right one', async () => {
    expect(await get(`/open/${'0'.repeat(64)}`)).toMatchObject(nothing);
    expect(await get('/open/')).toMatchObject(nothing);
    await enter();
  });

  test.each(['/', '/index.html', '/s/', `/s/${'0'.repeat(64)}/`, '/ws', '/favicon.ico'])(
    'without the session, %s gets nothing',
    async (path) => {
      expect(await get(path)).toMatchObject(nothing);
    },
  );

  test.each(['localhost', 'evil.example', '127.0.0.1'])(
    'a request that names the host %s gets nothing',
    async (name) => {
      const session = await enter();
      expect(await get(session, { Host: name })).toMatchObject(nothing);
      expect(await get(session, { Host: `${name}:${Number(address().port) + 1}` })).toMatchObject(nothing);
    },
  );

  test.each(['../../package.json', '..%2f..%2fpackage.json', '%2e%2e/%2e%2e/etc/passwd'])(
    'a path that climbs out of the window (%s) gets nothing',
    async (path) => {
      const session = await enter();
      expect(await get(session + path)).toMatchObject(nothing);
    },
  );

  test('only GET is served', async () => {
    const session = await enter();
    expect(await get(session, {}, 'POST')).toMatchObject(nothing);
  });
});

describe('the socket', () => {
  test('carries a call and its answer for the page of this origin', async () => {
    const session = await enter();
    const { socket, outcome } = await knock(`${session}ws`, { Origin: address().origin });
    expect(outcome).toBe('open');
    const reply = new Promise((resolve) => socket.on('message', (data) => resolve(JSON.parse(String(data)))));
    socket.send(JSON.stringify({ window: WINDOW }));
    const envelope = { yard: null, act: null };
    socket.send(JSON.stringify({ id: 7, name: 'stacks.list', input: {}, envelope }));
    expect(await reply).toEqual({ id: 7, answer: { ok: true, output: 'done' } });
    expect(heard).toEqual([{ window: WINDOW, name: 'stacks.list', input: {}, envelope }]);
    socket.close();
  });

  test('brings each window its own events, until it is closed', async () => {
    const session = await enter();
    const { socket } = await knock(`${session}ws`, { Origin: address().origin });
    const event = new Promise((resolve) => socket.on('message', (data) => resolve(JSON.parse(String(data)))));
    socket.send(JSON.stringify({ window: WINDOW }));
    await vi.waitFor(() => expect([...emitTo.keys()]).toEqual([WINDOW]));
    emitTo.get(WINDOW)?.('changed', { yard: null, topics: ['boards'] });
    expect(await event).toEqual({ event: 'changed', data: { yard: null, topics: ['boards'] } });
    socket.close();
    await vi.waitFor(() => expect(emitTo.size).toBe(0));
  });

  test.each([
    ['another origin', () => ({ Origin: 'http://evil.example' })],
    ['this host on another port', () => ({ Origin: `http://127.0.0.1:${Number(address().port) + 1}` })],
    ['no origin', () => ({})],
    ['another host name', () => ({ Origin: address().origin, Host: 'evil.example' })],
  ] as const)('%s is turned away', async (_, headers) => {
    const session = await enter();
    expect((await knock(`${session}ws`, headers() as Record<string, string>)).outcome).toBe('403');
    expect(heard).toEqual([]);
  });

  test('a wrong session is turned away', async () => {
    await enter();
    const { outcome } = await knock(`/s/${'0'.repeat(64)}/ws`, { Origin: address().origin });
    expect(outcome).toBe('403');
  });

  test.each([
    ['not json', 'before'],
    ['[]', 'before'],
    ['{"id":7,"name":"stacks.list"}', 'before'],
    ['{"window":"any"}', 'before'],
    ['{"id":"x","name":"stacks.list"}', 'after'],
    ['null', 'after'],
  ])(
    'a message that is no request (%s, %s the hello) ends the connection and reaches nothing',
    async (text, when) => {
      const session = await enter();
      const { socket } = await knock(`${session}ws`, { Origin: address().origin });
      if (when === 'after') socket.send(JSON.stringify({ window: WINDOW }));
      const closed = new Promise<number>((resolve) => socket.on('close', (code) => resolve(code)));
      socket.send(text);
      expect(await closed).toBe(1008);
      expect(heard).toEqual([]);
    },
  );
});
