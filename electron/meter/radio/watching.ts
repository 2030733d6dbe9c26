import type { ToRadio } from '../radio-messages.ts';
import { send } from './outbox.ts';
import { type Polled, poll } from './polling.ts';

type WatchOrder = Extract<ToRadio, { type: 'watch' }>;

export interface CharacteristicRef {
  serviceUuid: string;
  characteristicUuid: string;
}

/** What is asked of a connected meter to watch it, in the way of the library that connected it. */
export interface Watchable {
  /** False once another order came, or the meter went. */
  isWanted(): boolean;
  unsubscribeAllBut(kept: readonly CharacteristicRef[]): Promise<void>;
  subscribe(ref: CharacteristicRef): Promise<void>;
  /** Whether it is subscribed to any value. */
  isSubscribed(): boolean;
  /** Reads a value once and passes it on; one that is refused or late is passed over. */
  readerOf(ref: CharacteristicRef): Polled['read'];
  writeStart(start: NonNullable<WatchOrder['start']>): Promise<void>;
  textOf(error: unknown): string;
}

/**
 * Subscribes, writes what starts the meter, and reads what is to be read, for as long as that is wanted.
 * @returns what did not work, and why; null where all did, or it is no longer wanted
 */
export async function watchAsOrdered(
  order: WatchOrder,
  meter: Watchable,
): Promise<{ step: 'watch' | 'start'; error: unknown } | null> {
  let step: 'watch' | 'start' = 'watch';
  try {
    await meter.unsubscribeAllBut(order.sent);
    let refused: unknown = null;
    for (const each of order.sent) {
      if (!meter.isWanted()) return null;
      // Of several, those that refuse are passed over.
      await meter.subscribe(each).catch((error) => {
        refused = error;
        console.error(`subscribe: ${meter.textOf(error)}`);
      });
    }
    if (refused !== null && !meter.isSubscribed() && order.read.length === 0) throw refused;
    const read = order.read.map((each) => ({ everyMs: each.everyMs, read: meter.readerOf(each) }));
    if (order.start !== null) {
      step = 'start';
      await meter.writeStart(order.start);
    }
    if (!meter.isWanted()) return null;
    send({ type: 'watching', attempt: order.attempt });
    await poll(read, meter.isWanted);
    return null;
  } catch (error) {
    return meter.isWanted() ? { step, error } : null;
  }
}
