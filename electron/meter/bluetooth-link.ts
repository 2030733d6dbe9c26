import { environmentUuid, humidityUuid, temperatureUuid } from '../../shared-core/gatt/assigned-numbers.ts';
import type { DiscoveredCharacteristic } from '../../shared-core/gatt/describe-meter.ts';
import {
  humidityOf,
  type SensedAir,
  sensedInAdvert,
  temperatureOf,
} from '../../shared-core/gatt/environment.ts';
import type { MeterDescription, Start } from '../../shared-core/gatt/meter-description.ts';
import { confirmed, recognizeMeter } from '../../shared-core/gatt/recognize-meter.ts';
import { isAdvertised } from '../../shared-core/gatt/source.ts';
import type { Code } from '../../shared-core/words/en/index.ts';
import { type Message, message } from '../../shared-core/words/message.ts';
import { monotonicMs } from '../monotonic.ts';
import { adapterState } from './adapter-reason.ts';
import { type BluetoothTiming, usualTiming } from './bluetooth-timing.ts';
import { type Heard, HeardDevices } from './heard-devices.ts';
import { MeterLink, noMeter } from './meter-link.ts';
import { RadioChild } from './radio-child.ts';
import { type FromRadio, longestValueBytes } from './radio-messages.ts';
import type { RadioRuntime } from './radio-port.ts';
import { isSensor } from './sensor-radio.ts';
import { watchedOf, watchedOfUnknown } from './watched.ts';

export interface BluetoothLinkOptions extends RadioRuntime {
  timing?: Partial<BluetoothTiming>;
}

/** The meter that a person asked for, from `connect` until `disconnect`. */
interface Target {
  deviceId: string;
  name: string | null;
  /** As it was read before, or as a person set it up; null lets the meter describe itself. */
  description: MeterDescription | null;
  /** Number of the attempt under way; answers to earlier ones are dropped. */
  attempt: number;
  /** Attempts since it was last live. */
  tries: number;
  everLive: boolean;
  /** Whether the connect order for this attempt has gone out (it waits for the adapter). */
  ordered: boolean;
  /** It is only listened to: what it advertises holds its values, or it lets nobody connect. */
  listens: boolean;
  /** What a person tries to make an undescribed meter begin with. */
  tried: Start | null;
}

/**
 * The link through a real adapter. noble runs in a separate process (`radio-process.ts`). This side owns time limits,
 * retries and messages, and believes evidence only: bytes that arrive, or a read that is answered. After a time limit or
 * a fault that process is ended, and the next attempt starts a new one.
 */
export class BluetoothLink extends MeterLink {
  override readonly kind = 'bluetooth';

  readonly #timing: BluetoothTiming;
  readonly #radio: RadioChild;
  readonly #named = new HeardDevices<Heard & { name: string }>();
  #scanWanted = false;
  #target: Target | null = null;
  #attempts = 0;
  /** The newest of `connect` and `disconnect` wins. */
  #connectOrders = 0;
  #closed = false;
  #radioFaults = 0;
  #stepTimer: NodeJS.Timeout | undefined;
  #silenceTimer: NodeJS.Timeout | undefined;
  #retryTimer: NodeJS.Timeout | undefined;
  #onGoodbye: (() => void) | null = null;
  #visit: { deviceId: string; done: (sensed: SensedAir | null) => void } | null = null;

  constructor(options: BluetoothLinkOptions) {
    super();
    this.#timing = { ...usualTiming, ...options.timing };
    this.#radio = new RadioChild(options, this.#timing);
    this.#radio.on('message', (message) => this.#hear(message));
    this.#radio.on('gone', () => this.#radioGone());
  }

  /** Frames that the Bluetooth library could not read at all; their bytes never became notifications. */
  unreadableFrames = 0;

  /** Id of the radio process, for logs and tests; null while there is none. */
  get radioPid(): number | null {
    return this.#radio.pid;
  }

  /** The newest error output of the radio process, for the fault log. */
  get radioLog(): string {
    return this.#radio.log;
  }

