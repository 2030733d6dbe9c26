/**
 * The radio, in a process of its own: noble and its native parts can end or hang only this one, and "a fresh start of
 * the link" is this process ended and started anew. `bluetooth-link.ts` forks it and speaks `radio-messages.ts` to it.
 * What it does is kept plain: the app's side owns the time limits, the retries and every sentence.
 */
import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import { setTimeout as pause } from 'node:timers/promises';
import type { Characteristic, Peripheral } from '@abandonware/noble';
import {
  batteryLevelUuid,
  plainUuid,
  presentationFormatUuid,
  serviceChangedUuid,
  userDescriptionUuid,
  validRangeUuid,
} from '../../shared-core/gatt/assigned-numbers.ts';
import { reasonOfError, reasonOfState } from './adapter-reason.ts';
import {
  type AdapterReason,
  type FromRadio,
  longestValueBytes,
  type ToRadio,
  toRadioSchema,
} from './radio-messages.ts';

type Noble = typeof import('@abandonware/noble');
type NotificationItem = Extract<FromRadio, { type: 'notifications' }>['items'][number];

const aliveEveryMs = 1000;
const foundEveryMs = 250;
const flushEveryMs = 50;
const longestBatch = 128;
const longestQueue = 2048;
const mostBatchesUnderWay = 4;
const mostCharacteristics = 128;
const adapterAnswersWithinMs = 5000;
const readAnswersWithinMs = 2500;
const mostConnectTries = 3;
const betweenConnectTriesMs = 250;
/** Heard so recently that it can be connected to without listening for it first. */
const heardJustNowMs = 3000;
/** HCI's value for a signal strength that is not available (Core Specification, Vol 4 Part E 7.7.65.2). */
const rssiNotAvailable = 127;

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

let noble: Noble | null = null;
let adapterOn = false;
let scanWanted = false;
let searching: { deviceId: string; onHeard: () => void } | null = null;
let listening = false;
let session: Session | null = null;
const heard = new Map<string, { peripheral: Peripheral; atMs: number }>();
const news = new Map<string, Extract<FromRadio, { type: 'found' }>['devices'][number]>();

const queue: NotificationItem[] = [];
/** The session whose notifications are in the queue. */
let queueAttempt = 0;
let overrun = 0;
let batchesUnderWay = 0;

function send(message: FromRadio, sent?: () => void): void {
  if (process.connected) process.send!(message, undefined, undefined, sent);
}

function sendAdapter(reason: AdapterReason, detail = ''): void {
  adapterOn = reason === 'on';
  send({ type: 'adapter', reason, detail: detail.slice(0, 4000) });
}

function within<T>(promise: Promise<T>, limitMs: number, what: string): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`no answer within ${limitMs} ms: ${what}`)), limitMs);
    promise.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

const messageOf = (error: unknown) => (error instanceof Error ? error.message : String(error)).slice(0, 4000);
const keyOf = (serviceUuid: string, characteristicUuid: string) => `${serviceUuid}/${characteristicUuid}`;
const printable = (text: string) => text.replace(/\p{C}/gu, '').slice(0, 248);

/** How many adapters Linux lists; null elsewhere. */
function adaptersPresent(): number | null {
  if (process.platform !== 'linux') return null;
  try {
    return readdirSync('/sys/class/bluetooth').length;
  } catch {
    return 0;
  }
}

function startRadio(): void {
  sendAdapter('starting');
  try {
    noble = createRequire(import.meta.url)('@abandonware/noble') as Noble;
  } catch (error) {
    sendAdapter(reasonOfError(messageOf(error)), messageOf(error));
    return;
  }
  const silence = setTimeout(() => sendAdapter('no-answer', 'no state from noble'), adapterAnswersWithinMs);
  noble.on('stateChange', (state) => {
    clearTimeout(silence);
    listening = false;
    sendAdapter(reasonOfState(state, adaptersPresent()), state);
    listenAsWanted();
  });
  noble.on('warning', (warning: string) => {
    console.error(`noble: ${warning}`);
    if (!adapterOn && /initialization/i.test(warning)) {
      clearTimeout(silence);
      sendAdapter(reasonOfError(warning), warning);
    }
  });
  noble.on('discover', onHeard);
  noble.on('scanStart', () => {
    listening = true;
  });
  noble.on('scanStop', () => {
    listening = false;
  });
}

const wantsToListen = () => scanWanted || searching !== null;

function listenAsWanted(): void {
  if (noble === null || !adapterOn) return;
  if (wantsToListen() === listening) return;
  if (listening) {
    noble.stopScanning();
    return;
  }
  noble.startScanning([], true);
  // noble can go on saying "powered on" after the adapter went: only an answer counts.
  setTimeout(() => {
    if (adapterOn && wantsToListen() && !listening) sendAdapter('no-answer', 'scan did not start');
  }, adapterAnswersWithinMs);
}

