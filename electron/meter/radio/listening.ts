/** The adapter and what it hears: whether it can be used, which meters advertise, and the wait for one of them. */
import { readdirSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Peripheral } from '@abandonware/noble';
import type { RadioWay } from '../../../shared-core/contract/radio-way.ts';
import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import { monotonicMs } from '../../monotonic.ts';
import { reasonOfError, reasonOfState } from '../adapter-reason.ts';
import { type Heard, HeardDevices } from '../heard-devices.ts';
import type { AdapterReason, FromRadio } from '../radio-messages.ts';
import { AdvertReader } from './adverts.ts';
import { LinkEar, type NobleLinks } from './inside-noble.ts';
import { type NobleMemory, trimNoble } from './noble-memory.ts';
import { messageOf, printable, send } from './outbox.ts';
import { SensorAdverts } from './sensor-adverts.ts';
import { within } from './within.ts';

type Noble = typeof import('@abandonware/noble');
type FoundDevice = Extract<FromRadio, { type: 'found' }>['devices'][number];

const adapterAnswersWithinMs = 5000;
/** Heard so recently that it can be connected to without listening for it first. */
const heardJustNowMs = 3000;
/** Sensors that are visited are heard in one listening, and visited one after the other. */
const heardForVisitMs = 60_000;
/** HCI's value for a signal strength that is not available (Core Specification, Vol 4 Part E 7.7.65.2). */
const rssiNotAvailable = 127;

let noble: Noble | null = null;
let way: RadioWay | null = null;
let adapterOn = false;
let scanWanted = false;
/** Done beside anything else. If it fails, nobody is told. */
let overhearWanted = false;
let searching: { deviceId: string; onHeard: () => void } | null = null;
/** The meter that is listened to without connecting. */
let followed: { deviceId: string; onHeard: (peripheral: Peripheral) => void } | null = null;
let listening = false;
/** A device is being connected to: many adapters cannot listen meanwhile. */
let paused = false;
let starts = 0;
/** What the adapter was asked for and has not done yet. noble says that it stopped while it starts, too. */
let asked: 'start' | 'stop' | null = null;
/** The meter that was searched for last: it may be connected. */
let meantId: string | null = null;
const isMeant = (id: string): boolean => id === meantId;
const heard = new HeardDevices<Heard & { peripheral: Peripheral }>(isMeant);
/** Ids of those heard since the app was told last. */
const news = new Set<string>();
const sensorAdverts = new SensorAdverts();
const adverts = new AdvertReader();

function sendAdapter(reason: AdapterReason): void {
  adapterOn = reason === 'on';
  send({ type: 'adapter', reason, way });
}

function sendNoAnswer(to: 'start' | 'scan'): void {
  console.error(`adapter: no answer to ${to}`);
  sendAdapter('no-answer');
}

/** How many adapters Linux lists; null elsewhere. */
function adaptersPresent(): number | null {
  if (process.platform !== 'linux') return null;
  try {
    return readdirSync('/sys/class/bluetooth').length;
  } catch {
    return 0;
  }
}

/** Loads noble, which looks for the adapter. From then on the app gets every change of the adapter. */
export function startRadio(ownWay: RadioWay): void {
  way = ownWay;
  sendAdapter('starting');
  try {
    noble = createRequire(import.meta.url)('@abandonware/noble') as Noble;
  } catch (error) {
    console.error(`noble does not load: ${messageOf(error)}`);
    sendAdapter(reasonOfError(messageOf(error)));
    return;
  }
  const silence = setTimeout(() => sendNoAnswer('start'), adapterAnswersWithinMs);
  noble.on('stateChange', (state) => {
    clearTimeout(silence);
    listening = false;
    asked = null;
    sendAdapter(reasonOfState(state, adaptersPresent()));
    listenAsWanted();
  });
  noble.on('warning', (warning: string) => {
    console.error(`noble: ${warning}`);
    if (!adapterOn && /initialization/i.test(warning)) {
      clearTimeout(silence);
      sendAdapter(reasonOfError(warning));
    }
  });
  noble.on('discover', onHeard);
  noble.on('scanStart', () => {
    listening = true;
    if (asked === 'start') doneAsAsked();
  });
  noble.on('scanStop', () => {
    listening = false;
    if (asked === 'stop') doneAsAsked();
  });
}

/** Whether the app gets every meter that is heard. */
export function setScan(on: boolean): void {
  scanWanted = on;
}

export function setOverhear(on: boolean): void {
  overhearWanted = on;
  listenAsWanted();
}

export function giveUpSearch(): void {
  searching = null;
  followed = null;
}