  override startScan(): void {
    if (this.#closed || this.#target !== null) return;
    this.#scanWanted = true;
    this.setState('scanning', lookingForMeters, noDevice);
    this.#scanOnce();
  }

  override stopScan(): void {
    this.#scanWanted = false;
    this.#radio.order({ type: 'scan', on: false });
    if (this.state.phase === 'scanning') this.setState('idle', noMeter, noDevice);
  }

  override connect(deviceId: string, description: MeterDescription | null): void {
    this.#begin(deviceId, description, description !== null && isAdvertised(description.source));
  }

  override listen(deviceId: string): void {
    this.#begin(deviceId, null, true);
  }

  #begin(deviceId: string, description: MeterDescription | null, listens: boolean): void {
    if (this.#closed) return;
    this.#scanWanted = false;
    const before = this.disconnect();
    const order = ++this.#connectOrders;
    const target: Target = {
      deviceId,
      name: this.#named.get(deviceId)?.name ?? null,
      description,
      attempt: 0,
      tries: 0,
      everLive: false,
      ordered: false,
      listens,
      tried: null,
    };
    void before.then(() => {
      if (order !== this.#connectOrders) return;
      this.#target = target;
      this.#attempt(target);
    });
  }

  override describe(description: MeterDescription): void {
    const target = this.#target;
    if (target === null || this.described === null) return;
    if (!this.offers(description)) {
      this.setDescribed({
        ...this.described,
        remarks: [message('meter.self.not-offered', { meterName: nameOf(target) })],
      });
      return;
    }
    const { characteristics } = this.described;
    target.description = confirmed(characteristics, description);
    this.setDescribed({ description: target.description, characteristics, remarks: [] });
    if (target.listens) this.#showLive(target);
    else this.#watch(target);
  }

  override tryStart(start: Start): void {
    const target = this.#target;
    if (target === null || target.listens || this.described?.description !== null) return;
    target.tried = start;
    this.setDescribed({ ...this.described, remarks: [] });
    this.#watch(target);
  }

  override overhear(on: boolean): void {
    const isConnecting = this.state.phase === 'connecting' || this.state.phase === 'discovering';
    if (!on || !isConnecting) this.#radio.order({ type: 'overhear', on });
  }

  override visit(deviceId: string): Promise<SensedAir | null> {
    this.endVisit();
    if (this.state.phase !== 'live') return Promise.resolve(null);
    return new Promise((done) => {
      this.#visit = { deviceId, done };
      this.#radio.order({
        type: 'visit',
        deviceId,
        serviceUuid: environmentUuid,
        characteristicUuids: [temperatureUuid, humidityUuid],
      });
    });
  }

  override endVisit(): void {
    if (this.#visit === null) return;
    this.#radio.order({ type: 'end-visit' });
    this.#endVisit(null);
  }

  #endVisit(sensed: SensedAir | null): void {
    const visit = this.#visit;
    this.#visit = null;
    visit?.done(sensed);
  }

  #visited({ deviceId, values }: Extract<FromRadio, { type: 'visited' }>): void {
    if (this.#visit?.deviceId !== deviceId) return;
    const bytesOf = (uuid: string) =>
      values.find(({ characteristicUuid }) => characteristicUuid === uuid)?.bytes;
    const [temperature, humidity] = [bytesOf(temperatureUuid), bytesOf(humidityUuid)];
    const sensed = {
      tempC: temperature ? temperatureOf(temperature) : null,
      rh: humidity ? humidityOf(humidity) : null,
    };
    this.#endVisit(sensed.tempC === null && sensed.rh === null ? null : sensed);
  }

  override undescribe(): void {
    const target = this.#target;
    if (target === null || this.described === null) return;
    target.description = null;
    this.setDescribed({ description: null, characteristics: this.described.characteristics, remarks: [] });
    if (target.listens) this.#showLive(target);
    else this.#watch(target);
  }

  override recall(known: MeterDescription | null): void {
    const target = this.#target;
    if (target === null || this.described === null) return;
    if (known !== null && target.listens !== isAdvertised(known.source)) return;
    target.description = known;
    if (target.listens) {
      this.#knowByAdverts(target);
      if (this.state.phase === 'live' || this.state.phase === 'needs-description') this.#showLive(target);
    } else this.#recognize(target, this.described.characteristics);
  }

  override get listening(): boolean {
    return this.#target?.listens ?? false;
  }

