import { setTimeout as pause } from 'node:timers/promises';
import { plainUuid } from '../../../shared-core/gatt/assigned-numbers.ts';
import { monotonicMs } from '../../monotonic.ts';
import { type Heard, HeardDevices } from '../heard-devices.ts';
import { printable, send } from '../radio/outbox.ts';
import { SensorAdverts } from '../radio/sensor-adverts.ts';
import { within } from '../radio/within.ts';
import type { AdapterReason } from '../radio-messages.ts';
import { packetsIn } from './adverts.ts';
import { adapterInterface, type Bluez, deviceInterface, serviceAnswersWithinMs } from './bluez.ts';
import { isNamed, isNotAllowed, textOfError } from './errors.ts';
import { isOn, numberOf, textOf, textsOf } from './values.ts';

/** Heard so recently that it can be connected to without listening for it first. */
const heardJustNowMs = 3000;
const mostDiscoveryTries = 5;
const betweenDiscoveryTriesMs = 300;

/** As noble writes it, so that a meter is the same one over either: the address, lower case, without colons. */
const idOf = (address: string): string => address.toLowerCase().replaceAll(':', '');

/** The adapter in use, what it hears, and the wait for one meter. */
export class Scan {
  readonly #bluez: Bluez;
  readonly #tellAdapter: (reason: AdapterReason) => void;
  /** Path of the adapter in use; null while none can be used. */
  adapter: string | null = null;
  #isWanted = false;
  /** Done beside anything else. If it fails, nobody is told. */
  #isOverhearWanted = false;
  #searching: { deviceId: string; onHeard: () => void } | null = null;
  /** Path of the device whose adverts are passed on. */
  #followed: string | null = null;
  #isListening = false;
  #changing: Promise<void> = Promise.resolve();
  #meantId: string | null = null;
  readonly #heard = new HeardDevices<Heard & { path: string }>((id) => id === this.#meantId);
  /** Ids of those heard since the app was told last. */
  readonly #news = new Set<string>();
  readonly #sensorAdverts = new SensorAdverts();

  constructor(bluez: Bluez, tellAdapter: (reason: AdapterReason) => void) {
    this.#bluez = bluez;
    this.#tellAdapter = tellAdapter;
    bluez.on('added', (path) => this.#hear(path, { ServiceData: this.#device(path, 'ServiceData') }));
    bluez.on('changed', (path, interfaceName, changed) => {
      const isHeard = 'RSSI' in changed || 'ManufacturerData' in changed || 'ServiceData' in changed;
      if (interfaceName === deviceInterface && isHeard) this.#hear(path, changed);
    });
  }

  /** The first adapter that is on, in the order of the system; the one in use as long as it is. */
  chooseAdapter(): void {
    const all = this.#bluez.having(adapterInterface);
    const able = all.filter(([, { Roles }]) => Roles === undefined || textsOf(Roles).some(isCentral));
    const on = able.filter(([, { Powered }]) => isOn(Powered)).map(([path]) => path);
    if (this.adapter !== null && on.includes(this.adapter)) return;
    this.adapter = on[0] ?? null;
    this.#isListening = false;
    if (this.adapter !== null) this.#tellAdapter('on');
    else if (all.length === 0) this.#tellAdapter('no-adapter');
    else this.#tellAdapter(able.length === 0 ? 'unsupported' : 'off');
    void this.listenAsWanted();
  }

  /** The service is gone, and what it was asked for with it. */
  forgetAdapter(): void {
    this.adapter = null;
    this.#isListening = false;
  }

  setWanted(isWanted: boolean): void {
    this.#isWanted = isWanted;
    void this.listenAsWanted();
  }

  setOverhear(isWanted: boolean): void {
    this.#isOverhearWanted = isWanted;
    void this.listenAsWanted();
  }

  /** From now on the adverts of this device are listened for, until `giveUpSearch`. */
  follow(path: string): void {
    this.#followed = path;
    void this.listenAsWanted();
  }

  isFollowed(path: string): boolean {
    return path === this.#followed;
  }

  giveUpSearch(): void {
    this.#searching = null;
    this.#followed = null;
    void this.listenAsWanted();
  }

  /** Resolves when the service listens as is wanted, or has said why it does not. */
  listenAsWanted(): Promise<void> {
    this.#changing = this.#changing.then(() => this.#listen()).catch((error) => this.#cannotListen(error));
    return this.#changing;
  }

  #mustListen(): boolean {
    return this.#isWanted || this.#searching !== null || this.#followed !== null;
  }

  async #listen(): Promise<void> {
    const { adapter } = this;
    const isWanted = this.#mustListen() || this.#isOverhearWanted;
    if (adapter === null || isWanted === this.#isListening) return;
    if (isWanted) await this.#start(adapter);
    else await this.#bluez.call(adapter, adapterInterface, 'StopDiscovery').catch(() => undefined);
    if (adapter === this.adapter) this.#isListening = isWanted;
  }