function onHeard(peripheral: Peripheral): void {
  heard.set(peripheral.id, { peripheral, atMs: Date.now() });
  if (searching?.deviceId === peripheral.id) searching.onHeard();
  if (!scanWanted) return;
  const uuids = (peripheral.advertisement.serviceUuids ?? []).map(plainUuid);
  news.set(peripheral.id, {
    deviceId: peripheral.id,
    name: printable(peripheral.advertisement.localName ?? ''),
    rssiDbm: peripheral.rssi === rssiNotAvailable ? null : peripheral.rssi,
    serviceUuids: uuids.filter((uuid) => uuid !== null).slice(0, 64),
  });
}

function sendFound(): void {
  if (news.size === 0) return;
  send({ type: 'found', devices: [...news.values()].slice(0, 500) });
  news.clear();
}

async function search(deviceId: string, searchMs: number): Promise<Peripheral> {
  const known = heard.get(deviceId);
  if (known !== undefined && Date.now() - known.atMs < heardJustNowMs) return known.peripheral;
  let own: typeof searching = null;
  try {
    const found = new Promise<void>((resolve) => {
      own = { deviceId, onHeard: resolve };
    });
    searching = own;
    listenAsWanted();
    await within(found, searchMs, 'listening for the meter');
    return heard.get(deviceId)!.peripheral;
  } finally {
    if (searching === own) searching = null;
  }
}

/** Many adapters cannot listen and connect at once. */
async function stopListening(): Promise<void> {
  if (noble === null || !listening) return;
  await within(noble.stopScanningAsync(), 1000, 'stopping to listen').catch(() => undefined);
  listening = false;
}

async function connect(order: Extract<ToRadio, { type: 'connect' }>): Promise<void> {
  await leave();
  scanWanted = false;
  queue.length = 0;
  overrun = 0;
  queueAttempt = order.attempt;
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
    const characteristics = await discover(own, peripheral);
    if (session !== own) return;
    send({ type: 'discovered', attempt: own.attempt, characteristics });
    await watchBattery(own).catch((error) => console.error(`battery: ${messageOf(error)}`));
  } catch (error) {
    if (session !== own) return;
    send({ type: 'failed', attempt: own.attempt, step, detail: messageOf(error) });
  }
}

/** A first try that fails at once ("failed to be established") is common on the air and says little. */
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

async function discover(own: Session, peripheral: Peripheral) {
  const list: Extract<FromRadio, { type: 'discovered' }>['characteristics'] = [];
  // One service after the other: noble's own "discover all" never returns when there are none.
  for (const service of await peripheral.discoverServicesAsync([])) {
    const serviceUuid = plainUuid(service.uuid);
    if (serviceUuid === null) continue;
    for (const characteristic of await service.discoverCharacteristicsAsync([])) {
      const characteristicUuid = plainUuid(characteristic.uuid);
      if (characteristicUuid === null || list.length === mostCharacteristics || session !== own) continue;
      own.offered.set(keyOf(serviceUuid, characteristicUuid), characteristic);
      const canNotify =
        (characteristic.properties.includes('notify') || characteristic.properties.includes('indicate')) &&
        characteristicUuid !== serviceChangedUuid;
      const described = canNotify ? await readDescriptors(characteristic) : new Map<string, Buffer>();
      list.push({
        serviceUuid,
        characteristicUuid,
        canNotify,
        canRead: characteristic.properties.includes('read'),
        presentationFormat: sendable(described.get(presentationFormatUuid)),
        userDescription:
          described.get(userDescriptionUuid)?.toString('utf8').slice(0, longestValueBytes) ?? null,
        validRange: sendable(described.get(validRangeUuid)),
      });
    }
  }
  return list;
}

/** A copy, as noble may go on using its buffer; null where there is none or the standard allows none so long. */
const sendable = (bytes: Buffer | undefined) =>
  bytes === undefined || bytes.length > longestValueBytes ? null : Uint8Array.from(bytes);

async function readDescriptors(characteristic: Characteristic): Promise<Map<string, Buffer>> {
  const values = new Map<string, Buffer>();
  const telling = [presentationFormatUuid, userDescriptionUuid, validRangeUuid];
  const descriptors = await characteristic.discoverDescriptorsAsync();
  for (const descriptor of descriptors) {
    const uuid = plainUuid(descriptor.uuid);
    if (uuid === null || !telling.includes(uuid)) continue;
    const value = await within(descriptor.readValueAsync(), readAnswersWithinMs, `descriptor ${uuid}`);
    // Some systems hand out the user description as text.
    if (value.length > 0) values.set(uuid, Buffer.from(value));
  }
  return values;
}

async function watchBattery(own: Session): Promise<void> {
  for (const [key, characteristic] of own.offered) {
    if (!key.endsWith(`/${batteryLevelUuid}`)) continue;
    const tell = (data: Buffer) => {
      const pct = data[0];
      if (session === own && pct !== undefined && pct <= 100)
        send({ type: 'battery', attempt: own.attempt, pct });
    };
    if (characteristic.properties.includes('read')) {
      tell(await within(characteristic.readAsync(), readAnswersWithinMs, 'battery level'));
    }
    if (characteristic.properties.includes('notify')) {
      characteristic.on('data', (data: Buffer, isNotification: boolean) => isNotification && tell(data));
      await within(characteristic.subscribeAsync(), readAnswersWithinMs, 'battery notifications');
    }
    return;
  }
}