  override async disconnect(): Promise<void> {
    const order = ++this.#connectOrders;
    const target = this.#target;
    this.#target = null;
    this.#clearTimers();
    if (target === null) return;
    const midway = this.described === null;
    if (this.#radio.running) await this.#goodbye(target.attempt);
    // noble does not recover from a connection that was cut short.
    if (midway) this.#endRadio();
    this.forgetMeter();
    if (order === this.#connectOrders) this.setState('idle', noMeter, noDevice);
  }

  override async close(): Promise<void> {
    this.#closed = true;
    this.#scanWanted = false;
    await this.disconnect();
    this.#endRadio();
    await this.#radio.free;
  }

  // --- the radio process

  #startRadio(): void {
    if (this.#radio.running) return;
    this.#radio.start();
    this.setAdapter(adapterState('starting', null));
  }

  #endRadio(): void {
    this.#endVisit(null);
    this.#radio.end();
    this.#onGoodbye?.();
  }

  #radioGone(): void {
    this.#endVisit(null);
    this.#onGoodbye?.();
    if (this.#closed) return;
    this.#radioFaults++;
    const way = this.adapter?.way ?? null;
    this.setAdapter({ usable: false, message: message('meter.adapter.stopped'), way });
    if (this.#target !== null) {
      this.#attemptFailed(this.#target, { why: 'meter.why.bluetooth-stopped' });
    } else if (this.#scanWanted) {
      this.#retryTimer = setTimeout(() => this.#scanOnce(), this.#backOff(this.#radioFaults));
    }
  }

  #scanOnce(): void {
    void this.#radio.free.then(() => {
      if (!this.#scanWanted) return;
      this.#startRadio();
      this.#radio.order({ type: 'scan', on: true });
    });
  }

  // --- messages from the radio process

  #hear(heard: FromRadio): void {
    switch (heard.type) {
      case 'alive':
        return;
      case 'adapter':
        this.#hearAdapter(heard);
        return;
      case 'found':
        for (const { sensorData, ...device } of heard.devices) {
          const { deviceId, name, rssiDbm } = device;
          if (name !== '') this.#named.hear(deviceId, { name, rssiDbm, atMs: monotonicMs() });
          const sensed = sensorData === undefined ? null : sensedInAdvert(sensorData);
          if (sensed !== null || isSensor(device.serviceUuids))
            this.emit('overheard', { deviceId, name, rssiDbm, ...(sensed ?? saysNothing) });
          // One that is searched for in vain may have another address now.
          if (this.#scanWanted || this.state.phase === 'reconnecting')
            this.emit('found', { ...device, name: this.#named.get(deviceId)?.name ?? '' });
        }
        return;
      case 'visited':
        this.#visited(heard);
        return;
      case 'malformed':
        this.unreadableFrames++;
        this.refuseUnseen(1, message('meter.value.frame-invalid'));
        return;
    }
    if (heard.type === 'disconnected' && this.#onGoodbye !== null) {
      this.#onGoodbye();
      return;
    }
    const target = this.#target;
    if (target === null || heard.attempt !== target.attempt) return;
    switch (heard.type) {
      case 'connected':
        target.name = heard.name || target.name;
        if (target.everLive) this.#show(target, 'reconnecting', 'meter.state.back');
        else this.#show(target, 'discovering', 'meter.state.discovering');
        this.#limitStep(target, this.#timing.discoverMs);
        return;
      case 'discovered':
        this.#recognize(target, heard.characteristics);
        return;
      case 'heard':
        target.name = heard.name || target.name;
        this.#knowByAdverts(target);
        this.#begun(target);
        return;
      case 'watching':
        this.#begun(target);
        return;
      case 'notifications':
        this.#watchSilence(target);
        this.#hearNotifications(heard);
        return;
      case 'proof':
        this.#watchSilence(target);
        return;
      case 'battery':
        this.setBattery(heard.pct);
        return;
      case 'disconnected':
        this.#attemptFailed(target, { why: 'meter.why.dropped' });
        return;
      case 'failed':
        this.#stepFailed(target, heard.step);
        return;
    }
  }

  #stepFailed(target: Target, step: Extract<FromRadio, { type: 'failed' }>['step']): void {
    if (step === 'search') this.#attemptFailed(target, { why: 'meter.why.not-found' });
    else if (step === 'listen-only' && target.description === null) {
      target.listens = true;
      this.#attempt(target);
    } else if (step === 'start' && this.described?.description === null) {
      // What a person tried is not how it begins; everything is watched all the same.
      target.tried = null;
      this.setDescribed({
        ...this.described,
        remarks: [message('meter.self.start-refused', { meterName: nameOf(target) })],
      });
      this.#watch(target);
    } else this.#freshStart(target, whyStepFailed[step]);
  }

  /** Its values come in from now on. */
  #begun(target: Target): void {
    clearTimeout(this.#stepTimer);
    target.tries = 0;
    target.everLive = true;
    this.#radioFaults = 0;
    this.#showLive(target);
    this.#watchSilence(target);
  }

  /** A meter that is only listened to says nothing of itself that could have changed. */
  #knowByAdverts({ description }: Target): void {
    this.setDescribed({ description, characteristics: [], remarks: [] });
  }

  #hearAdapter({ reason, way }: Extract<FromRadio, { type: 'adapter' }>): void {
    const adapter = adapterState(reason, way);
    this.setAdapter(adapter);
    if (adapter.usable) {
      if (this.#target !== null && !this.#target.ordered) this.#orderConnect(this.#target);
      // Until now the state may have been that Bluetooth is off.
      if (this.#scanWanted) this.setState('scanning', lookingForMeters, noDevice);
      return;
    }
    if (reason === 'starting') return;
    // An adapter that is off is seen when it comes on; from the other troubles this process does not recover.
    if (reason !== 'off') this.#endRadio();
    if (this.#target !== null) {
      this.#attemptFailed(this.#target, { adapter: adapter.message });
    } else if (this.#scanWanted && reason !== 'off') {
      this.#scanWanted = false;
      this.setState('failed', adapter.message, noDevice);
    } else if (this.#scanWanted) {
      this.setState('scanning', adapter.message, noDevice);
    }
  }

  #recognize(target: Target, characteristics: DiscoveredCharacteristic[]): void {
    const recognized = recognizeMeter(characteristics, target.description);
    // A meter that comes back is compared with what it was, also where it describes itself.
    if (!recognized.toConfirm) target.description = recognized.description;
    this.setDescribed({ ...recognized, characteristics });
    this.#watch(target);
  }

  #hearNotifications({ items, overrun }: Extract<FromRadio, { type: 'notifications' }>): void {
    for (const { bytes, lengthBytes, from, receivedAtMs } of items) {
      if (bytes !== null) this.receive({ from, bytes, receivedAtMs });
      else {
        this.refuse(
          { from, receivedAtMs, bytes: new Uint8Array(0) },
          message('meter.value.bytes-too-many', { sent: lengthBytes, allowed: longestValueBytes }),
        );
      }
    }
    if (overrun > 0) {
      this.refuseUnseen(overrun, message('meter.value.too-fast', { missed: overrun }));
    }
  }

  // --- from one step to the next

  #attempt(target: Target): void {
    this.#clearTimers();
    target.attempt = ++this.#attempts;
    target.ordered = false;
    if (!target.everLive)
      this.#show(target, 'connecting', target.listens ? 'meter.state.listening' : 'meter.state.connecting');
    const { attempt } = target;
    void this.#radio.free.then(() => {
      if (target !== this.#target || attempt !== target.attempt) return;
      this.#startRadio();
      if (this.adapter?.usable) this.#orderConnect(target);
      else this.#limitStep(target, this.#timing.startMs);
    });
  }

  #orderConnect(target: Target): void {
    this.#endVisit(null);
    target.ordered = true;
    this.#radio.order({
      type: target.listens ? 'listen' : 'connect',
      attempt: target.attempt,
      deviceId: target.deviceId,
      searchMs: this.#timing.searchMs,
    });
    this.#limitStep(target, this.#timing.searchMs + this.#timing.connectMs);
  }

  #watch(target: Target): void {
    const { description, characteristics } = this.described!;
    const start = description === null ? target.tried : description.start;
    this.#radio.order({
      type: 'watch',
      attempt: target.attempt,
      ...(description === null ? watchedOfUnknown(characteristics) : watchedOf(description.source)),
      start: start && { ...start, bytes: Buffer.from(start.bytesHex, 'hex') },
    });
    this.#limitStep(target, this.#timing.subscribeMs);
  }

  #limitStep(target: Target, limitMs: number): void {
    clearTimeout(this.#stepTimer);
    this.#stepTimer = setTimeout(() => this.#freshStart(target, 'meter.why.no-answer'), limitMs);
  }

  #watchSilence(target: Target): void {
    clearTimeout(this.#silenceTimer);
    if (target.listens) {
      const away = () => this.#attemptFailed(target, { why: 'meter.why.unheard' });
      this.#silenceTimer = setTimeout(away, this.#timing.unheardMs);
      return;
    }
    this.#silenceTimer = setTimeout(() => {
      this.overhear(false);
      this.#radio.order({ type: 'prove', attempt: target.attempt });
      this.#silenceTimer = setTimeout(
        () => this.#freshStart(target, 'meter.why.stopped-answering'),
        this.#timing.proofMs,
      );
    }, this.#timing.silenceMs);
  }

  /** noble's own calls may never return after this, so its process goes too. */
  #freshStart(target: Target, why: WhyCode): void {
    this.#endRadio();
    this.#attemptFailed(target, { why });
  }

  #attemptFailed(target: Target, trouble: Trouble): void {
    this.#clearTimers();
    // Answers still under way belong to an attempt that is over.
    target.attempt = ++this.#attempts;
    target.ordered = true;
    const device = { deviceId: target.deviceId, deviceName: target.name };
    const inWords = (code: `meter.state.${'failed' | 'lost' | 'unheard'}`) =>
      'adapter' in trouble
        ? trouble.adapter
        : message(code, { meterName: nameOf(target), why: message(trouble.why) });
    if (!target.everLive) {
      this.#target = null;
      this.setState('failed', inWords('meter.state.failed'), device);
      return;
    }
    target.tries++;
    this.setState(
      'reconnecting',
      message('meter.state.reconnecting', {
        trouble: inWords(target.listens ? 'meter.state.unheard' : 'meter.state.lost'),
      }),
      device,
    );
    this.#retryTimer = setTimeout(() => this.#attempt(target), this.#backOff(target.tries));
  }

  #backOff(tries: number): number {
    const waits = this.#timing.backOffMs;
    return waits[Math.min(tries, waits.length) - 1]!;
  }

  #goodbye(attempt: number): Promise<void> {
    return new Promise((resolve) => {
      const timer = setTimeout(() => this.#endRadio(), this.#timing.goodbyeMs);
      this.#onGoodbye = () => {
        clearTimeout(timer);
        this.#onGoodbye = null;
        resolve();
      };
      this.#radio.order({ type: 'disconnect', attempt });
    });
  }

  #showLive(target: Target): void {
    const { listens } = target;
    if (this.described?.description == null) {
      const code = listens ? 'meter.state.heard-needs-setup' : 'meter.state.needs-setup';
      this.#show(target, 'needs-description', code);
    } else {
      this.#show(target, 'live', listens ? 'meter.state.heard' : 'meter.state.live');
    }
  }

  /** For the states whose message has only the meter's name. */
  #show(
    target: Target,
    phase: 'connecting' | 'discovering' | 'reconnecting' | 'needs-description' | 'live',
    code: `meter.state.${
      | 'connecting'
      | 'listening'
      | 'discovering'
      | 'back'
      | 'needs-setup'
      | 'heard-needs-setup'
      | 'live'
      | 'heard'}`,
  ): void {
    this.setState(phase, message(code, { meterName: nameOf(target) }), {
      deviceId: target.deviceId,
      deviceName: target.name,
    });
  }

  #clearTimers(): void {
    clearTimeout(this.#stepTimer);
    clearTimeout(this.#silenceTimer);
    clearTimeout(this.#retryTimer);
  }
}

const lookingForMeters = message('meter.state.looking');
const saysNothing = { tempC: null, rh: null };
const noDevice = { deviceId: null, deviceName: null };

const whyStepFailed = {
  'listen-only': 'meter.why.refused',
  connect: 'meter.why.refused',
  discover: 'meter.why.not-listed',
  watch: 'meter.why.not-started',
  start: 'meter.why.start-refused',
  pairing: 'meter.why.pairing',
} as const;

type WhyCode = Extract<Code, `meter.why.${string}`>;

/** What ended an attempt: something about this meter, or the adapter, whose message is complete by itself. */
type Trouble = { why: WhyCode } | { adapter: Message };

/** As a sentence names it. */
const nameOf = (target: Target): string | Message => target.name ?? message('meter.the-meter');
