import { type MeterDescription, plainDescription } from '../../shared-core/gatt/meter-description.ts';
import { fromOf } from '../../shared-core/gatt/source.ts';
import type { MeterProfile } from '../../shared-core/probing/readings/meter-profile.ts';
import { message } from '../../shared-core/words/message.ts';
import { monotonicMs } from '../monotonic.ts';
import { type LinkState, MeterLink, noMeter } from './meter-link.ts';

/** Time as the simulated meter sees it: the machine's, or a test's. */
export interface Clock {
  /** It only runs forward; zero is anywhere. */
  nowMs(): number;
  /** @returns a function that stops it */
  every(ms: number, tick: () => void): () => void;
}

export const machineClock: Clock = {
  nowMs: monotonicMs,
  every(ms, tick) {
    const timer = setInterval(tick, ms);
    return () => clearInterval(timer);
  },
};

/** What its values mean, and what its made-up pins reach. */
export const simulatedProfile: MeterProfile = {
  scale: { kind: 'usual' },
  compensatesTemp: false,
  pins: { lengthMm: 30, insulated: true },
  sdPct: null,
};

export interface SimulatedLinkOptions {
  /** The same seed and the same orders give the same values. */
  seed: number;
  clock?: Clock;
}

const deviceId = 'simulated';
/** Stored with its readings. The window names it in the person's words. */
const deviceName = 'Simulated';
const device: Pick<LinkState, 'deviceId' | 'deviceName'> = { deviceId, deviceName };
const batteryPct = 84;
const characteristic = {
  serviceUuid: 'a3f10000c4d14c2e9a6b5d8e0f7a2b10',
  characteristicUuid: 'a3f10001c4d14c2e9a6b5d8e0f7a2b10',
};

/** Values a second, as a hand-held meter sends them (our own choice). */
const ticksPerSecond = 10;
/** What it can show, %. Drier wood reads as open pins, wetter as beyond the scale. */
const lowestPct = 5;
const highestPct = 60;

// An IEEE 11073 SFLOAT of tenths of a percent, a format that has codes for "no reading".
const sfloatFormat = 22;
const sfloatTenths = 0xf000;
const sfloatNotAtThisResolution = 0x0800;
const sfloatPlusInfinity = 0x07fe;

/** How pins behave once they are in; drawn again each time. */
interface Push {
  /** When the pins go in. */
  atMs: number;
  truthPct: number;
  /** How far off the first value is, %, and how fast that goes away: steady to 0.1 % in one to two seconds. */
  startsOffPct: number;
  fadesWithinMs: number;
}

/**
 * A pin meter without hardware, for the demo yard and for tests. The app tells it what the wood holds where it aims;
 * each time, the pins come out, are in the air for about a second, go in, drift and come to rest. Its bytes go through
 * the same decoding as those of a real one.
 */
export class SimulatedLink extends MeterLink {
  override readonly kind = 'simulated';

  readonly #clock: Clock;
  readonly #random: () => number;
  readonly #description: MeterDescription;
  #push: Push | null = null;
  #stopTicking: (() => void) | null = null;

  constructor(options: SimulatedLinkOptions) {
    super();
    this.#clock = options.clock ?? machineClock;
    this.#random = seededRandom(options.seed);
    this.#description = plainDescription({
      source: { kind: 'sent', ...characteristic },
      value: { kind: 'number', format: sfloatFormat, byteOffset: 0, exponent: 0, scale: 1, offset: 0 },
      unit: 'pct',
      range: { min: lowestPct, max: highestPct },
      origin: 'self-described',
    });
  }

  /**
   * The pins are lifted and, about a second later, pushed in where the meter would show this.
   * @param mcShownPct what its scale shows there, %; null leaves the pins in the air
   */
  setTruth(mcShownPct: number | null): void {
    this.#push =
      mcShownPct === null
        ? null
        : {
            atMs: this.#clock.nowMs() + between(this.#random, 700, 1300),
            truthPct: mcShownPct,
            startsOffPct: between(this.#random, 0.5, 1.6) * (this.#random() < 0.7 ? 1 : -1),
            fadesWithinMs: between(this.#random, 250, 500),
          };
  }

  override startScan(): void {
    this.setState('scanning', message('meter.state.simulated-ready'), { deviceId: null, deviceName: null });
    this.emit('found', {
      deviceId,
      name: deviceName,
      rssiDbm: -40,
      serviceUuids: [characteristic.serviceUuid],
    });
  }

  override stopScan(): void {
    if (this.state.phase === 'scanning') this.#idle();
  }

  override connect(): void {
    this.#stopTicking?.();
    this.forgetMeter();
    this.setDescribed({
      description: this.#description,
      characteristics: [
        {
          ...characteristic,
          canNotify: true,
          canRead: false,
          canWrite: false,
          presentationFormat: null,
          userDescription: 'Moisture',
          validRange: null,
        },
      ],
      remarks: [],
    });
    this.setBattery(batteryPct);
    this.setState('live', message('meter.state.simulated-live'), device);
    this.#stopTicking = this.#clock.every(1000 / ticksPerSecond, () => this.#tick());
  }

  /** It describes itself; setting it up by hand changes nothing. */
  override describe(): void {}

  override async disconnect(): Promise<void> {
    this.#stopTicking?.();
    this.#stopTicking = null;
    this.forgetMeter();
    this.#idle();
  }

  override async close(): Promise<void> {
    await this.disconnect();
  }

  #idle(): void {
    this.setState('idle', noMeter, { deviceId: null, deviceName: null });
  }

  #tick(): void {
    const word = this.#word();
    this.receive({
      from: fromOf(this.#description.source),
      bytes: Uint8Array.of(word & 0xff, word >> 8),
      receivedAtMs: this.#clock.nowMs(),
    });
  }

  #word(): number {
    const push = this.#push;
    const inForMs = push === null ? -1 : this.#clock.nowMs() - push.atMs;
    if (push === null || inForMs < 0) return sfloatNotAtThisResolution;
    const noisePct = 0.04 * normal(this.#random);
    const shownPct = push.truthPct + push.startsOffPct * Math.exp(-inForMs / push.fadesWithinMs) + noisePct;
    if (shownPct < lowestPct) return sfloatNotAtThisResolution;
    if (shownPct > highestPct) return sfloatPlusInfinity;
    return sfloatTenths | Math.round(shownPct * 10);
  }
}

/** mulberry32 (Tommy Ettinger, public domain): uniform in [0, 1), good enough for noise on a screen. */
function seededRandom(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

const between = (random: () => number, low: number, high: number) => low + (high - low) * random();

/** Standard normal, by Box and Muller. */
const normal = (random: () => number) =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
