import { EventEmitter } from 'node:events';
import { environmentUuid, humidityUuid, temperatureUuid } from '../../shared-core/gatt/assigned-numbers.ts';
import {
  humidityOf,
  openSensorUuid,
  type SensedAir,
  sensedInAdvert,
  temperatureOf,
} from '../../shared-core/gatt/environment.ts';
import { adapterState } from './adapter-reason.ts';
import { type BluetoothTiming, usualTiming } from './bluetooth-timing.ts';
import type { AdapterState } from './meter-link.ts';
import { RadioChild } from './radio-child.ts';
import type { FromRadio } from './radio-messages.ts';
import type { RadioRuntime } from './radio-port.ts';

/** A sensor in reach, by its adverts. */
export interface HeardSensor {
  deviceId: string;
  name: string;
  rssiDbm: number | null;
}

export interface SensorRadioEvents {
  heard: [HeardSensor];
  /** Whether there is a radio to talk through, and if not, what a person can do about it. */
  adapter: [AdapterState];
}

/** Reads thermometers and hygrometers, one at a time, each for some seconds. Nothing here throws for what happens on the air. */
export interface SensorRadio extends EventEmitter<SensorRadioEvents> {
  /** Listens for sensors until told to stop; not while one is read. */
  scan(on: boolean): void;
  /** Connects, reads and disconnects; or takes its next advert. Null where it does not say anything in time. */
  read(deviceId: string): Promise<SensedAir | null>;
  /** Lets go of the adapter, as where a meter is to have it: what is being read is given up. Resolves once it is free. */
  release(): Promise<void>;
}

/** What says that a device measures air. */
const ofSensors: readonly string[] = [environmentUuid, openSensorUuid];
/** @param serviceUuids  those that it advertises */
export const isSensor = (serviceUuids: readonly string[]): boolean =>
  serviceUuids.some((uuid) => ofSensors.includes(uuid));
/** A visit takes no longer, ms: a sensor may advertise each ten seconds only. */
const VISIT_MS = 25_000;
const READ_EVERY_MS = 500;
/** Once it said one of the two, the other follows within this, if it has it. */
const OTHER_MS = 2000;

/** A visit under way. */
interface Visit {
  attempt: number;
  deviceId: string;
  sensed: SensedAir;
  done: (sensed: SensedAir | null) => void;
  timer: NodeJS.Timeout;
}

/** Through the radio process, which it has only while no meter link does. */
export class BluetoothSensorRadio extends EventEmitter<SensorRadioEvents> implements SensorRadio {
  readonly #radio: RadioChild;
  readonly #timing: BluetoothTiming;
  #scanWanted = false;
  #visit: Visit | null = null;
  #attempts = 0;

  constructor(options: RadioRuntime & { timing?: Partial<BluetoothTiming> }) {
    super();
    this.#timing = { ...usualTiming, ...options.timing };
    this.#radio = new RadioChild(options, this.#timing);
    this.#radio.on('message', (heard) => this.#hear(heard));
    this.#radio.on('gone', () => this.#finish(null));
  }

  scan(on: boolean): void {
    this.#scanWanted = on;
    if (on) this.#scanOnceFree();
    else this.#restIfIdle();
  }

