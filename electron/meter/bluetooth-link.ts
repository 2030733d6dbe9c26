import { type DiscoveredCharacteristic, describeMeter } from '../../shared-core/gatt/describe-meter.ts';
import type { MeterDescription } from '../../shared-core/gatt/meter-description.ts';
import { adapterState } from './adapter-reason.ts';
import { type BluetoothTiming, usualTiming } from './bluetooth-timing.ts';
import { MeterLink, noMeter } from './meter-link.ts';
import { RadioChild, type RadioRuntime } from './radio-child.ts';
import { type FromRadio, longestValueBytes } from './radio-messages.ts';

export interface BluetoothLinkOptions extends RadioRuntime {
  timing?: Partial<BluetoothTiming>;
}

/** The meter that a person asked for, from `connect` until `disconnect`. */
interface Target {
  deviceId: string;
  name: string | null;
  /** From before, or as a person mapped it; null lets the meter describe itself. */
  description: MeterDescription | null;
  /** Number of the attempt under way; answers to earlier ones are dropped. */
  attempt: number;
  /** Attempts since it was last live. */
  tries: number;
  everLive: boolean;
  /** Whether the connect order for this attempt has gone out (it waits for the adapter). */
  ordered: boolean;
}

/** Watching everything while a person maps a meter by hand must not overrun it. */
const mostWatched = 16;

/**
 * The link through a real adapter. noble runs in a process of its own (`radio-process.ts`); this side owns time
 * limits, retries and sentences, and believes evidence only: bytes that arrive or a read that is answered. A time limit
 * that runs out, or a fault there, ends that process, and the next attempt starts it anew.
 */
export class BluetoothLink extends MeterLink {
  override readonly kind = 'bluetooth';

  readonly #timing: BluetoothTiming;
  readonly #radio: RadioChild;
  readonly #names = new Map<string, string>();
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

  /** The newest error output of the radio process, for the log. */
  get radioLog(): string {
    return this.#radio.log;
  }

