import { setImmediate as turn } from 'node:timers/promises';
import type { WebSocket } from 'ws';
import { z } from 'zod';
import type { Connection } from '../app/app.ts';
import type { Emit } from '../app/windows.ts';

/** Requests of one window that are answered at a time. A list asks for some 60 pages at once. */
const MAX_UNDER_WAY = 100;
/** No request is begun while more than this of the answers before it is unread. */
const MAX_UNREAD_BYTES = 4 * 1024 * 1024;
/** A window that leaves more than this of its events unread is dropped: some minutes of a lively meter. */
const MAX_UNREAD_EVENT_BYTES = 4 * 1024 * 1024;
/** One that reads nothing during two of these is dropped. */
const STALL_CHECK_MS = 5000;

const requestSchema = z.object({
  id: z.number(),
  name: z.string(),
  input: z.unknown(),
  envelope: z.unknown(),
});

/**
 * Carries requests, answers and events between the app and one window, at the pace that both keep.
 *
 * More requests than can be answered at once stay unread in the socket, so that none is refused, whoever sends faster
 * than it is answered has to wait, and memory is bounded. A window that stops reading is dropped; when it goes on, it
 * connects again and asks for everything it shows.
 */
export function serveWindow(
  socket: WebSocket,
  connect: (emit: Emit) => Connection,
  stallCheckMs = STALL_CHECK_MS,
): void {
  const waiting: string[] = [];
  let underWay = 0;
  let isTaking = false;
  let unreadEventBytes = 0;
  /** How many messages the window has taken. */
  let taken = 0;

  function send(text: string, onTaken: () => void): void {
    if (socket.readyState !== socket.OPEN) return;
    socket.send(text, () => {
      taken++;
      onTaken();
    });
  }
  const connection = connect((event, data) => {
    const text = JSON.stringify({ event, data });
    if (unreadEventBytes > MAX_UNREAD_EVENT_BYTES) return socket.terminate();
    unreadEventBytes += text.length;
    send(text, () => {
      unreadEventBytes -= text.length;
    });
  });

  async function answer(text: string): Promise<void> {
    const request = requestIn(text);
    if (request === null) {
      waiting.length = 0;
      return socket.close(1008, 'not-a-request');
    }
    underWay++;
    const reply = await connection.answer(request.name, request.input, request.envelope);
    underWay--;
    send(JSON.stringify({ id: request.id, answer: reply }), take);
    take();
  }

  /** Begins what waits, as far as there is room. */
  async function take(): Promise<void> {
    if (isTaking) return;
    isTaking = true;
    while (waiting.length > 0 && underWay < MAX_UNDER_WAY && socket.bufferedAmount < MAX_UNREAD_BYTES) {
      void answer(waiting.shift() as string);
      // Other windows and the meter have their turn after each one.
      if (waiting.length > 0) await turn();
    }
    isTaking = false;
    if (waiting.length === 0) socket.resume();
  }

  socket.on('message', (data) => {
    waiting.push(String(data));
    void take();
    if (waiting.length > 0) socket.pause();
  });

  let takenBefore = 0;
  let stalls = 0;
  const stallCheck = setInterval(() => {
    stalls = socket.bufferedAmount > 0 && taken === takenBefore ? stalls + 1 : 0;
    takenBefore = taken;
    // The first time it may be this process that had no time to send.
    if (stalls === 2) socket.terminate();
  }, stallCheckMs);
  socket.on('close', () => {
    clearInterval(stallCheck);
    connection.close();
  });
}

function requestIn(text: string): z.infer<typeof requestSchema> | null {
  try {
    return requestSchema.safeParse(JSON.parse(text)).data ?? null;
  } catch {
    return null;
  }
}
