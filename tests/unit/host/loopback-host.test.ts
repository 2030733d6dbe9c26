import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { request as httpRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { WebSocket } from 'ws';
import type { Emit } from '../../../electron/app/windows.ts';
import { startLoopbackHost } from '../../../electron/loopback-host.ts';
import { NOT_LET_IN, type Session, sessionSchema } from '../../../shared-core/contract/hello.ts';

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
  heard = [];
  emitTo = new Map();
  host = await startHost();
});
afterEach(() => host.close());

const connect = (window: string, emit: Emit) => {
  emitTo.set(window, emit);
  return {
    answer: async (name: string, input: unknown, envelope: unknown) => {
      heard.push({ window, name, input, envelope });
      return { ok: true, output: 'done' } as const;
    },
    close: () => void emitTo.delete(window),
  };
};

function startHost(
  options: Partial<Parameters<typeof startLoopbackHost>[0]> = {},
): ReturnType<typeof startLoopbackHost> {
  const rendererDir = mkdtempSync(join(tmpdir(), 'pintally-window-'));
  writeFileSync(
    join(rendererDir, 'index.html'),
    `<title>the window</title><meta nonce="__NONCE__"><link rel="icon" href="./assets/icon.svg">
     <script src="./assets/index-Ab1.js"></script><link rel="stylesheet" href="./assets/style-Cd2.css">`,
  );
  mkdirSync(join(rendererDir, 'assets'));
  writeFileSync(join(rendererDir, 'assets/index-Ab1.js'), 'show()');
  writeFileSync(join(rendererDir, 'assets/style-Cd2.css'), 'main {}');
  return startLoopbackHost({
    rendererDir,
    patience: { hello: 300, headers: 300, check: 100 },
    connect,
    ...options,
  });
}

const address = () => new URL(host.address());

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

/** Opens the socket as a page would; resolves to 'open' or the HTTP status that turned it away. */
function knock(
  headers: Record<string, string> = { Origin: address().origin },
  path = '/ws',
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

const WINDOW = '0b5c1d4e-9d53-4c3b-8f55-7f1b0a3f8f10';
const ticket = () => String(address().searchParams.get('open'));

/** What the host says to a hello first: the session, or the code that it closes with. */
async function hello(shown: object): Promise<{ socket: WebSocket; session?: Session; code?: number }> {
  const { socket } = await knock();
  socket.send(JSON.stringify({ window: WINDOW, ...shown }));
  return new Promise((resolve) => {
    socket.once('message', (data) => resolve({ socket, session: JSON.parse(String(data)).session }));
    socket.once('close', (code) => resolve({ socket, code }));
  });
}

/** A window that was let in by the start link. */
async function enter(): Promise<{ socket: WebSocket; session: Session }> {
  const { socket, session } = await hello({ ticket: ticket() });
  return { socket, session: sessionSchema.parse(session) };
}

const nothing = { status: 403, body: '' };

describe('before the app is there', () => {
  let appIsThere: () => void;
  const onWindowSent = vi.fn();

  beforeEach(async () => {
    await host.close();
    onWindowSent.mockClear();
    const coming = new Promise<typeof connect>((resolve) => {
      appIsThere = () => resolve(connect);
    });
    host = await startHost({ connect: coming, onWindowSent });
  });

  test('the window loads, and it is known when it has the scripts and styles that it begins with', async () => {
    expect((await get('/')).body).toContain('the window');
    expect(onWindowSent).not.toHaveBeenCalled();
    expect((await get('/assets/index-Ab1.js')).body).toBe('show()');
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(onWindowSent).not.toHaveBeenCalled();
    expect((await get('/assets/style-Cd2.css')).body).toBe('main {}');
    await expect.poll(() => onWindowSent.mock.calls).toHaveLength(1);
  });

  test('a window waits longer than for any stranger, and is let in then', async () => {
    let isIn = false;
    const entering = enter().finally(() => {
      isIn = true;
    });
    // Strangers are closed after 0.3 s.
    await new Promise((resolve) => setTimeout(resolve, 500));
    expect(isIn).toBe(false);
    appIsThere();
    await entering;
    expect([...emitTo.keys()]).toEqual([WINDOW]);
  });

  test('one that left meanwhile is not connected, and comes again by the same link', async () => {
    const { socket } = await knock();
    const link = ticket();
    socket.send(JSON.stringify({ window: crypto.randomUUID(), ticket: link }));
    socket.close();
    await new Promise((resolve) => socket.once('close', resolve));
    appIsThere();
    expect(await hello({ ticket: link })).toHaveProperty('session');
    expect([...emitTo.keys()]).toEqual([WINDOW]);
  });

  test('of two that wait with one link, only one is let in', async () => {
    const both = [hello({ ticket: ticket() }), hello({ ticket: ticket() })];
    await new Promise((resolve) => setTimeout(resolve, 100));
    appIsThere();
    const came = await Promise.all(both);
    expect(came.map(({ code }) => code).toSorted()).toEqual([NOT_LET_IN, undefined]);
  });
});

describe('the window’s files', () => {
  test('need no secret, and have none', async () => {
    for (const path of ['/', `/?open=${ticket()}`]) {
      const page = await get(path);
      expect(page.status).toBe(200);
      expect(page.body).toContain('the window');
      expect(page.headers['content-security-policy']).toContain("default-src 'none'");
      expect(page.headers['cache-control']).toBe('no-store');
      expect(page.headers['referrer-policy']).toBe('no-referrer');
      expect(page.headers['set-cookie']).toBeUndefined();
      expect(JSON.stringify(page)).not.toContain(ticket());
    }
    // That the page was loaded does not use the link up.
    await enter();
  });

  test('let in only the styles that carry the nonce of this page, another each time', async () => {
    const nonces = [await get('/'), await get('/')].map(({ body, headers }) => {
      const nonce = /nonce="([^"]{22,})"/.exec(body)?.[1];
      expect(headers['content-security-policy']).toContain(`style-src 'self' 'nonce-${nonce}';`);
      return nonce;
    });
    expect(nonces[0]).not.toBe(nonces[1]);
  });

  test.each(['localhost', 'evil.example', '127.0.0.1'])(
    'are not served to a request that names the host %s',
    async (name) => {
      expect(await get('/', { Host: name })).toMatchObject(nothing);
      expect(await get('/', { Host: `${name}:${Number(address().port) + 1}` })).toMatchObject(nothing);
    },
  );

  test.each([
    '/../../package.json',
    '/..%2f..%2fpackage.json',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/none.js',
    '/%zz',
  ])('are all that is served: %s gets nothing', async (path) => {
    expect(await get(path)).toMatchObject(nothing);
  });

  test.each(['POST', 'HEAD', 'OPTIONS', 'PUT'])('are served to GET alone, not to %s', async (method) => {
    expect(await get('/', {}, method)).toMatchObject(nothing);
  });
});