  /** Another program's session, or one that is just ending, can be in the way for a moment. */
  async #start(adapter: string): Promise<void> {
    // A filter also means that every signal strength and every advert is passed on, and not only those that differ much.
    const filter = { Transport: ['s', 'le'], DuplicateData: ['b', true] };
    for (let tries = 1; ; tries++) {
      try {
        await this.#bluez.call(adapter, adapterInterface, 'SetDiscoveryFilter', {
          signature: 'a{sv}',
          body: [Object.entries(filter)],
        });
        await this.#bluez.call(adapter, adapterInterface, 'StartDiscovery');
        return;
      } catch (error) {
        if (tries === mostDiscoveryTries || !isNamed(error, 'InProgress', 'Failed', 'Busy')) throw error;
        console.error(`listening, try ${tries}: ${textOfError(error)}`);
        await pause(betweenDiscoveryTriesMs);
      }
    }
  }

  #cannotListen(error: unknown): void {
    console.error(`listening: ${textOfError(error)}`);
    this.#isOverhearWanted = false;
    if (!this.#mustListen()) return;
    // The adapter went off or away meanwhile: that news is on its way.
    if (this.adapter === null || isNamed(error, 'NotReady')) return;
    if (isNotAllowed(error) || isNamed(error, 'NotAuthorized')) this.#tellAdapter('refused');
    else this.#tellAdapter('no-answer');
  }

  #device(path: string, name: string): unknown {
    return this.#bluez.property(path, deviceInterface, name);
  }

  /** Devices of earlier times are in the tree as well: only one with a signal strength is heard now. */
  #hear(path: string, { ServiceData }: Record<string, unknown>): void {
    if (this.adapter === null || !path.startsWith(`${this.adapter}/`)) return;
    const rssiDbm = numberOf(this.#device(path, 'RSSI'));
    const address = textOf(this.#device(path, 'Address'));
    if (rssiDbm === null || address === '') return;
    const id = idOf(address);
    this.#heard.hear(id, { path, rssiDbm, atMs: monotonicMs() });
    if (this.#searching?.deviceId === id) this.#searching.onHeard();
    // One that a search does not find may have another address now.
    if (!this.#isWanted && !this.#isOverhearWanted && this.#searching === null) return;
    this.#news.add(id);
    this.#sensorAdverts.hear(id, packetsIn({ ServiceData }));
  }

  /** The device's own name, as it sends it. */
  nameOf(path: string): string {
    return printable(textOf(this.#device(path, 'Name')));
  }

  /** Null where it was not heard for a while. */
  pathOf(deviceId: string): string | null {
    return this.#heard.get(deviceId)?.path ?? null;
  }

  sendFound(): void {
    const devices = [...this.#news].flatMap((deviceId) => {
      const heard = this.#heard.get(deviceId);
      if (heard === undefined) return [];
      const { path, rssiDbm } = heard;
      // A sensor may name its service by its data alone.
      const ofData = Object.keys(this.#device(path, 'ServiceData') ?? {});
      const uuids = [...textsOf(this.#device(path, 'UUIDs')), ...ofData].map(plainUuid);
      const serviceUuids = [...new Set(uuids.filter((uuid) => uuid !== null))].slice(0, 64);
      const sensorData = this.#sensorAdverts.of(deviceId);
      return [{ deviceId, name: this.nameOf(path), rssiDbm, serviceUuids, sensorData }];
    });
    this.#news.clear();
    this.#sensorAdverts.clear();
    if (devices.length > 0) send({ type: 'found', devices });
  }

  /**
   * Listens until this meter is heard, unless it was heard just now or is connected still.
   * @returns its path
   */
  async search(deviceId: string, searchMs: number): Promise<string> {
    this.#meantId = deviceId;
    const connected = this.#bluez
      .having(deviceInterface)
      .find(([, { Address, Connected }]) => isOn(Connected) && idOf(textOf(Address)) === deviceId);
    if (connected !== undefined) return connected[0];
    const known = this.#heard.get(deviceId);
    if (known !== undefined && monotonicMs() - known.atMs < heardJustNowMs) return known.path;
    let own: { deviceId: string; onHeard: () => void } | null = null;
    try {
      const found = new Promise<void>((resolve) => {
        own = { deviceId, onHeard: resolve };
      });
      this.#searching = own;
      void this.listenAsWanted();
      await within(found, searchMs, 'search');
      return this.#heard.get(deviceId)!.path;
    } finally {
      if (this.#searching === own) this.#searching = null;
    }
  }

  /** Many adapters cannot listen and connect at once. */
  async stop(): Promise<void> {
    this.#isWanted = false;
    this.#isOverhearWanted = false;
    this.#searching = null;
    await within(this.listenAsWanted(), serviceAnswersWithinMs, 'stop-listening').catch(() => undefined);
  }
}

const isCentral = (role: string): boolean => role === 'central' || role === 'central-peripheral';
