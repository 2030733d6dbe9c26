import { randomBytes, timingSafeEqual } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize, sep } from 'node:path';
import { type WebSocket, WebSocketServer } from 'ws';
import { z } from 'zod';
import type { Connection } from './app/app.ts';
import type { Emit } from './app/windows.ts';

const CONTENT_TYPES: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

/** The largest message that a window may send: a page of 500 new boards is well under it. */
const MAX_MESSAGE_BYTES = 4 * 1024 * 1024;

export interface LoopbackOptions {
  /** The folder with the built window. */
  rendererDir: string;
  /** A window is there, with an id that it keeps when it connects again. */
  connect(window: string, emit: Emit): Connection;
}

/**
 * Serves the window on 127.0.0.1 and carries the contract over a web socket.
 *
 * Any program and any web page on this machine can reach a loopback port. So: a random port; a token that opens the
 * door once and leads to a path nobody can guess; every request must name this host, and the socket must come from
 * this origin. Whatever does not fit gets an empty 403.
 */
export async function startLoopbackHost({ rendererDir, connect }: LoopbackOptions) {
  let token: string | null = randomBytes(32).toString('hex');
  const session = randomBytes(32).toString('hex');
  const sockets = new Set<WebSocket>();

  const server = createServer((request, response) => {
    serve(request, response).catch(() => refuse(response));
  });
  const socketServer = new WebSocketServer({ noServer: true, maxPayload: MAX_MESSAGE_BYTES });

  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', resolve);
  });
  const host = `127.0.0.1:${(server.address() as AddressInfo).port}`;

  async function serve(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = new URL(request.url ?? '/', `http://${host}`).pathname;
    if (request.headers.host !== host || request.method !== 'GET') return refuse(response);

    const offered = /^\/open\/([0-9a-f]+)$/.exec(path)?.[1];
    if (offered !== undefined) {
      if (token === null || !same(offered, token)) return refuse(response);
      token = null;
      response.writeHead(303, { Location: `/s/${session}/`, 'Referrer-Policy': 'no-referrer' }).end();
      return;
    }
    const file = fileOf(path);
    if (file === null) return refuse(response);
    const bytes = await readFile(file);
    response
      .writeHead(200, {
        'Content-Type': CONTENT_TYPES[extname(file)] ?? 'application/octet-stream',
        'Content-Security-Policy': contentSecurityPolicy(host),
        'X-Content-Type-Options': 'nosniff',
        'Referrer-Policy': 'no-referrer',
        'Cross-Origin-Resource-Policy': 'same-origin',
        'Cross-Origin-Opener-Policy': 'same-origin',
        'Cache-Control': 'no-store',
      })
      .end(bytes);
  }

  /** The file that a path within the session names, or null for any other path. */
  function fileOf(path: string): string | null {
    const [, offered, rest] = /^\/s\/([0-9a-f]+)\/(.*)$/.exec(path) ?? [];
    if (offered === undefined || rest === undefined || !same(offered, session)) return null;
    const file = normalize(join(rendererDir, rest === '' ? 'index.html' : decodeURIComponent(rest)));
    return file.startsWith(normalize(rendererDir) + sep) ? file : null;
  }

  server.on('upgrade', (request, socket, head) => {
    const offered = /^\/s\/([0-9a-f]+)\/ws$/.exec(request.url ?? '')?.[1];
    const welcome =
      request.headers.host === host &&
      request.headers.origin === `http://${host}` &&
      offered !== undefined &&
      same(offered, session);
    if (!welcome) {
      socket.end('HTTP/1.1 403 Forbidden\r\nContent-Length: 0\r\nConnection: close\r\n\r\n');
      return;
    }
    socketServer.handleUpgrade(request, socket, head, (opened) => {
      sockets.add(opened);
      opened.on('close', () => sockets.delete(opened));
      opened.on('error', () => opened.terminate());
      opened.once('message', (data) => welcomeWindow(opened, String(data)));
    });
  });

  /** The first message of a socket says which window it is of. */
  function welcomeWindow(socket: WebSocket, text: string): void {
    const hello = parsed(helloSchema, text);
    if (hello === null) {
      socket.close(1008, 'hello-missing');
      return;
    }
    const send = (reply: object): void => {
      if (socket.readyState === socket.OPEN) socket.send(JSON.stringify(reply));
    };
    const connection = connect(hello.window, (event, data) => send({ event, data }));
    socket.on('close', connection.close);
    socket.on('message', async (data) => {
      const sent = parsed(sentSchema, String(data));
      if (sent === null) return socket.close(1008, 'not-a-request');
      send({ id: sent.id, answer: await connection.answer(sent.name, sent.input, sent.envelope) });
    });
  }

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

function refuse(response: ServerResponse): void {
  if (!response.headersSent) response.writeHead(403);
  response.end();
}

function same(offered: string, secret: string): boolean {
  return offered.length === secret.length && timingSafeEqual(Buffer.from(offered), Buffer.from(secret));
}

const helloSchema = z.object({ window: z.uuid() });
const sentSchema = z.object({ id: z.number(), name: z.string(), input: z.unknown(), envelope: z.unknown() });

function parsed<T>(schema: z.ZodType<T>, text: string): T | null {
  try {
    return schema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}

const contentSecurityPolicy = (host: string): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    `connect-src 'self' ws://${host}`,
    'frame-src blob:',
    "base-uri 'none'",
    "form-action 'none'",
    "frame-ancestors 'none'",
  ].join('; ');
