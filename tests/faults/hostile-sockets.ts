import type { Socket } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { type AttackedHost, startAttackedHost } from './attacked-host.ts';

/** How much more memory the host may have in use after all attacks than before: they are bounded one by one. */
const MAX_GROWTH_BYTES = 300 * 1024 * 1024;
/** As many strangers as `loopback/strangers.ts` lets in, and the one that it is about to close. */
const MAX_OPEN = 65;
/** As many as `loopback-host.ts` waits for a hello of. */
const MAX_WAITING = 16;
/** The host that is attacked gives a stranger 300 ms. */
const PATIENCE_OVER_MS = 700;
/** On a busy computer it may come to that only now; Node by itself waits a minute. */
const SOON_MS = 10_000;

export interface Tally {
  tried: number;
  survived: number;
  /** What did not survive, in words. */
  lost: string[];
}

/**
 * What any program on the same machine can send to the loopback port, one kind after another. After each of them a
 * window of the person's own must still be answered.
 */
export async function hostileSockets(): Promise<Tally> {
  const host = await startAttackedHost();
  const lost: string[] = [];
  let tried = 0;
  try {
    const { ask } = await host.openWindow();
    const before = await host.residentBytes();
    for (const [name, attack] of Object.entries(attacks)) {
      tried++;
      const fault = await attack(host);
      const isAnswered = await Promise.race([ask('yard.info', {}), pause(SOON_MS, null)]);
      if (!host.isAlive()) {
        lost.push(`${name}: the host ended`);
        break;
      }
      if (isAnswered === null) lost.push(`${name}: the window was not answered`);
      else if (fault) lost.push(`${name}: ${fault}`);
    }
    if (host.isAlive() && (await host.residentBytes()) - before > MAX_GROWTH_BYTES) {
      lost.push('the host keeps too much memory');
    }
  } finally {
    await host.stop();
  }
  return { tried, survived: tried - lost.length, lost };
}

/** What became of it where that matters; nothing where the host only has to go on. */
type Attack = (host: AttackedHost) => Promise<string | undefined>;

const attacks: Record<string, Attack> = {
  'a refused upgrade, then a reset': async (host) => {
    const foreign = host.upgrade({ Origin: 'http://evil.example' });
    for (let time = 0; time < 20; time++) {
      const socket = await host.knock();
      socket.write(foreign);
      if (time % 2 === 0) await pause(time);
      socket.resetAndDestroy();
    }
    await pause(50);
    return undefined;
  },
  'an upgrade, then a reset': async (host) => {
    for (let time = 0; time < 20; time++) {
      const socket = await host.knock();
      socket.write(host.upgrade());
      if (time % 2 === 0) await pause(time);
      socket.resetAndDestroy();
    }
    await pause(50);
    return undefined;
  },
  'half a request, then silence': (host) => mustBeClosed(host, 'GET / HTTP/1.1\r\nHost: '),
  'no request at all': (host) => mustBeClosed(host, ''),
  'half a request, then a reset': async (host) => {
    for (let time = 0; time < 20; time++) {
      const socket = await host.knock();
      socket.write('GET / HTTP/1.1\r\nHost: ');
      socket.resetAndDestroy();
    }
    return undefined;
  },
  'a header a letter at a time': async (host) => {
    const socket = await host.knock();
    const soon = closedSoon(socket);
    socket.write('GET / HTTP/1.1\r\nA: ');
    const letters = setInterval(() => socket.write('a'), 20);
    const isClosed = await soon;
    clearInterval(letters);
    socket.destroy();
    return !isClosed ? 'it was waited for' : undefined;
  },
  'a header of 8 MB': (host) =>
    mustBeClosed(host, `GET / HTTP/1.1\r\nA: ${'a'.repeat(8 * 1024 * 1024)}\r\n\r\n`),
  'an address of 8 MB': (host) => mustBeClosed(host, `GET /${'a'.repeat(8 * 1024 * 1024)} HTTP/1.1\r\n\r\n`),
  'no HTTP': (host) => mustBeClosed(host, '\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03 hello\r\n\r\n'),
  'every method': async (host) => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS', 'TRACE', 'CONNECT', 'PATCH', 'HEAD', 'PRI']) {
      await sendAndLeave(host, `${method} / HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n\r\n`);
    }
    return undefined;
  },
  'addresses that are none': async (host) => {
    for (const path of ['//', 'http://evil.example/', '/%', '/%00', '/%zz', '*', '/..%5c..%5c', '/assets']) {
      await sendAndLeave(host, `GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n\r\n`);
    }
    return undefined;
  },
  'a body without end': async (host) => {
    const socket = await host.knock();
    const soon = closedSoon(socket);
    socket.write(`POST / HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\nContent-Length: 99999999999\r\n\r\n`);
    const bytes = Buffer.alloc(64 * 1024);
    const more = setInterval(() => socket.writable && socket.write(bytes), 5);
    const isClosed = await soon;
    clearInterval(more);
    socket.destroy();
    return !isClosed ? 'it was read on' : undefined;
  },
  '2,000 requests at once, no answer read': async (host) => {
    const socket = await host.knock();
    socket.pause();
    socket.write(`GET /large.js HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n\r\n`.repeat(2000));
    await pause(200);
    const fault = await memoryFault(host);
    socket.destroy();
    return fault;
  },
  'an upgrade and no hello': (host) => mustBeClosed(host, host.upgrade()),
  'a wrong hello': async (host) => {
    for (const text of ['', 'null', '[]', '{}', '{"window":7}', `{"window":"${'7'.repeat(99_999)}"}`]) {
      const fault = await mustBeClosed(host, Buffer.concat([Buffer.from(host.upgrade()), frame(1, text)]));
      if (fault) return fault;
    }
    return undefined;
  },
  'a frame said to have 1 TB': (host) => mustCloseFrames(host, Buffer.from('81ff0000010000000000', 'hex')),
  'a frame without a mask': (host) => mustCloseFrames(host, Buffer.from('8102aabb', 'hex')),
  'a frame of no known kind': (host) => mustCloseFrames(host, Buffer.from('8b8000000000', 'hex')),
  'a close that is none': (host) => mustCloseFrames(host, Buffer.from('88810000000007', 'hex')),
  'bad UTF-8': (host) => mustCloseFrames(host, frame(1, Buffer.from('c328ff', 'hex'))),
  '200,000 fragments of one byte': (host) =>
    mustCloseFrames(
      host,
      Buffer.concat([frame(1, 'a', false), ...Array.from({ length: 200_000 }, () => frame(0, 'a', false))]),
    ),
  '500,000 pings, no pong read': async (host) => {
    const socket = await host.knock();
    socket.pause();
    socket.write(host.upgrade());
    const pings = Buffer.concat(Array.from({ length: 500 }, () => frame(9, 'a'.repeat(100))));
    for (let time = 0; time < 1000 && socket.writable; time++) {
      if (!socket.write(pings))
        await Promise.race([new Promise((resolve) => socket.once('drain', resolve)), pause(20)]);
      if (socket.writableLength > 1e7) break;
    }
    const fault = await memoryFault(host);
    socket.destroy();
    return fault;
  },
  'sixteen large messages before a hello': async (host) => {
    const sockets = await Promise.all(Array.from({ length: 40 }, () => host.knock()));
    const half = frame(1, 'a'.repeat(4 * 1024 * 1024 - 1)).subarray(0, -1);
    for (const socket of sockets) socket.write(Buffer.concat([Buffer.from(host.upgrade()), half]));
    await pause(PATIENCE_OVER_MS);
    const fault = await memoryFault(host);
    for (const socket of sockets) socket.destroy();
    return fault;
  },
  '20,000 requests of one window at once, no answer read': async (host) => {
    const { socket, send } = await host.openWindow();
    socket.pause();
    for (let request = 0; request < 20_000; request++) send('species.list', {});
    await pause(PATIENCE_OVER_MS);
    const fault = await memoryFault(host);
    socket.terminate();
    return fault;
  },
  '2,000 connections at once': async (host) => {
    const before = await host.openSockets();
    let most = 0;
    let isDone = false;
    const knocking = Promise.all(Array.from({ length: 2000 }, () => host.knock())).finally(() => {
      isDone = true;
    });
    while (!isDone) most = Math.max(most, await host.openSockets());
    for (const socket of await knocking) socket.resetAndDestroy();
    return most - before > MAX_OPEN ? `${most - before} were open` : undefined;
  },
  '60 upgrades and no hello, all at once': async (host) => {
    const before = await host.openSockets();
    const sockets = await host.whileBusy(async () => {
      const knocked = await Promise.all(Array.from({ length: 60 }, () => host.knock()));
      for (const socket of knocked) socket.write(host.upgrade());
      return knocked;
    });
    await Promise.all(sockets.map(answered));
    const open = (await host.openSockets()) - before;
    for (const socket of sockets) socket.destroy();
    return open > MAX_WAITING ? `${open} stayed open` : undefined;
  },
};