  override startScan(): void {
    if (this.#closed || this.#target !== null) return;
    this.#scanWanted = true;
    this.setState('scanning', lookingForMeters, nobody);
    this.#scanOnce();
  }

  override stopScan(): void {
    this.#scanWanted = false;
    this.#radio.order({ type: 'scan', on: false });
    if (this.state.phase === 'scanning') this.setState('idle', noMeter, nobody);
  }

  override connect(deviceId: string, description: MeterDescription | null): void {
    if (this.#closed) return;
    this.#scanWanted = false;
    const before = this.disconnect();
    const order = ++this.#connectOrders;
    const target: Target = {
      deviceId,
      name: this.#names.get(deviceId) || null,
      description,
      attempt: 0,
      tries: 0,
      everLive: false,
      ordered: false,
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
    if (!offers(this.described.characteristics, description)) {
      this.setDescribed({
        ...this.described,
        remarks: [`${subject(target)} offers no such value. Choose another.`],
      });
      return;
    }
    target.description = description;
    this.setDescribed({ ...this.described, description, remarks: [] });
    this.#subscribe(target);
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
    if (order === this.#connectOrders) this.setState('idle', noMeter, nobody);
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
    this.setAdapter(adapterState('starting'));
  }

  #endRadio(): void {
    this.#radio.end();
    this.#onGoodbye?.();
  }

  #radioGone(): void {
    this.#onGoodbye?.();
    if (this.#closed) return;
    this.#radioFaults++;
    this.setAdapter({
      usable: false,
      sentence:
        'The part that talks to the Bluetooth adapter stopped by a fault of its own. It is started again by itself; nothing that was kept is lost.',
    });
    if (this.#target !== null) {
      this.#attemptFailed(this.#target, `the Bluetooth part of Pintally stopped by a fault of its own`);
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

  // --- what the radio says

  #hear(message: FromRadio): void {
    switch (message.type) {
      case 'alive':
        return;
      case 'adapter':
        this.#hearAdapter(message);
        return;
      case 'found':
        for (const device of message.devices) {
          if (device.name !== '') this.#names.set(device.deviceId, device.name);
          this.emit('found', { ...device, name: this.#names.get(device.deviceId) ?? '' });
        }
        return;
      case 'malformed':
        this.unreadableFrames++;
        this.refuseUnseen(1, 'The meter sent a frame that is not valid Bluetooth. It was dropped.');
        return;
    }
    if (message.type === 'disconnected' && this.#onGoodbye !== null) {
      this.#onGoodbye();
      return;
    }
    const target = this.#target;
    if (target === null || message.attempt !== target.attempt) return;
    switch (message.type) {
      case 'connected':
        target.name = message.name || target.name;
        if (target.everLive)
          this.#show(target, 'reconnecting', `${subject(target)} is there again. Starting its readings.`);
        else this.#show(target, 'discovering', `Asking ${object(target)} what it sends.`);
        this.#limitStep(target, this.#timing.discoverMs);
        return;
      case 'discovered':
        this.#hearDiscovered(target, message.characteristics);
        return;
      case 'subscribed':
        clearTimeout(this.#stepTimer);
        target.tries = 0;
        target.everLive = true;
        this.#radioFaults = 0;
        this.#showLive(target);
        this.#watchSilence(target);
        return;
      case 'notifications':
        this.#watchSilence(target);
        this.#hearNotifications(message);
        return;
      case 'proof':
        this.#watchSilence(target);
        return;
      case 'battery':
        this.setBattery(message.pct);
        return;
      case 'disconnected':
        this.#attemptFailed(target, 'the connection broke off');
        return;
      case 'failed':
        if (message.step === 'search') this.#attemptFailed(target, 'it was not heard');
        else this.#freshStart(target, whyStepFailed[message.step]);
        return;
    }
  }

  #hearAdapter(message: Extract<FromRadio, { type: 'adapter' }>): void {
    const adapter = adapterState(message.reason);
    this.setAdapter(adapter);
    if (adapter.usable) {
      if (this.#target !== null && !this.#target.ordered) this.#orderConnect(this.#target);
      // It may have said until now that Bluetooth is off.
      if (this.#scanWanted) this.setState('scanning', lookingForMeters, nobody);
      return;
    }
    if (message.reason === 'starting') return;
    // "Switched off" is noticed when it ends; from the others this process will not recover.
    if (message.reason !== 'off') this.#endRadio();
    if (this.#target !== null) {
      this.#attemptFailed(this.#target, 'Bluetooth went away', adapter.sentence);
    } else if (this.#scanWanted && message.reason !== 'off') {
      this.#scanWanted = false;
      this.setState('failed', adapter.sentence, nobody);
    } else if (this.#scanWanted) {
      this.setState('scanning', adapter.sentence, nobody);
    }
  }

  #hearDiscovered(target: Target, characteristics: DiscoveredCharacteristic[]): void {
    const known = target.description;
    if (known !== null && offers(characteristics, known)) {
      this.setDescribed({ description: known, characteristics, remarks: [] });
    } else {
      const own = describeMeter(characteristics);
      const remarks =
        known === null
          ? own.remarks
          : ['The meter no longer offers the value that it was read by. It was asked anew.', ...own.remarks];
      this.setDescribed({ description: own.description, characteristics, remarks });
    }
    this.#subscribe(target);
  }

  #hearNotifications(message: Extract<FromRadio, { type: 'notifications' }>): void {
    for (const { bytes, lengthBytes, ...from } of message.items) {
      if (bytes !== null) this.receive({ ...from, bytes });
      else {
        this.refuse(
          { ...from, bytes: new Uint8Array(0) },
          `The meter sent ${lengthBytes} bytes at once; Bluetooth allows ${longestValueBytes}. They were dropped.`,
        );
      }
    }
    if (message.overrun > 0) {
      this.refuseUnseen(
        message.overrun,
        `The meter sent values faster than they could be taken in; ${message.overrun} were dropped.`,
      );
    }
  }

  // --- from one step to the next

  #attempt(target: Target): void {
    this.#clearTimers();
    target.attempt = ++this.#attempts;
    target.ordered = false;
    if (!target.everLive) this.#show(target, 'connecting', `Connecting to ${object(target)}.`);
    const { attempt } = target;
    void this.#radio.free.then(() => {
      if (target !== this.#target || attempt !== target.attempt) return;
      this.#startRadio();
      if (this.adapter.usable) this.#orderConnect(target);
      else this.#limitStep(target, this.#timing.startMs);
    });
  }

  #orderConnect(target: Target): void {
    target.ordered = true;
    this.#radio.order({
      type: 'connect',
      attempt: target.attempt,
      deviceId: target.deviceId,
      searchMs: this.#timing.searchMs,
    });
    this.#limitStep(target, this.#timing.searchMs + this.#timing.connectMs);
  }

  #subscribe(target: Target): void {
    const described = this.described!;
    const watched =
      described.description === null
        ? described.characteristics.filter((c) => c.canNotify).slice(0, mostWatched)
        : [described.description];
    this.#radio.order({
      type: 'subscribe',
      attempt: target.attempt,
      characteristics: watched.map(({ serviceUuid, characteristicUuid }) => ({
        serviceUuid,
        characteristicUuid,
      })),
    });
    this.#limitStep(target, this.#timing.subscribeMs);
  }

  #limitStep(target: Target, limitMs: number): void {
    clearTimeout(this.#stepTimer);
    this.#stepTimer = setTimeout(() => this.#freshStart(target, 'it does not answer'), limitMs);
  }

  #watchSilence(target: Target): void {
    clearTimeout(this.#silenceTimer);
    this.#silenceTimer = setTimeout(() => {
      this.#radio.order({ type: 'prove', attempt: target.attempt });
      this.#silenceTimer = setTimeout(
        () => this.#freshStart(target, 'it does not answer any more'),
        this.#timing.proofMs,
      );
    }, this.#timing.silenceMs);
  }

  /** noble's own calls may never return after this, so its process goes too. */
  #freshStart(target: Target, cause: string): void {
    this.#endRadio();
    this.#attemptFailed(target, cause);
  }

  /** @param sentence instead of the usual one, where there is more to say than the cause */
  #attemptFailed(target: Target, cause: string, sentence?: string): void {
    this.#clearTimers();
    // Answers still under way belong to an attempt that is over.
    target.attempt = ++this.#attempts;
    target.ordered = true;
    if (!target.everLive) {
      this.#target = null;
      this.setState(
        'failed',
        sentence ??
          `Could not connect to ${object(target)}: ${cause}. Switch it on, bring it near, and connect again.`,
        { deviceId: target.deviceId, deviceName: target.name },
      );
      return;
    }
    target.tries++;
    this.#show(
      target,
      'reconnecting',
      `${sentence ?? `The link to ${object(target)} is lost: ${cause}.`} Readings kept so far are safe. Trying again by itself; you can type readings meanwhile.`,
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
    if (this.described?.description == null) {
      this.#show(
        target,
        'needs-description',
        `${subject(target)} is connected, but it is not known how to read it. Show once on the meter page which bytes are the reading.`,
      );
    } else {
      this.#show(target, 'live', `${subject(target)} is connected.`);
    }
  }

  #show(
    target: Target,
    phase: 'connecting' | 'discovering' | 'reconnecting' | 'needs-description' | 'live',
    sentence: string,
  ): void {
    this.setState(phase, sentence, { deviceId: target.deviceId, deviceName: target.name });
  }

  #clearTimers(): void {
    clearTimeout(this.#stepTimer);
    clearTimeout(this.#silenceTimer);
    clearTimeout(this.#retryTimer);
  }
}

const lookingForMeters = 'Looking for meters. Switch yours on and keep it near.';
const nobody = { deviceId: null, deviceName: null };

const whyStepFailed = {
  connect: 'it did not let itself be connected',
  discover: 'it did not say what it sends',
  subscribe: 'it did not start its readings',
} as const;

/** Whether a meter has the value that a description reads, and sends it by itself. */
const offers = (characteristics: readonly DiscoveredCharacteristic[], description: MeterDescription) =>
  characteristics.some(
    (c) =>
      c.canNotify &&
      c.serviceUuid === description.serviceUuid &&
      c.characteristicUuid === description.characteristicUuid,
  );

/** The meter at the start of a sentence, and within one. */
const subject = (target: Target) => target.name ?? 'The meter';
const object = (target: Target) => target.name ?? 'the meter';