/** Hands out this meter each time that it is heard, until the next search or `giveUpSearch`. */
export function follow(deviceId: string, onHeard: (peripheral: Peripheral) => void): void {
  followed = { deviceId, onHeard };
  listenAsWanted();
}

const mustListen = () => !paused && (scanWanted || searching !== null || followed !== null);
const wantsToListen = () => mustListen() || (!paused && overhearWanted);
/** Whether a meter is listened to without connecting: it is not heard while listening is paused. */
export const isFollowing = (): boolean => followed !== null;

/** Another order may have come meanwhile. */
function doneAsAsked(): void {
  asked = null;
  listenAsWanted();
}

export function listenAsWanted(): void {
  if (noble === null || !adapterOn) return;
  if (wantsToListen() === listening) return;
  if (listening) {
    asked = 'stop';
    noble.stopScanning();
    return;
  }
  asked = 'start';
  const start = ++starts;
  noble.startScanning([], true);
  // noble can go on saying "powered on" after the adapter went: only an answer counts.
  setTimeout(() => {
    if (adapterOn && start === starts && mustListen() && !listening) sendNoAnswer('scan');
  }, adapterAnswersWithinMs);
}

function onHeard(peripheral: Peripheral): void {
  const rssiDbm = peripheral.rssi === rssiNotAvailable ? null : peripheral.rssi;
  heard.hear(peripheral.id, { peripheral, rssiDbm, atMs: monotonicMs() });
  if (searching?.deviceId === peripheral.id) searching.onHeard();
  if (followed?.deviceId === peripheral.id) followed.onHeard(peripheral);
  // One that a search does not find may have another address now.
  if (!scanWanted && !overhearWanted && searching === null) return;
  news.add(peripheral.id);
  sensorAdverts.hear(peripheral.id, adverts.read(peripheral));
}

function asFound({ peripheral, rssiDbm }: Heard & { peripheral: Peripheral }): FoundDevice {
  const { serviceUuids = [], serviceData = [] } = peripheral.advertisement;
  // A sensor may name its service by its data alone.
  const uuids = [...new Set([...serviceUuids, ...serviceData.map(({ uuid }) => uuid)])].map(plainUuid);
  return {
    deviceId: peripheral.id,
    name: printable(peripheral.advertisement.localName ?? ''),
    rssiDbm,
    serviceUuids: uuids.filter((uuid) => uuid !== null).slice(0, 64),
    sensorData: sensorAdverts.of(peripheral.id),
  };
}

/** Sends the meters heard since the last time, and forgets those that are too many. */
export function sendFound(): void {
  const devices = heard.all().filter(({ peripheral }) => news.has(peripheral.id));
  news.clear();
  if (noble !== null) trimNoble(noble as NobleMemory, (id) => heard.has(id) || isMeant(id));
  if (devices.length > 0) send({ type: 'found', devices: devices.map(asFound) });
  sensorAdverts.clear();
}

/** A device that can be connected to without listening for it first; null where it was not heard for a while. */
export function heardJustNow(deviceId: string): Peripheral | null {
  const known = heard.get(deviceId);
  return known !== undefined && monotonicMs() - known.atMs < heardForVisitMs ? known.peripheral : null;
}

/** Listens until this meter is heard, unless it was heard just now. */
export async function search(deviceId: string, searchMs: number): Promise<Peripheral> {
  meantId = deviceId;
  followed = null;
  const known = heard.get(deviceId);
  if (known !== undefined && monotonicMs() - known.atMs < heardJustNowMs) return known.peripheral;
  let own: typeof searching = null;
  try {
    const found = new Promise<void>((resolve) => {
      own = { deviceId, onHeard: resolve };
    });
    searching = own;
    listenAsWanted();
    await within(found, searchMs, 'search');
    return heard.get(deviceId)!.peripheral;
  } finally {
    if (searching === own) searching = null;
  }
}

/** Hears what noble does not pass on of a link to this meter that is up. */
export const earOf = (peripheral: Peripheral): LinkEar => new LinkEar(noble as NobleLinks, peripheral);

/** Stops listening until `resumeListening`, for whatever it was. Sensors are no longer listened for after that. */
export async function pauseListening(): Promise<void> {
  paused = true;
  await stopListening();
}

export function resumeListening(): void {
  paused = false;
  listenAsWanted();
}

/** Many adapters cannot listen and connect at once. */
export async function stopListening(): Promise<void> {
  overhearWanted = false;
  if (noble === null || !listening) return;
  asked = 'stop';
  await within(noble.stopScanningAsync(), 1000, 'stop-listening').catch(() => undefined);
  listening = false;
}
