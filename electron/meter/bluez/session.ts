/** The one meter that the app asked for, over BlueZ: connecting, its values, leaving it. */
import { setTimeout as pause } from 'node:timers/promises';
import { TimeoutError } from 'dbus-native';
import {
  batteryLevelUuid,
  plainUuid,
  presentationFormatUuid,
  serviceChangedUuid,
  userDescriptionUuid,
  validRangeUuid,
} from '../../../shared-core/gatt/assigned-numbers.ts';
import { keyOf, mostCharacteristics } from '../radio/discovery.ts';
import { beginQueue, endQueue, enqueue } from '../radio/notification-queue.ts';
import { send, sendable } from '../radio/outbox.ts';
import { type CharacteristicRef, watchAsOrdered } from '../radio/watching.ts';
import { readAnswersWithinMs, within } from '../radio/within.ts';
import { type FromRadio, longestValueBytes, type ToRadio } from '../radio-messages.ts';
import { packetsIn } from './adverts.ts';
import {
  adapterInterface,
  type Bluez,
  batteryInterface,
  characteristicInterface,
  descriptorInterface,
  deviceInterface,
  serviceInterface,
} from './bluez.ts';
import { asksForPairing, isNamed, textOfError } from './errors.ts';
import type { Scan } from './scan.ts';
import { bytesOf, isOn, numberOf, textOf, textsOf } from './values.ts';

type Order<Type extends ToRadio['type']> = Extract<ToRadio, { type: Type }>;
type Step = Extract<FromRadio, { type: 'failed' }>['step'];
type Discovered = Extract<FromRadio, { type: 'discovered' }>['characteristics'];

const mostConnectTries = 3;
const betweenConnectTriesMs = 250;
/** BlueZ itself gives up after some 40 s; the app's side gives up before. */
const connectWithinMs = 60_000;
/** One that advertises its values may let nobody connect, which BlueZ does not tell. */
const advertiserConnectsWithinMs = 6000;
/** A person may have to confirm it on the meter. */
const pairWithinMs = 30_000;
const goodbyeWithinMs = 1500;
/** BlueZ lets profiles close down for 2 s before it ends a connection. */
const leftWithinMs = 4000;

interface Offered extends CharacteristicRef {
  path: string;
  flags: string[];
}

/** One attempt, from the search until the meter is gone. */
interface Session {
  attempt: number;
  /** Path of the device; null until it is heard. */
  path: string | null;
  /** It is ours to hang up on: one that is only listened to may be connected to another program. */
  connecting: boolean;
  connected: boolean;
  /** By `keyOf`. */
  offered: Map<string, Offered>;
  /** By path: those that the meter sends by itself, and who takes their values. */
  watched: Map<string, (bytes: Buffer) => void>;
  /** The newest order to watch: an earlier one reads no more. */
  watching: Order<'watch'> | null;
  /** Values that came in while one is read, by path. */
  duringRead: Map<string, Buffer[]>;
  /** It asked for pairing, and that came to nothing. */
  pairingFailed: boolean;
}

export class Sessions {
  readonly #bluez: Bluez;
  readonly #scan: Scan;
  #session: Session | null = null;
  /** Path of the device that is paired right now. */
  pairing: string | null = null;