async function subscribe(order: Extract<ToRadio, { type: 'subscribe' }>): Promise<void> {
  const own = session;
  if (own === null || own.attempt !== order.attempt) return;
  const wanted = new Set(order.characteristics.map((c) => keyOf(c.serviceUuid, c.characteristicUuid)));
  try {
    for (const [key, { characteristic, onData }] of own.watched) {
      if (wanted.has(key)) continue;
      own.watched.delete(key);
      characteristic.removeListener('data', onData);
      await within(characteristic.unsubscribeAsync(), readAnswersWithinMs, `unsubscribing from ${key}`);
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
      await within(characteristic.subscribeAsync(), readAnswersWithinMs, `subscribing to ${key}`);
    }
    if (session === own) send({ type: 'subscribed', attempt: own.attempt });
  } catch (error) {
    if (session === own) {
      send({ type: 'failed', attempt: own.attempt, step: 'subscribe', detail: messageOf(error) });
    }
  }
}

function enqueue(serviceUuid: string, characteristicUuid: string, data: Buffer): void {
  if (queue.length >= longestQueue) {
    overrun++;
    return;
  }
  queue.push({
    serviceUuid,
    characteristicUuid,
    receivedAtMs: Date.now(),
    bytes: sendable(data),
    lengthBytes: data.length,
  });
}

/** Passes on what came, in few messages; a backlog on the other side fills the queue here and not the memory. */
function flush(): void {
  while (queue.length > 0 && batchesUnderWay < mostBatchesUnderWay) {
    const items = queue.splice(0, longestBatch);
    const lost = queue.length === 0 ? overrun : 0;
    overrun -= lost;
    batchesUnderWay++;
    send({ type: 'notifications', attempt: queueAttempt, items, overrun: lost }, () => {
      batchesUnderWay--;
    });
  }
}

/** Any answer will do: a readable value if there is one, else the signal strength. */
async function prove(attempt: number): Promise<void> {
  const own = session;
  if (own?.attempt !== attempt || own.peripheral === null) return;
  const readable = [...own.offered.values()].find((c) => c.properties.includes('read'));
  if (readable === undefined) await own.peripheral.updateRssiAsync();
  else await readable.readAsync();
  if (session === own) send({ type: 'proof', attempt });
}

/** Ends the session politely as far as the meter lets us; never takes longer than some seconds. */
async function leave(): Promise<void> {
  const own = session;
  session = null;
  searching = null;
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
      await within(characteristic.unsubscribeAsync(), 1000, 'unsubscribing');
    }
  } catch {
    // A meter that no longer answers is left all the same.
  }
  await within(own.peripheral.disconnectAsync(), 1500, 'disconnecting').catch(() => undefined);
}

/** Hangs up without asking the meter for anything, as it may be why the link needs a fresh start. */
async function quit(): Promise<void> {
  const own = session;
  session = null;
  if (own?.connected) {
    await within(own.peripheral!.disconnectAsync(), 500, 'hanging up').catch(() => undefined);
  }
  process.exit(0);
}

async function obey(order: ToRadio): Promise<void> {
  switch (order.type) {
    case 'scan':
      scanWanted = order.on;
      listenAsWanted();
      return;
    case 'connect':
      return connect(order);
    case 'subscribe':
      return subscribe(order);
    case 'prove':
      return prove(order.attempt);
    case 'disconnect':
      await leave();
      listenAsWanted();
      send({ type: 'disconnected', attempt: order.attempt });
      return;
    case 'quit':
      return quit();
  }
}

const unreadableFrames: number[] = [];

/** noble reads frames without checking their length: a short one throws out of its event handlers. */
function isUnreadableFrame(error: unknown): error is Error {
  const code = (error as { code?: unknown } | null)?.code;
  return (
    error instanceof RangeError &&
    (code === 'ERR_OUT_OF_RANGE' || code === 'ERR_BUFFER_OUT_OF_BOUNDS') &&
    /noble/.test(error.stack ?? '')
  );
}

process.on('uncaughtException', (error) => {
  console.error(error);
  const now = Date.now();
  while (unreadableFrames[0] !== undefined && now - unreadableFrames[0] > 10_000) unreadableFrames.shift();
  // Some from the air are shrugged off; a flood of them, or any other fault, means a fresh start.
  if (isUnreadableFrame(error) && unreadableFrames.push(now) <= 20) {
    send({ type: 'malformed', detail: messageOf(error) });
    return;
  }
  process.exit(70);
});

process.on('message', (raw) => {
  const parsed = toRadioSchema.safeParse(raw);
  if (!parsed.success) console.error(`order not understood: ${parsed.error.message}`);
  else void obey(parsed.data);
});
process.on('disconnect', () => void quit());

setInterval(() => send({ type: 'alive' }), aliveEveryMs);
setInterval(sendFound, foundEveryMs);
setInterval(flush, flushEveryMs);
startRadio();
