import { type ChildProcess, fork } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { WebSocket } from 'ws';
import type { Answer } from '../../shared-core/contract/answer.ts';
import { type Session, TICKET_IN_ADDRESS, welcomeSchema } from '../../shared-core/contract/hello.ts';

/** A running host, with what an attacker on the same machine can do to it, and what a window can. */
export interface AttackedHost {
  port: number;
  isAlive(): boolean;
  residentBytes(): Promise<number>;
  /** As the host counts them: a busy attacker may hear much later that one was closed. */
  openSockets(): Promise<number>;
  /** While `work` goes on, the host is as busy as can be: it comes to nothing. */
  whileBusy<T>(work: () => Promise<T>): Promise<T>;
  /** A connection that ignores whatever happens to it. */
  knock(): Promise<Socket>;
  /** A window of the person's own, that shows that it is one. */
  openWindow(): Promise<OpenWindow>;
  /** The first lines of a request for a web socket. */
  upgrade(headers?: Record<string, string>): string;
  stop(): Promise<void>;
}

export interface OpenWindow {
  socket: WebSocket;
  send(name: string, input: unknown): void;
  ask(name: string, input: unknown): Promise<Answer>;
}

export async function startAttackedHost(): Promise<AttackedHost> {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-attacked-'));
  writeFileSync(join(folder, 'index.html'), '<title>the window</title>');
  writeFileSync(join(folder, 'large.js'), 'x'.repeat(1024 * 1024));
  const child = fork(join(import.meta.dirname, 'host-process.ts'), [join(folder, 'data'), folder], {
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const { address } = (await answerOf(child)) as { address: string };
  const { host, port, origin, searchParams } = new URL(address);
  const ticket = searchParams.get(TICKET_IN_ADDRESS);
  const { session } = await enter({ ticket });

  /** A window's socket, let in by what it shows. */
  async function enter(shown: object): Promise<{ socket: WebSocket; session: Session }> {
    for (;;) {
      const socket = new WebSocket(`ws://${host}/ws`, { headers: { Origin: origin } });
      socket.on('error', () => undefined);
      socket.once('open', () => socket.send(JSON.stringify({ window: randomUUID(), ...shown })));
      const welcome = await new Promise((resolve) => {
        socket.once('message', resolve);
        socket.once('close', () => resolve(null));
      });
      // On a busy computer the host may have no patience left before the hello comes; a window connects again then.
      if (welcome !== null)
        return { socket, session: welcomeSchema.parse(JSON.parse(String(welcome))).session };
    }
  }

  async function inUse(): Promise<{ residentBytes: number; openSockets: number }> {
    child.send('in use');
    return (await answerOf(child)) as { residentBytes: number; openSockets: number };
  }

  return {
    port: Number(port),
    isAlive: () => child.exitCode === null && child.signalCode === null,
    residentBytes: async () => (await inUse()).residentBytes,
    openSockets: async () => (await inUse()).openSockets,
    whileBusy: async (work) => {
      child.kill('SIGSTOP');
      try {
        return await work();
      } finally {
        child.kill('SIGCONT');
      }
    },
    knock: async () => {
      const socket = connect({ host: '127.0.0.1', port: Number(port), noDelay: true });
      await new Promise((resolve) => socket.on('error', resolve).once('connect', resolve));
      return socket;
    },
    openWindow: async () => windowOn((await enter({ key: session.key })).socket),
    upgrade: (headers = {}) =>
      [
        'GET /ws HTTP/1.1',
        ...Object.entries({
          Host: host,
          Origin: origin,
          Connection: 'Upgrade',
          Upgrade: 'websocket',
          'Sec-WebSocket-Version': '13',
          'Sec-WebSocket-Key': 'dGhlIHNhbXBsZSBub25jZQ==',
          ...headers,
        }).map(([name, value]) => `${name}: ${value}`),
        '',
        '',
      ].join('\r\n'),
    stop: async () => {
      const ended = child.exitCode === null && child.signalCode === null ? once(child, 'exit') : null;
      child.kill('SIGKILL');
      await ended;
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function answerOf(child: ChildProcess): Promise<unknown> {
  return new Promise((resolve, reject) => {
    const ended = (): void => reject(new Error('The host ended.'));
    child.once('exit', ended);
    child.once('message', (message) => {
      child.off('exit', ended);
      resolve(message);
    });
  });
}

function windowOn(socket: WebSocket): OpenWindow {
  let sent = 0;
  const waiting = new Map<number, (answer: Answer) => void>();
  socket.on('message', (data) => {
    const { id, answer } = JSON.parse(String(data)) as { id?: number; answer: Answer };
    if (id !== undefined) waiting.get(id)?.(answer);
  });
  const send = (name: string, input: unknown): void => {
    socket.send(JSON.stringify({ id: ++sent, name, input, envelope: { yard: null, act: randomUUID() } }));
  };
  return {
    socket,
    send,
    ask: (name, input) => {
      send(name, input);
      return new Promise((resolve) => waiting.set(sent, resolve));
    },
  };
}
