/** The one meter that the app asked for: connecting, its values, leaving it. */
import { setTimeout as pause } from 'node:timers/promises';
import type { Characteristic, Peripheral } from '@abandonware/noble';
import { batteryLevelUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import type { FromRadio, ToRadio } from '../radio-messages.ts';
import { AdvertReader } from './adverts.ts';
import { discover, keyOf } from './discovery.ts';
import type { LinkEar } from './inside-noble.ts';
import { earOf, follow, giveUpSearch, search, setScan, stopListening } from './listening.ts';
import { beginQueue, endQueue, enqueue } from './notification-queue.ts';
import { messageOf, printable, send } from './outbox.ts';
import { endVisit } from './visiting.ts';
import { type CharacteristicRef, watchAsOrdered } from './watching.ts';
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
  ear: LinkEar | null;
  /** The newest order to watch: an earlier one reads no more. */
  watching: Extract<ToRadio, { type: 'watch' }> | null;
  onGone: (() => void) | null;
}

const newSession = (attempt: number): Session => ({
  attempt,
  peripheral: null,
  connected: false,
  offered: new Map(),
  watched: new Map(),
  ear: null,
  watching: null,
  onGone: null,
});

let session: Session | null = null;

/** Leaves the meter before, and begins an attempt. */
async function begin(attempt: number): Promise<Session> {
  await leave();
  await endVisit();
  setScan(false);
  beginQueue(attempt);
  const own = newSession(attempt);
  session = own;
  return own;
}

export async function connect(order: Extract<ToRadio, { type: 'connect' }>): Promise<void> {
  const own = await begin(order.attempt);
  let step: Extract<FromRadio, { type: 'failed' }>['step'] = 'search';
  try {
    const peripheral = await search(order.deviceId, order.searchMs);
    if (session !== own) return;
    if (peripheral.connectable === false) {
      session = null;
      send({ type: 'failed', attempt: own.attempt, step: 'listen-only' });
      return;
    }
    step = 'connect';
    await stopListening();
    own.peripheral = peripheral;
    await connectTo(own, peripheral);
    if (session !== own) return;
    own.connected = true;
    own.ear = earOf(peripheral);
    own.onGone = () => {
      if (session === own) session = null;
      own.connected = false;
      endQueue();
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
    send({ type: 'failed', attempt: own.attempt, step: own.ear?.isUnpaired ? 'pairing' : step });
  }
}

/** Passes on what the meter advertises, without connecting. */
export async function listen(order: Extract<ToRadio, { type: 'listen' }>): Promise<void> {
  const own = await begin(order.attempt);
  const adverts = new AdvertReader();
  const take = (peripheral: Peripheral) => {
    if (session !== own) return;
    for (const { from, bytes } of adverts.read(peripheral)) enqueue(from, bytes);
  };
  try {
    const peripheral = await search(order.deviceId, order.searchMs);
    if (session !== own) return;
    const name = printable(peripheral.advertisement.localName ?? '');
    send({ type: 'heard', attempt: own.attempt, name });
    follow(order.deviceId, take);
    take(peripheral);
  } catch (error) {
    if (session !== own) return;
    console.error(`listen: ${messageOf(error)}`);
    send({ type: 'failed', attempt: own.attempt, step: 'search' });
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

/** ATT requests of noble's: for a value, to find the switch of notifications, to write (Core Specification, Vol 3 Part F 3.4.8). */
const readRequest = 0x0a;
const readByTypeRequest = 0x08;
const writeRequest = 0x12;

export async function watch(order: Extract<ToRadio, { type: 'watch' }>): Promise<void> {
  const own = session;
  if (own === null || own.attempt !== order.attempt) return;
  own.watching = order;
  const isWanted = () => session === own && own.watching === order;
  const failure = await watchAsOrdered(order, {
    isWanted,
    unsubscribeAllBut: (kept) => unsubscribeAllBut(own, kept),
    subscribe: (ref) => subscribe(own, ref),
    isSubscribed: () => own.watched.size > 0,
    readerOf: (ref) => reader(own, ref, isWanted),
    writeStart: (start) => writeStart(own, start),
    textOf: messageOf,
  });
  if (failure === null) return;
  console.error(`${failure.step}: ${messageOf(failure.error)}`);
  send({ type: 'failed', attempt: own.attempt, step: own.ear?.isUnpaired ? 'pairing' : failure.step });
}

function characteristicOf(own: Session, { serviceUuid, characteristicUuid }: CharacteristicRef) {
  const key = keyOf(serviceUuid, characteristicUuid);
  const characteristic = own.offered.get(key);
  if (characteristic === undefined) throw new Error(`the meter has no ${key}`);
  return { key, characteristic };
}

async function subscribe(own: Session, { serviceUuid, characteristicUuid }: CharacteristicRef) {
  const { key, characteristic } = characteristicOf(own, { serviceUuid, characteristicUuid });
  if (own.watched.has(key)) return;
  const from = { kind: 'characteristic', serviceUuid, characteristicUuid } as const;
  const onData = (data: Buffer, isNotification: boolean) => {
    if (isNotification && session === own) enqueue(from, data);
  };
  characteristic.on('data', onData);
  own.watched.set(key, { characteristic, onData });
  try {
    await ask(own, characteristic.subscribeAsync(), [readByTypeRequest, writeRequest], `subscribe ${key}`);
  } catch (error) {
    own.watched.delete(key);
    characteristic.removeListener('data', onData);
    throw error;
  }
}

async function unsubscribeAllBut(own: Session, kept: readonly CharacteristicRef[]) {
  const wanted = new Set(kept.map((each) => keyOf(each.serviceUuid, each.characteristicUuid)));
  for (const key of own.watched.keys()) if (!wanted.has(key)) await unsubscribe(own, key);
}

async function unsubscribe(own: Session, key: string) {
  const { characteristic, onData } = own.watched.get(key)!;
  own.watched.delete(key);
  characteristic.removeListener('data', onData);
  await within(characteristic.unsubscribeAsync(), readAnswersWithinMs, `unsubscribe ${key}`);
}

function reader(
  own: Session,
  { serviceUuid, characteristicUuid }: CharacteristicRef,
  isWanted: () => boolean,
) {
  const { key, characteristic } = characteristicOf(own, { serviceUuid, characteristicUuid });
  const from = { kind: 'characteristic', serviceUuid, characteristicUuid } as const;
  return async () => {
    try {
      const data = await ask(own, characteristic.readAsync(), [readRequest], `read ${key}`);
      if (isWanted()) enqueue(from, data);
    } catch (error) {
      if (isWanted()) console.error(messageOf(error));
    }
  };
}

async function writeStart(own: Session, start: NonNullable<Extract<ToRadio, { type: 'watch' }>['start']>) {
  const { characteristic } = characteristicOf(own, start);
  const written = characteristic.writeAsync(Buffer.from(start.bytes), !start.withResponse);
  await ask(own, written, [writeRequest], 'start');
}

/** Waits for an answer of the meter's until it refuses, or for as long as an answer may take. */
const ask = <T>(own: Session, answer: Promise<T>, requests: readonly number[], what: string): Promise<T> =>
  within(own.ear!.unlessRefused(answer, requests), readAnswersWithinMs, what);

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
  endQueue();
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
  void endVisit();
  if (own?.connected) {
    await within(own.peripheral!.disconnectAsync(), 500, 'hang-up').catch(() => undefined);
  }
}