  /** One that is read comes first: its connection would end the scan. */
  #scanOnceFree(): void {
    void this.#whenOn(() => {
      if (this.#visit === null) this.#radio.order({ type: 'scan', on: this.#scanWanted });
    });
  }

  read(deviceId: string): Promise<SensedAir | null> {
    this.#finish(null);
    return new Promise((done) => {
      const visit: Visit = {
        attempt: ++this.#attempts,
        deviceId,
        sensed: { tempC: null, rh: null },
        done,
        timer: setTimeout(() => this.#finish(this.#visit === visit ? visit.sensed : null), VISIT_MS),
      };
      this.#visit = visit;
      void this.#whenOn(() => {
        if (this.#visit !== visit) return;
        const { attempt } = visit;
        this.#radio.order({ type: 'connect', attempt, deviceId, searchMs: this.#timing.searchMs });
      });
    });
  }

  async release(): Promise<void> {
    this.#scanWanted = false;
    this.#finish(null);
    this.#radio.end();
    await this.#radio.free;
  }

  /** The process may still be ending, and its adapter starting. */
  async #whenOn(then: () => void): Promise<void> {
    await this.#radio.free;
    // Released meanwhile: the adapter is a meter's.
    if (this.#visit === null && !this.#scanWanted) return;
    if (!this.#radio.running) this.#radio.start();
    then();
  }

  /** The adapter is free for others while there is nothing to do. */
  #restIfIdle(): void {
    if (this.#visit === null && !this.#scanWanted) this.#radio.end();
  }

  #finish(sensed: SensedAir | null): void {
    const visit = this.#visit;
    if (visit === null) return;
    this.#visit = null;
    clearTimeout(visit.timer);
    if (this.#radio.running) this.#radio.order({ type: 'disconnect', attempt: visit.attempt });
    visit.done(sensed?.tempC == null && sensed?.rh == null ? null : sensed);
    if (this.#scanWanted) this.#scanOnceFree();
    else this.#restIfIdle();
  }

  #hear(heard: FromRadio): void {
    if (heard.type === 'found') {
      for (const { deviceId, name, rssiDbm, serviceUuids } of heard.devices)
        if (isSensor(serviceUuids)) this.emit('heard', { deviceId, name, rssiDbm });
      return;
    }
    if (heard.type === 'adapter') {
      const adapter = adapterState(heard.reason, heard.way);
      this.emit('adapter', adapter);
      if (!adapter.usable && heard.reason !== 'starting') this.#finish(null);
      return;
    }
    const visit = this.#visit;
    if (visit === null || !('attempt' in heard) || heard.attempt !== visit.attempt) return;
    const { attempt, deviceId } = visit;
    switch (heard.type) {
      case 'discovered': {
        const read = heard.characteristics
          .filter(({ characteristicUuid, canRead }) => canRead && isOfAir(characteristicUuid))
          .map(({ serviceUuid, characteristicUuid }) => ({
            serviceUuid,
            characteristicUuid,
            everyMs: READ_EVERY_MS,
          }));
        if (read.length === 0) this.#finish(null);
        else this.#radio.order({ type: 'watch', attempt, sent: [], read, start: null });
        return;
      }
      case 'notifications':
        for (const { from, bytes } of heard.items) if (bytes !== null) this.#take(visit, from, bytes);
        return;
      case 'failed':
        if (heard.step === 'listen-only')
          this.#radio.order({ type: 'listen', attempt, deviceId, searchMs: this.#timing.searchMs });
        else this.#finish(null);
        return;
      case 'disconnected':
        this.#finish(visit.sensed);
        return;
    }
  }

  #take(
    visit: Visit,
    from: Extract<FromRadio, { type: 'notifications' }>['items'][number]['from'],
    bytes: Uint8Array,
  ): void {
    const before = visit.sensed;
    if (from.kind === 'service-data' && from.serviceUuid === openSensorUuid) {
      const { tempC = null, rh = null } = sensedInAdvert(bytes) ?? {};
      visit.sensed = { tempC: tempC ?? before.tempC, rh: rh ?? before.rh };
    } else if (from.kind === 'characteristic' && from.characteristicUuid === temperatureUuid)
      visit.sensed = { ...before, tempC: temperatureOf(bytes) ?? before.tempC };
    else if (from.kind === 'characteristic' && from.characteristicUuid === humidityUuid)
      visit.sensed = { ...before, rh: humidityOf(bytes) ?? before.rh };
    const { tempC, rh } = visit.sensed;
    if (tempC !== null && rh !== null) this.#finish(visit.sensed);
    else if (tempC !== before.tempC || rh !== before.rh) {
      clearTimeout(visit.timer);
      visit.timer = setTimeout(() => this.#finish(visit.sensed), OTHER_MS);
    }
  }
}

const isOfAir = (uuid: string): boolean => uuid === temperatureUuid || uuid === humidityUuid;