const closed = (socket: Socket): Promise<unknown> => new Promise((resolve) => socket.once('close', resolve));

const answered = (socket: Socket): Promise<unknown> =>
  Promise.race([new Promise((resolve) => socket.once('data', resolve)), closed(socket)]);

/** Whether the host closes it. */
const closedSoon = (socket: Socket): Promise<boolean> =>
  Promise.race([closed(socket).then(() => true), pause(SOON_MS, false)]);

/** Writes, reads on, and expects that the host soon has enough. */
async function mustBeClosed(host: AttackedHost, sent: string | Buffer): Promise<string | undefined> {
  const socket = await host.knock();
  const soon = closedSoon(socket);
  socket.resume();
  if (sent.length > 0) socket.write(sent);
  const isClosed = await soon;
  socket.destroy();
  return !isClosed ? 'it was waited for' : undefined;
}

/** The same with frames of a web socket. */
const mustCloseFrames = (host: AttackedHost, frames: Buffer): Promise<string | undefined> =>
  mustBeClosed(host, Buffer.concat([Buffer.from(host.upgrade()), frames]));

async function sendAndLeave(host: AttackedHost, text: string): Promise<void> {
  const socket: Socket = await host.knock();
  socket.write(text);
  await Promise.race([new Promise((resolve) => socket.once('data', resolve)), closed(socket), pause(100)]);
  socket.destroy();
}

async function memoryFault(host: AttackedHost): Promise<string | undefined> {
  if (!host.isAlive()) return undefined;
  const mb = Math.round((await host.residentBytes()) / 1024 / 1024);
  return mb > 600 ? `the host has ${mb} MB in use` : undefined;
}

/** A frame as a browser sends it, with a mask of zeros (RFC 6455, section 5.2). */
function frame(opcode: number, payload: string | Buffer, isLast = true): Buffer {
  const bytes = Buffer.from(payload);
  const first = (isLast ? 0x80 : 0) | opcode;
  const size = bytes.length;
  const head =
    size < 126
      ? [first, 0x80 | size]
      : size < 65_536
        ? [first, 0x80 | 126, size >> 8, size & 255]
        : [
            first,
            0x80 | 127,
            0,
            0,
            0,
            0,
            (size >> 24) & 255,
            (size >> 16) & 255,
            (size >> 8) & 255,
            size & 255,
          ];
  return Buffer.concat([Buffer.from([...head, 0, 0, 0, 0]), bytes]);
}
