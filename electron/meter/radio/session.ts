/** The one meter that the app asked for: connecting, its values, leaving it. */
import { setTimeout as pause } from 'node:timers/promises';
import type { Characteristic, Peripheral } from '@abandonware/noble';
import { batteryLevelUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import type { FromRadio, ToRadio } from '../radio-messages.ts';
import { discover, keyOf } from './discovery.ts';
import { giveUpSearch, search, setScan, stopListening } from './listening.ts';
import { beginQueue, enqueue, flush } from './notification-queue.ts';
import { messageOf, printable, send } from './outbox.ts';
import { readAnswersWithinMs, within } from './within.ts';

const mostConnectTries = 3;
const betweenConnectTriesMs = 250;

/** One connection attempt, from the search until the meter is gone. */
interface Session {
  attempt: number;
  peripheral: Peripheral | null;
  connected: boolean;
  offered: Map<string, Characteristic>;
  watched: Map<
    string,
    { characteristic: Characteristic; onData: (data: Buffer, isNotification: boolean) => void }
  >;
  onGone: (() => void) | null;
}

let session: Session | null = null;

export async function connect(order: Extract<ToRadio, { type: 'connect' }>): Promise<void> {
  await leave();
  setScan(false);
  beginQueue(order.attempt);
  const own: Session = {
    attempt: order.attempt,
    peripheral: null,
    connected: false,
    offered: new Map(),
    watched: new Map(),
    onGone: null,
  };
  session = own;
  let step: Extract<FromRadio, { type: 'failed' }>['step'] = 'search';
  try {
    const peripheral = await search(order.deviceId, order.searchMs);
    if (session !== own) return;
    step = 'connect';
    await stopListening();
    own.peripheral = peripheral;
    await connectTo(own, peripheral);
    if (session !== own) return;
    own.connected = true;
    own.onGone = () => {
      if (session === own) session = null;
      own.connected = false;
      flush();
      send({ type: 'disconnected', attempt: own.attempt });
    };
    peripheral.once('disconnect', own.onGone);
    send({
      type: 'connected',
      attempt: own.attempt,
      name: printable(peripheral.advertisement.localName ?? ''),
    });
    step = 'discover';
    const characteristics = await discover(peripheral, own.offered, () => session === own);
    if (session !== own) return;
    send({ type: 'discovered', attempt: own.attempt, characteristics });
    await watchBattery(own).catch((error) => console.error(`battery: ${messageOf(error)}`));
  } catch (error) {
    if (session !== own) return;
    console.error(`${step}: ${messageOf(error)}`);
    send({ type: 'failed', attempt: own.attempt, step });
  }
}

/** A first try that fails at once ("failed to be established") is common on the air and means little. */
async function connectTo(own: Session, peripheral: Peripheral): Promise<void> {
  for (let tries = 1; session === own; tries++) {
    try {
      await peripheral.connectAsync();
      return;
    } catch (error) {
      console.error(`connecting, try ${tries}: ${messageOf(error)}`);
      if (tries === mostConnectTries) throw error;
      await pause(betweenConnectTriesMs);
    }
  }
}

async function watchBattery(own: Session): Promise<void> {
  for (const [key, characteristic] of own.offered) {
    if (!key.endsWith(`/${batteryLevelUuid}`)) continue;
    const sendLevel = (data: Buffer) => {
      const pct = data[0];
      if (session === own && pct !== undefined && pct <= 100)
        send({ type: 'battery', attempt: own.attempt, pct });
    };
    if (characteristic.properties.includes('read')) {
      sendLevel(await within(characteristic.readAsync(), readAnswersWithinMs, 'battery'));
    }
    if (characteristic.properties.includes('notify')) {
      characteristic.on('data', (data: Buffer, isNotification: boolean) => isNotification && sendLevel(data));
      await within(characteristic.subscribeAsync(), readAnswersWithinMs, 'battery');
    }
    return;
  }
}

export async function subscribe(order: Extract<ToRadio, { type: 'subscribe' }>): Promise<void> {
  const own = session;
  if (own === null || own.attempt !== order.attempt) return;
  const wanted = new Set(order.characteristics.map((c) => keyOf(c.serviceUuid, c.characteristicUuid)));
  try {
    for (const [key, { characteristic, onData }] of own.watched) {
      if (wanted.has(key)) continue;
      own.watched.delete(key);
      characteristic.removeListener('data', onData);
      await within(characteristic.unsubscribeAsync(), readAnswersWithinMs, `unsubscribe ${key}`);
    }
    for (const { serviceUuid, characteristicUuid } of order.characteristics) {
      const key = keyOf(serviceUuid, characteristicUuid);
      const characteristic = own.offered.get(key);
      if (characteristic === undefined) throw new Error(`the meter has no ${key}`);
      if (own.watched.has(key)) continue;
      const onData = (data: Buffer, isNotification: boolean) => {
        if (isNotification && session === own) enqueue(serviceUuid, characteristicUuid, data);
      };
      characteristic.on('data', onData);
      own.watched.set(key, { characteristic, onData });
      await within(characteristic.subscribeAsync(), readAnswersWithinMs, `subscribe ${key}`);
    }
    if (session === own) send({ type: 'subscribed', attempt: own.attempt });
  } catch (error) {
    console.error(`subscribe: ${messageOf(error)}`);
    if (session === own) send({ type: 'failed', attempt: own.attempt, step: 'subscribe' });
  }
}

/** Any answer will do: a readable value if there is one, else the signal strength. */
export async function prove(attempt: number): Promise<void> {
  const own = session;
  if (own?.attempt !== attempt || own.peripheral === null) return;
  const readable = [...own.offered.values()].find((c) => c.properties.includes('read'));
  if (readable === undefined) await own.peripheral.updateRssiAsync();
  else await readable.readAsync();
  if (session === own) send({ type: 'proof', attempt });
}

/** Ends the session politely as far as the meter lets us; never takes longer than some seconds. */
export async function leave(): Promise<void> {
  const own = session;
  session = null;
  giveUpSearch();
  flush();
  if (own === null || own.peripheral === null) return;
  if (!own.connected) {
    own.peripheral.cancelConnect();
    return;
  }
  if (own.onGone !== null) own.peripheral.removeListener('disconnect', own.onGone);
  try {
    for (const { characteristic, onData } of own.watched.values()) {
      characteristic.removeListener('data', onData);
      await within(characteristic.unsubscribeAsync(), 1000, 'unsubscribe');
    }
  } catch {
    // A meter that no longer answers is left all the same.
  }
  await within(own.peripheral.disconnectAsync(), 1500, 'disconnect').catch(() => undefined);
}

/** Hangs up without asking the meter for anything, as it may be why the link needs a fresh start. */
export async function hangUp(): Promise<void> {
  const own = session;
  session = null;
  if (own?.connected) {
    await within(own.peripheral!.disconnectAsync(), 500, 'hang-up').catch(() => undefined);
  }
}
