import { randomBytes, timingSafeEqual } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Duplex } from 'node:stream';
import { type WebSocket, WebSocketServer } from 'ws';
import { z } from 'zod';
import type { Connection } from './app/app.ts';
import type { Emit } from './app/windows.ts';
import { boundStrangers } from './loopback/strangers.ts';
import { serveWindow } from './loopback/window-socket.ts';
import { windowFile } from './window-files.ts';

/** The largest message that a window may send: a page of 500 new boards is well under it. */
const MAX_MESSAGE_BYTES = 4 * 1024 * 1024;

/** Sockets may be open at once whose first message is on its way. Each may hold one whole message. */
const MAX_SILENT = 16;

/** How long anyone may take, ms. */
const PATIENCE = {
  /** To say which window it is. */
  hello: 5000,
  /** To send a request's headers. */
  headers: 5000,
  /** To be looked at again where it takes too long, or reads nothing. */
  check: 5000,
};

export interface LoopbackOptions {
  /** The folder with the built window. */
  rendererDir: string;
  /** A window is there, with an id that it keeps when it connects again. */
  connect(window: string, emit: Emit): Connection;
  patience?: typeof PATIENCE;
}

/**
 * Serves the window on 127.0.0.1 and carries the contract over a web socket.
 *
 * Any program and any web page on this machine can reach a loopback port. So: a random port; a token that opens the
 * door once and leads to a path nobody can guess; every request must name this host, and the socket must come from
 * this origin. Whatever does not fit gets an empty 403.
 */
export async function startLoopbackHost({ rendererDir, connect, patience = PATIENCE }: LoopbackOptions) {
  let token: string | null = randomBytes(32).toString('hex');
  const session = randomBytes(32).toString('hex');
  const sockets = new Set<WebSocket>();
  /** Those that did not say which window they are, oldest first. */
  const silent = new Set<WebSocket>();

  /** The window's files, read once each: a program that asks for one a thousand times at once gets it from here. */
  const files = new Map<string, Promise<Buffer>>();
  function readOnce(file: string): Promise<Buffer> {
    const known = files.get(file) ?? readFile(file);
    files.set(file, known);
    // One that is not there is not remembered: anyone can make up names.
    known.catch(() => files.delete(file));
    return known;
  }

  const timeouts = {
    headersTimeout: patience.headers,
    requestTimeout: patience.headers,
    connectionsCheckingInterval: patience.check,
    // Cookies of every other program on this machine come along, whatever its port.
    maxHeaderSize: 64 * 1024,
  };
  const server = createServer(timeouts, (request, response) => {
    serve(request, response).catch(() => refuse(response));
  });
  const isWindow = boundStrangers(server);
  // No browser pings. Answers to a flood of pings that nobody reads would pile up.
  const socketServer = new WebSocketServer({
    noServer: true,
    maxPayload: MAX_MESSAGE_BYTES,
    autoPong: false,
  });

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = new URL(request.url ?? '/', `http://${host}`).pathname;
    if (request.headers.host !== host || request.method !== 'GET') return refuse(response);

    const ticket = /^\/open\/([0-9a-f]+)$/.exec(path)?.[1];
    if (ticket !== undefined) {
      if (token === null || !same(ticket, token)) return refuse(response);
      token = null;
      response.writeHead(303, { Location: `/s/${session}/`, 'Referrer-Policy': 'no-referrer' }).end();
      return;
    }
    const [, offered, rest] = /^\/s\/([0-9a-f]+)\/(.*)$/.exec(path) ?? [];
    if (offered === undefined || rest === undefined || !same(offered, session)) return refuse(response);
    const file = await windowFile(rendererDir, rest, `ws://${host}`, readOnce);
    if (file === null) return refuse(response);
    response.writeHead(200, file.headers).end(file.bytes);
  }

  server.on('upgrade', (request, socket, head) => {
    const offered = /^\/s\/([0-9a-f]+)\/ws$/.exec(request.url ?? '')?.[1];
    const welcome =
      request.headers.host === host &&
      request.headers.origin === `http://${host}` &&
      offered !== undefined &&
      same(offered, session);
    if (!welcome) return turnAway(socket);
    socketServer.handleUpgrade(request, socket, head, (opened) => {
      sockets.add(opened);
      silent.add(opened);
      const [oldest] = silent;
      if (silent.size > MAX_SILENT) oldest?.terminate();
      const tooLate = setTimeout(() => opened.terminate(), patience.hello);
      opened.on('close', () => {
        sockets.delete(opened);
        silent.delete(opened);
        clearTimeout(tooLate);
      });
      opened.on('error', () => opened.terminate());
      opened.once('message', (data) => {
        silent.delete(opened);
        clearTimeout(tooLate);
        const hello = parsedHello(String(data));
        if (hello === null) return opened.close(1008, 'hello-missing');
        isWindow(request.socket);
        serveWindow(opened, (emit) => connect(hello.window, emit), patience.check);
      });
    });
  });

  return {
    /** Opens the window once; the browser is led on to the session's own address. */
    address: `http://${host}/open/${token}`,
    close: async (): Promise<void> => {
      for (const socket of sockets) socket.terminate();
      server.closeAllConnections();
      await new Promise<void>((resolve) => server.close(() => resolve()));
    },
  };
}

/** Answers an upgrade with a refusal, and is done with the socket. */
function turnAway(socket: Duplex): void {
  socket.once('finish', () => socket.destroy());
  socket.end('HTTP/1.1 403 Forbidden\r\nContent-Length: 0\r\nConnection: close\r\n\r\n');
}

function refuse(response: ServerResponse): void {
  if (!response.headersSent) response.writeHead(403);
  response.end();
}

function same(offered: string, secret: string): boolean {
  return offered.length === secret.length && timingSafeEqual(Buffer.from(offered), Buffer.from(secret));
}

const helloSchema = z.object({ window: z.uuid() });

function parsedHello(text: string): z.infer<typeof helloSchema> | null {
  try {
    return helloSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