describe('the way in', () => {
  test('the start link opens once, and gives the session', async () => {
    const used = ticket();
    const { session } = await enter();
    expect((await hello({ ticket: used })).code).toBe(NOT_LET_IN);
    expect((await hello({ key: session.key })).session).toEqual(session);
  });

  test('the next start link is another one, and opens another window of the same session', async () => {
    const { session } = await enter();
    expect((await hello({ ticket: ticket() })).session).toEqual(session);
  });

  test('a wrong ticket or key opens nothing, and does not use up the right one', async () => {
    expect((await hello({ ticket: '0'.repeat(64) })).code).toBe(NOT_LET_IN);
    expect((await hello({ key: '0'.repeat(64) })).code).toBe(NOT_LET_IN);
    await enter();
  });

  test('no secret of an earlier start opens anything', async () => {
    const earlier = { ticket: ticket(), ...(await enter()).session };
    await host.close();
    host = await startHost();
    for (const shown of [{ ticket: earlier.ticket }, { key: earlier.key }, { key: earlier.hostMark }]) {
      expect((await hello(shown)).code).toBe(NOT_LET_IN);
    }
  });

  test('the use of the start link is told, so that its page can be removed', async () => {
    const used = vi.fn();
    host.opened.follow(used);
    await hello({ ticket: '0'.repeat(64) });
    expect(used).not.toHaveBeenCalled();
    await enter();
    expect(used).toHaveBeenCalledOnce();
  });

  test('who says nothing is soon closed', async () => {
    const { socket } = await knock();
    await new Promise((resolve) => socket.once('close', resolve));
  });
});

describe('the socket', () => {
  test('carries a call and its answer for the page of this origin', async () => {
    const { socket } = await enter();
    const reply = new Promise((resolve) => socket.on('message', (data) => resolve(JSON.parse(String(data)))));
    const envelope = { yard: null, act: null };
    socket.send(JSON.stringify({ id: 7, name: 'stacks.list', input: {}, envelope }));
    expect(await reply).toEqual({ id: 7, answer: { ok: true, output: 'done' } });
    expect(heard).toEqual([{ window: WINDOW, name: 'stacks.list', input: {}, envelope }]);
    socket.close();
  });

  test('brings each window its own events, until it is closed', async () => {
    const { socket } = await enter();
    const event = new Promise((resolve) => socket.on('message', (data) => resolve(JSON.parse(String(data)))));
    expect([...emitTo.keys()]).toEqual([WINDOW]);
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
    expect((await knock(headers() as Record<string, string>)).outcome).toBe('403');
    expect(heard).toEqual([]);
  });

  test('another address than its own is turned away', async () => {
    expect((await knock({ Origin: address().origin }, '/')).outcome).toBe('403');
  });

  test.each([
    ['not json', 'before'],
    ['[]', 'before'],
    ['{"id":7,"name":"stacks.list"}', 'before'],
    ['{"window":"any"}', 'before'],
    [`{"window":"${WINDOW}"}`, 'before'],
    ['{"id":"x","name":"stacks.list"}', 'after'],
    ['null', 'after'],
  ])(
    'a message that is no request (%s, %s the hello) ends the connection and reaches nothing',
    async (text, when) => {
      const { socket } = when === 'after' ? await enter() : await knock();
      const closed = new Promise<number>((resolve) => socket.on('close', (code) => resolve(code)));
      socket.send(text);
      expect(await closed).toBe(1008);
      expect(heard).toEqual([]);
    },
  );
});
