import type { PacketFrom } from '../../../shared-core/gatt/source.ts';
import { monotonicMs } from '../../monotonic.ts';
import { createPaced } from '../../paced.ts';
import type { FromRadio } from '../radio-messages.ts';
import { send, sendable } from './outbox.ts';

type NotificationItem = Extract<FromRadio, { type: 'notifications' }>['items'][number];

const longestBatch = 128;
const longestQueue = 2048;
const mostBatchesUnderWay = 4;

const queue: NotificationItem[] = [];
/** The session whose notifications are in the queue. */
let queueAttempt = 0;
let overrun = 0;
let batchesUnderWay = 0;
const passing = createPaced(flush);

/** Starts empty for a new session: what an earlier one left is dropped. */
export function beginQueue(attempt: number): void {
  queue.length = 0;
  overrun = 0;
  queueAttempt = attempt;
}

export function enqueue(from: PacketFrom, data: Buffer): void {
  if (queue.length >= longestQueue) {
    overrun++;
    return;
  }
  queue.push({
    from,
    receivedAtMs: monotonicMs(),
    bytes: sendable(data),
    lengthBytes: data.length,
  });
  passing.soon();
}

/** Passes on what came, in few messages; a backlog on the other side fills the queue here and not the memory. */
function flush(): void {
  while (queue.length > 0 && batchesUnderWay < mostBatchesUnderWay) passBatch();
}

/** Passes on all that came, before the app is told that the session is over and takes no more of it. */
export function endQueue(): void {
  while (queue.length > 0) passBatch();
}

function passBatch(): void {
  const items = queue.splice(0, longestBatch);
  const lost = queue.length === 0 ? overrun : 0;
  overrun -= lost;
  batchesUnderWay++;
  send({ type: 'notifications', attempt: queueAttempt, items, overrun: lost }, () => {
    batchesUnderWay--;
    if (queue.length > 0) passing.soon();
  });
}