  constructor(bluez: Bluez, scan: Scan) {
    this.#bluez = bluez;
    this.#scan = scan;
    bluez.on('changed', (path, interfaceName, changed) => this.#changed(path, interfaceName, changed));
    bluez.on('removed', (path) => {
      const own = this.#session;
      if (own === null || own.path === null) return;
      const isItself = own.path === path || own.path.startsWith(`${path}/`);
      // A meter that lists other values than before is connected to and asked again.
      if (isItself || own.watched.has(path)) this.#gone(own);
    });
  }

  async connect(order: Order<'connect'>): Promise<void> {
    const own = await this.#begin(order.attempt);
    let step: Step = 'search';
    try {
      const path = await this.#scan.search(order.deviceId, order.searchMs);
      if (this.#session !== own) return;
      step = 'connect';
      await this.#scan.stop();
      if (this.#session !== own) return;
      own.path = path;
      own.connecting = true;
      await this.#connectTo(own, path);
      if (this.#session !== own) return;
      own.connected = true;
      send({ type: 'connected', attempt: own.attempt, name: this.#scan.nameOf(path) });
      step = 'discover';
      await this.#resolved(own, path);
      const characteristics = await this.#discover(own, path);
      if (this.#session !== own) return;
      send({ type: 'discovered', attempt: own.attempt, characteristics });
      await this.#watchBattery(own, path).catch((error) => console.error(`battery: ${textOfError(error)}`));
    } catch (error) {
      await this.#failed(own, step === 'connect' && this.#advertises(own) ? 'listen-only' : step, error);
    }
  }

  #advertises({ path }: Session): boolean {
    return path !== null && packetsIn(this.#advertised(path)).length > 0;
  }

  #advertised(path: string): Record<string, unknown> {
    return {
      ManufacturerData: this.#bluez.property(path, deviceInterface, 'ManufacturerData'),
      ServiceData: this.#bluez.property(path, deviceInterface, 'ServiceData'),
    };
  }

  /** Passes on what the meter advertises, without connecting. */
  async listen(order: Order<'listen'>): Promise<void> {
    const own = await this.#begin(order.attempt);
    try {
      const path = await this.#scan.search(order.deviceId, order.searchMs);
      if (this.#session !== own) return;
      own.path = path;
      send({ type: 'heard', attempt: own.attempt, name: this.#scan.nameOf(path) });
      this.#scan.follow(path);
      this.#takeAdverts(own, this.#advertised(path));
    } catch (error) {
      await this.#failed(own, 'search', error);
    }
  }

  async #begin(attempt: number): Promise<Session> {
    await this.leave();
    this.#scan.setWanted(false);
    beginQueue(attempt);
    const own: Session = {
      attempt,
      path: null,
      connecting: false,
      connected: false,
      offered: new Map(),
      watched: new Map(),
      watching: null,
      duringRead: new Map(),
      pairingFailed: false,
    };
    this.#session = own;
    return own;
  }

  async #failed(own: Session, step: Step, error: unknown): Promise<void> {
    if (this.#session !== own) return;
    console.error(`${step}: ${textOfError(error)}`);
    if (own.connected) await this.#forget(own);
    // A connection that is still being made is taken back.
    else if (own.path !== null) await this.#hangUpOn(own.path, goodbyeWithinMs);
    send({ type: 'failed', attempt: own.attempt, step: own.pairingFailed ? 'pairing' : step });
  }

  /** BlueZ remembers what a meter offered. What may be out of date must not be believed the next time. */
  async #forget({ path, pairingFailed }: Session): Promise<void> {
    const isPaired = path !== null && isOn(this.#bluez.property(path, deviceInterface, 'Paired'));
    if (path === null || isPaired || pairingFailed || this.#scan.adapter === null) return;
    await this.#bluez
      .call(this.#scan.adapter, adapterInterface, 'RemoveDevice', { signature: 'o', body: [path] })
      .catch((error) => console.error(`forgetting: ${textOfError(error)}`));
  }

  // --- connecting

  /** A first try that fails at once is common on the air and means little. */
  async #connectTo(own: Session, path: string): Promise<void> {
    // It was left in a hurry, and a fresh start begins with a fresh connection.
    if (this.#isConnected(path)) await this.#hangUpOn(path, leftWithinMs);
    const limitMs = this.#advertises(own) ? advertiserConnectsWithinMs : connectWithinMs;
    for (let tries = 1; this.#session === own; tries++) {
      try {
        await this.#onDevice(path, 'Connect', limitMs);
        return;
      } catch (error) {
        if (isNamed(error, 'AlreadyConnected')) return;
        console.error(`connecting, try ${tries}: ${textOfError(error)}`);
        if (tries === mostConnectTries || error instanceof TimeoutError) throw error;
        await pause(betweenConnectTriesMs);
      }
    }
  }

  #isConnected(path: string): boolean {
    return isOn(this.#bluez.property(path, deviceInterface, 'Connected'));
  }

  async #onDevice(path: string, member: 'Connect' | 'Disconnect' | 'Pair', timeoutMs: number): Promise<void> {
    await this.#bluez.call(path, deviceInterface, member, { timeoutMs });
  }

  async #hangUpOn(path: string, limitMs: number): Promise<void> {
    await this.#onDevice(path, 'Disconnect', limitMs).catch((error) => {
      if (!isNamed(error, 'NotConnected')) console.error(`disconnecting: ${textOfError(error)}`);
    });
  }

  /** Waits until BlueZ has asked the meter for its services; the app's side limits how long. */
  async #resolved(own: Session, path: string): Promise<void> {
    const isResolved = () => isOn(this.#bluez.property(path, deviceInterface, 'ServicesResolved'));
    await new Promise<void>((resolve) => {
      const check = () => {
        if (this.#session === own && !isResolved()) return;
        this.#bluez.off('changed', check).off('removed', check).off('stopped', check);
        resolve();
      };
      this.#bluez.on('changed', check).on('removed', check).on('stopped', check);
      check();
    });
  }

  async #discover(own: Session, path: string): Promise<Discovered> {
    const list: Discovered = [];
    for (const [characteristicPath, { UUID, Service, Flags }] of this.#bluez.having(
      characteristicInterface,
    )) {
      if (!characteristicPath.startsWith(`${path}/`) || list.length === mostCharacteristics) continue;
      const characteristicUuid = plainUuid(textOf(UUID));
      const serviceUuid = plainUuid(textOf(this.#bluez.property(textOf(Service), serviceInterface, 'UUID')));
      if (characteristicUuid === null || serviceUuid === null) continue;
      const flags = textsOf(Flags);
      own.offered.set(keyOf(serviceUuid, characteristicUuid), {
        serviceUuid,
        characteristicUuid,
        path: characteristicPath,
        flags,
      });
      const canNotify =
        flags.some((flag) => flag === 'notify' || flag === 'indicate') &&
        characteristicUuid !== serviceChangedUuid;
      const canRead = flags.includes('read');
      const described = canNotify || canRead ? await this.#descriptors(characteristicPath) : new Map();
      if (this.#session !== own) return list;
      list.push({
        serviceUuid,
        characteristicUuid,
        canNotify,
        canRead,
        canWrite: flags.some((flag) => flag === 'write' || flag === 'write-without-response'),
        presentationFormat: sendable(described.get(presentationFormatUuid)),
        userDescription:
          described.get(userDescriptionUuid)?.toString('utf8').slice(0, longestValueBytes) ?? null,
        validRange: sendable(described.get(validRangeUuid)),
      });
    }
    return list;
  }

  async #descriptors(characteristicPath: string): Promise<Map<string, Buffer>> {
    const values = new Map<string, Buffer>();
    const telling = [presentationFormatUuid, userDescriptionUuid, validRangeUuid];
    for (const [path, { UUID }] of this.#bluez.having(descriptorInterface)) {
      const uuid = plainUuid(textOf(UUID));
      if (!path.startsWith(`${characteristicPath}/`) || uuid === null || !telling.includes(uuid)) continue;
      const value = await this.#read(path, descriptorInterface);
      if (value.length > 0) values.set(uuid, value);
    }
    return values;
  }

  // --- values

  async watch(order: Order<'watch'>): Promise<void> {
    const own = this.#session;
    if (own === null || own.attempt !== order.attempt) return;
    own.watching = order;
    const isWanted = () => this.#session === own && own.watching === order;
    const failure = await watchAsOrdered(order, {
      isWanted,
      unsubscribeAllBut: (kept) => this.#unsubscribeAllBut(own, kept),
      subscribe: (ref) => this.#subscribe(own, ref),
      isSubscribed: () => own.watched.size > 0,
      readerOf: (ref) => this.#reader(own, ref, isWanted),
      writeStart: (start) => this.#writeStart(own, start),
      textOf: textOfError,
    });
    if (failure !== null) await this.#failed(own, failure.step, failure.error);
  }

  #offeredAs(own: Session, { serviceUuid, characteristicUuid }: CharacteristicRef): Offered {
    const key = keyOf(serviceUuid, characteristicUuid);
    const offered = own.offered.get(key);
    if (offered === undefined) throw new Error(`the meter has no ${key}`);
    return offered;
  }

  async #unsubscribeAllBut(own: Session, kept: readonly CharacteristicRef[]): Promise<void> {
    const paths = kept.map((each) => this.#offeredAs(own, each).path);
    for (const offered of own.offered.values()) {
      if (paths.includes(offered.path) || offered.characteristicUuid === batteryLevelUuid) continue;
      if (own.watched.delete(offered.path)) await this.#stopNotify(offered.path);
    }
  }

  async #subscribe(own: Session, ref: CharacteristicRef): Promise<void> {
    const { path, serviceUuid, characteristicUuid } = this.#offeredAs(own, ref);
    if (own.watched.has(path)) return;
    const from = { kind: 'characteristic', serviceUuid, characteristicUuid } as const;
    await this.#startNotify(own, path, (bytes) => enqueue(from, bytes));
  }

  /** BlueZ goes on where a dropped connection ended, and then says no to one more start, so it is stopped first. */
  async #startNotify(own: Session, path: string, take: (bytes: Buffer) => void): Promise<void> {
    own.watched.set(path, take);
    try {
      await this.#stopNotify(path);
      await this.#paired(own, () => this.#onCharacteristic(path, 'StartNotify'));
    } catch (error) {
      own.watched.delete(path);
      throw error;
    }
  }

  #reader(own: Session, ref: CharacteristicRef, isWanted: () => boolean): () => Promise<void> {
    const { path, serviceUuid, characteristicUuid } = this.#offeredAs(own, ref);
    const from = { kind: 'characteristic', serviceUuid, characteristicUuid } as const;
    return async () => {
      try {
        const bytes = await this.#paired(own, () => this.#read(path, characteristicInterface));
        if (isWanted()) enqueue(from, bytes);
      } catch (error) {
        if (isWanted()) console.error(`read: ${textOfError(error)}`);
      }
    };
  }

  async #writeStart(own: Session, start: NonNullable<Order<'watch'>['start']>): Promise<void> {
    const { path } = this.#offeredAs(own, start);
    const options = [['type', ['s', start.withResponse ? 'request' : 'command']]];
    await this.#paired(own, () =>
      this.#bluez.call(path, characteristicInterface, 'WriteValue', {
        signature: 'aya{sv}',
        body: [Buffer.from(start.bytes), options],
        timeoutMs: readAnswersWithinMs,
      }),
    );
  }

  async #onCharacteristic(path: string, member: 'StartNotify' | 'StopNotify'): Promise<void> {
    await this.#bluez.call(path, characteristicInterface, member, { timeoutMs: readAnswersWithinMs });
  }

  /** Where nothing was started, there is nothing to stop. */
  async #stopNotify(path: string): Promise<void> {
    await this.#onCharacteristic(path, 'StopNotify').catch(() => undefined);
  }

  /** Asks the meter; where it answers paired computers only, it is paired and asked once more. */
  async #paired<T>(own: Session, ask: () => Promise<T>): Promise<T> {
    try {
      return await ask();
    } catch (error) {
      if (!asksForPairing(error) || own.path === null || own.pairingFailed) throw error;
      try {
        this.pairing = own.path;
        await this.#onDevice(own.path, 'Pair', pairWithinMs);
      } catch (pairingError) {
        if (!isNamed(pairingError, 'AlreadyExists')) {
          own.pairingFailed = true;
          throw pairingError;
        }
      } finally {
        this.pairing = null;
      }
      try {
        return await ask();
      } catch (still) {
        own.pairingFailed = asksForPairing(still);
        throw still;
      }
    }
  }

  /**
   * BlueZ shows what a read brought as a changed value as well, just before its answer, as if the meter had sent it. Of
   * what comes in meanwhile from one that is watched, the last that equals the answer is that one.
   */
  async #read(path: string, interfaceName: string): Promise<Buffer> {
    const own = this.#session;
    const meanwhile: Buffer[] = [];
    own?.duringRead.set(path, meanwhile);
    let answer: Buffer | null = null;
    try {
      answer = bytesOf(
        await this.#bluez.call(path, interfaceName, 'ReadValue', {
          signature: 'a{sv}',
          body: [[]],
          timeoutMs: readAnswersWithinMs,
        }),
      );
    } finally {
      own?.duringRead.delete(path);
      const echo = answer === null ? -1 : meanwhile.findLastIndex((bytes) => bytes.equals(answer!));
      const take = own?.watched.get(path);
      for (const [i, bytes] of meanwhile.entries()) if (i !== echo) take?.(bytes);
    }
    if (answer === null) throw new Error(`no bytes in the answer of ${path}`);
    return answer;
  }

  /** BlueZ keeps the battery service to itself and tells its level, unless it was set up not to. */
  async #watchBattery(own: Session, path: string): Promise<void> {
    this.#sendBattery(own, this.#bluez.property(path, batteryInterface, 'Percentage'));
    const offered = [...own.offered.values()].find((each) => each.characteristicUuid === batteryLevelUuid);
    if (offered === undefined) return;
    const take = (bytes: Buffer) => this.#sendBattery(own, bytes[0]);
    if (offered.flags.includes('read')) take(await this.#read(offered.path, characteristicInterface));
    if (offered.flags.includes('notify')) await this.#startNotify(own, offered.path, take);
  }

  #sendBattery(own: Session, level: unknown): void {
    const pct = numberOf(level);
    if (this.#session !== own || pct === null || pct < 0 || pct > 100) return;
    send({ type: 'battery', attempt: own.attempt, pct });
  }

  #changed(path: string, interfaceName: string, changed: Record<string, unknown>): void {
    const own = this.#session;
    if (own === null) return;
    if (interfaceName === characteristicInterface && 'Value' in changed) {
      const take = own.watched.get(path);
      const bytes = bytesOf(changed.Value);
      if (take === undefined || bytes === null) return;
      const meanwhile = own.duringRead.get(path);
      if (meanwhile === undefined) take(bytes);
      else meanwhile.push(bytes);
    } else if (path === own.path && interfaceName === deviceInterface) {
      if (own.connected && changed.Connected === false) this.#gone(own);
      else if (this.#scan.isFollowed(path)) this.#takeAdverts(own, changed);
    } else if (path === own.path && interfaceName === batteryInterface) {
      this.#sendBattery(own, changed.Percentage);
    }
  }

  #takeAdverts(own: Session, changed: Record<string, unknown>): void {
    if (this.#session !== own) return;
    for (const { from, bytes } of packetsIn(changed)) enqueue(from, bytes);
  }

  /** Any answer will do: a readable value if there is one, best of one that is not watched, else BlueZ's own word. */
  async prove(attempt: number): Promise<void> {
    const own = this.#session;
    if (own?.attempt !== attempt || own.path === null) return;
    const readable = [...own.offered.values()].filter(({ flags }) => flags.includes('read'));
    const asked = readable.find(({ path }) => !own.watched.has(path)) ?? readable[0];
    try {
      if (asked !== undefined) await this.#read(asked.path, characteristicInterface);
      else if (!this.#isConnected(own.path)) return;
    } catch (error) {
      console.error(`proof: ${textOfError(error)}`);
      return;
    }
    if (this.#session === own) send({ type: 'proof', attempt });
  }

  // --- leaving

  #gone(own: Session): void {
    if (this.#session !== own) return;
    this.#session = null;
    if (!own.connected) {
      // Found and lost again before it was connected, or while it was listened to.
      this.#scan.giveUpSearch();
      send({ type: 'failed', attempt: own.attempt, step: own.path === null ? 'search' : 'connect' });
      return;
    }
    endQueue();
    send({ type: 'disconnected', attempt: own.attempt });
    // Where only what it offers has changed, it is connected still.
    if (own.path !== null && this.#isConnected(own.path)) void this.#hangUpOn(own.path, goodbyeWithinMs);
  }

  /** The service or the adapter is gone, and with it every connection. */
  lose(): void {
    if (this.#session !== null) this.#gone(this.#session);
  }

  /** Ends the session politely as far as the meter lets us; never takes longer than some seconds. */
  async leave(): Promise<void> {
    const own = this.#session;
    this.#session = null;
    this.#scan.giveUpSearch();
    endQueue();
    if (own === null || own.path === null || !own.connecting || !this.#bluez.isRunning) return;
    if (own.connected) {
      const stopped = [...own.watched.keys()].map((path) => this.#stopNotify(path));
      await within(Promise.all(stopped), goodbyeWithinMs, 'unsubscribe').catch(() => undefined);
    }
    // This also takes back a connection that is being made.
    await this.#hangUpOn(own.path, goodbyeWithinMs);
  }

  /** Hangs up without asking the meter for anything, as it may be why the link needs a fresh start. */
  async hangUp(): Promise<void> {
    const own = this.#session;
    this.#session = null;
    if (own?.path != null && own.connecting && this.#bluez.isRunning) {
      await within(this.#hangUpOn(own.path, goodbyeWithinMs), 500, 'hang-up').catch(() => undefined);
    }
  }
}
