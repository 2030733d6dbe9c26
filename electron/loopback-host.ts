import { randomBytes, timingSafeEqual } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { IncomingMessage, Server, ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Duplex } from 'node:stream';
import { type WebSocket, WebSocketServer } from 'ws';
import { type Hello, helloSchema, NOT_LET_IN, TICKET_IN_ADDRESS } from '../shared-core/contract/hello.ts';
import type { Connection } from './app/app.ts';
import { createSignal } from './app/signal.ts';
import type { Emit } from './app/windows.ts';
import { boundStrangers } from './loopback/strangers.ts';
import { serveWindow } from './loopback/window-socket.ts';
import { http } from './node-http.ts';
import { PROOF_PATH, proofFor } from './running-host.ts';
import { windowFile } from './window-files.ts';

/** The largest message that a window may send: a page of 500 new boards is well under it. */
const MAX_MESSAGE_BYTES = 4 * 1024 * 1024;

/** Sockets may be open at once that were not let in. Each may hold one whole message. */
const MAX_WAITING = 16;

/** How long anyone may take, ms. */
const PATIENCE = {
  /** To say which window it is, or to go where it is not let in. */
  hello: 5000,
  /** To send a request's headers. */
  headers: 5000,
  /** Checked again where it takes too long, or reads nothing. */
  check: 5000,
};

/** A window is there, with an id that it keeps when it connects again. */
type Connect = (window: string, emit: Emit) => Connection;

