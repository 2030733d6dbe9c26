import { randomBytes, timingSafeEqual } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type WebSocket, WebSocketServer } from 'ws';
import { z } from 'zod';
import type { Connection } from './app/app.ts';
import type { Emit } from './app/windows.ts';
import { windowFile } from './window-files.ts';

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

    const ticket = /^\/open\/([0-9a-f]+)$/.exec(path)?.[1];
    if (ticket !== undefined) {
      if (token === null || !same(ticket, token)) return refuse(response);
      token = null;
      response.writeHead(303, { Location: `/s/${session}/`, 'Referrer-Policy': 'no-referrer' }).end();
      return;
    }
    const [, offered, rest] = /^\/s\/([0-9a-f]+)\/(.*)$/.exec(path) ?? [];
    if (offered === undefined || rest === undefined || !same(offered, session)) return refuse(response);
    const file = await windowFile(rendererDir, rest, `ws://${host}`);
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