/** Files that the page names and cannot begin without. */
const NEEDED_FILES = /assets\/[^"]+\.(?:js|css)/g;

export interface LoopbackOptions {
  /** The folder with the built window. */
  rendererDir: string;
  /** What serves windows; those that come before it is there wait for it. */
  connect: Connect | Promise<Connect>;
  /** A browser, or any other program, connects for the first time. */
  onAsked?(): void;
  /** A browser has the scripts and styles that the window begins with. */
  onWindowSent?(): void;
  patience?: typeof PATIENCE;
  /** Taken where it is free; 0, and where it is not, any other. */
  port?: number;
}

/**
 * Serves the window on 127.0.0.1 and carries the contract over a web socket.
 *
 * Any program and any web page on this machine can reach a loopback port. The window's files are no secret, and only
 * the name of this host is asked for, so that no web page can come by another name. The socket must come from this
 * origin, and its first message has the ticket of the start link, which counts once, or the session's key, which the
 * ticket was exchanged for. There is always one start link that was not used yet. No secret is in an address that counts, in a header or in a cookie.
 */
export async function startLoopbackHost({
  rendererDir,
  connect,
  onAsked = () => undefined,
  onWindowSent = () => undefined,
  patience = PATIENCE,
  port = 0,
}: LoopbackOptions) {
  let ticket = newSecret();
  const proof = newSecret();
  const session = { key: newSecret(), hostMark: newSecret() };
  const opened = createSignal();
  const sockets = new Set<WebSocket>();
  /** Those that were not let in yet, or never, oldest first. */
  const waiting = new Set<WebSocket>();

  /** The window's files, read once each: a program that asks for one a thousand times at once gets it from here. */
  const files = new Map<string, Promise<Buffer>>();
  function readOnce(file: string): Promise<Buffer> {
    const known = files.get(file) ?? readFile(file);
    files.set(file, known);
    // One that is not there is not remembered: anyone can make up names.
    known.catch(() => files.delete(file));
    return known;
  }

  /** Needed files of the page that no browser has yet. */
  const unsent = new Set<string>();

  const timeouts = {
    headersTimeout: patience.headers,
    requestTimeout: patience.headers,
    connectionsCheckingInterval: patience.check,
    // Cookies of every other program on this machine come along, whatever its port.
    maxHeaderSize: 64 * 1024,
  };
  const server = http.createServer(timeouts, (request, response) => {
    serve(request, response).catch(() => refuse(response));
  });
  server.once('connection', () => onAsked());
  const isWindow = boundStrangers(server);
  // No browser pings. Answers to a flood of pings that nobody reads would pile up.
  const socketServer = new WebSocketServer({
    noServer: true,
    maxPayload: MAX_MESSAGE_BYTES,
    autoPong: false,
  });

  await listen(server, port).catch(() => listen(server, 0));
  const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    if (request.headers.host !== host || request.method !== 'GET') return refuse(response);
    const { pathname, search } = new URL(request.url ?? '/', `http://${host}`);
    const path = pathname.slice(1);
    if (path === PROOF_PATH) {
      response.writeHead(200).end(proofFor(search.slice(1), proof));
      return;
    }
    const file = await windowFile(rendererDir, path, `ws://${host}`, readOnce);
    if (file === null) return refuse(response);
    if (path === '') for (const [needed] of String(file.bytes).matchAll(NEEDED_FILES)) unsent.add(needed);
    response.writeHead(200, file.headers).end(file.bytes, () => {
      if (unsent.delete(path) && unsent.size === 0) onWindowSent();
    });
  }

  server.on('upgrade', (request, socket, head) => {
    const { headers, url } = request;
    const isOurs = headers.host === host && headers.origin === `http://${host}` && url === '/ws';
    if (!isOurs) return turnAway(socket);
    socketServer.handleUpgrade(request, socket, head, (opening) => {
      sockets.add(opening);
      waiting.add(opening);
      const [oldest] = waiting;
      if (waiting.size > MAX_WAITING) oldest?.terminate();
      const tooLate = setTimeout(() => opening.terminate(), patience.hello);
      opening.on('close', () => {
        sockets.delete(opening);
        waiting.delete(opening);
        clearTimeout(tooLate);
      });
      opening.on('error', () => opening.terminate());
      opening.once('message', async (data) => {
        const hello = helloIn(String(data));
        if (hello === null) return opening.close(1008, 'hello-missing');
        if (!isRight(hello)) return opening.close(NOT_LET_IN, 'not-let-in');
        waiting.delete(opening);
        clearTimeout(tooLate);
        isWindow(request.socket);
        const serve = await connect;
        if (opening.readyState !== opening.OPEN) return;
        // One that left meanwhile comes again with the same ticket; of two with it, the first is let in.
        if (!isLetIn(hello)) return opening.close(NOT_LET_IN, 'not-let-in');
        opening.send(JSON.stringify({ session }));
        serveWindow(opening, (emit) => serve(hello.window, emit), patience.check);
      });
    });
  });

  const isRight = (hello: Hello): boolean =>
    'key' in hello ? same(hello.key, session.key) : same(hello.ticket, ticket);

  /** From then on its ticket opens nothing more. */
  function isLetIn(hello: Hello): boolean {
    if (!isRight(hello)) return false;
    if ('ticket' in hello) {
      ticket = newSecret();
      opened.give();
    }
    return true;
  }

  return {
    /** The start link: opens the window once. Then it is another. */
    address: (): string => `http://${host}/?${TICKET_IN_ADDRESS}=${ticket}`,
    /** The window was opened by that address, which is no longer valid. */
    opened,
    /** Shows who is asked at `PROOF_PATH`. */
    proof,
    close: async (): Promise<void> => {
      for (const socket of sockets) socket.terminate();
      server.closeAllConnections();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => {
      server.off('error', reject);
      resolve();
    });
  });
}

const newSecret = (): string => randomBytes(32).toString('hex');

/** Both are of one length: the contract says which. */
const same = (offered: string, secret: string): boolean =>
  timingSafeEqual(Buffer.from(offered), Buffer.from(secret));

/** Answers an upgrade with a refusal, and is done with the socket. */
function turnAway(socket: Duplex): void {
  socket.once('finish', () => socket.destroy());
  socket.end('HTTP/1.1 403 Forbidden\r\nContent-Length: 0\r\nConnection: close\r\n\r\n');
}

function refuse(response: ServerResponse): void {
  if (!response.headersSent) response.writeHead(403);
  response.end();
}

function helloIn(text: string): Hello | null {
  try {
    return helloSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
