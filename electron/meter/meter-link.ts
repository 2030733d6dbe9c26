import { EventEmitter } from 'node:events';
import type { MeterState } from '../../shared-core/contract/meter.ts';
import type { RadioWay } from '../../shared-core/contract/radio-way.ts';
import type { DiscoveredCharacteristic } from '../../shared-core/gatt/describe-meter.ts';
import type { SensedAir } from '../../shared-core/gatt/environment.ts';
import type { MeterDescription, Start } from '../../shared-core/gatt/meter-description.ts';
import { decodePacket } from '../../shared-core/gatt/packet.ts';
import { offers, type RecognizedMeter } from '../../shared-core/gatt/recognize-meter.ts';
import { isAdvertised, isFrom, type PacketFrom } from '../../shared-core/gatt/source.ts';
import { type Message, message } from '../../shared-core/words/message.ts';

/** Whether there is a radio to talk through, and if not, what a person can do about it. */
export interface AdapterState {
  usable: boolean;
  message: Message;
  /** How the radio is reached; null until that is known. */
  way: RadioWay | null;
}

export interface LinkState {
  phase: MeterState['phase'];
  /** What is going on, for a person. */
  message: Message;
  deviceId: string | null;
  /** The name that the meter gave itself; null when it gave none or none is connected. */
  deviceName: string | null;
}

export interface FoundMeter {
  deviceId: string;
  /** Empty when it gives itself none. */
  name: string;
  /** Signal strength; null when the adapter does not report it. */
  rssiDbm: number | null;
  serviceUuids: string[];
}

/** How the connected meter is read, and what it offers. */
interface DescribedMeter extends RecognizedMeter {
  characteristics: DiscoveredCharacteristic[];
}

/** A packet as it came, whatever its source. */
export interface Packet {
  from: PacketFrom;
  /** What came over the air; empty for one that was too long. */
  bytes: Uint8Array;
  /** On a clock that only runs forward (`monotonic.ts`). */
  receivedAtMs: number;
}

export interface MeterNotification extends Packet {
  /** In the unit of the description; null when these bytes are no value. */
  value: number | null;
  /** Why there is no value; null when there is one, and for a packet of another kind. */
  problem: Message | null;
  /** A packet of another kind than those with the value: it says nothing of the pins. */
  isOther: boolean;
  /** Whether the meter holds its value; null where the packet does not say. */
  isHeld: boolean | null;
  /** Temperature of the wood or of its probe, °C; null where the packet does not say. */
  tempC: number | null;
  /** 1 for the first that this link received; none is skipped but those that `counts` reports as refused unseen. */
  sequence: number;
}

/** Every notification accounted for: `received` = `decoded` + `noReading` + `other` + `refused`. */
export type NotificationCounts = MeterState['counts'];

const NO_COUNTS: NotificationCounts = {
  received: 0,
  decoded: 0,
  noReading: 0,
  other: 0,
  refused: 0,
  lastRefusal: null,
};

type Fields = Pick<MeterNotification, 'isHeld' | 'tempC'>;
const NOTHING_BESIDE: Fields = { isHeld: null, tempC: null };

export interface MeterLinkEvents {
  adapter: [AdapterState];
  state: [LinkState];
  /** A meter heard while scanning; again and again as its signal changes. */
  found: [FoundMeter];
  /** A sensor, heard beside the meter; with values where it advertises them. */
  overheard: [SensedAir & Pick<FoundMeter, 'deviceId' | 'name' | 'rssiDbm'>];
  described: [DescribedMeter];
  notification: [MeterNotification];
  /** Charge of the meter's battery, %, 0 to 100. */
  battery: [number];
  /** What the meter is set to for the species, as it says it. */
  setting: [string];
}

/**
 * The link to one meter. Orders return at once; their results arrive as events, and the newest of each can be read
 * later. Nothing here throws for what happens on the air.
 */
export abstract class MeterLink extends EventEmitter<MeterLinkEvents> {
  abstract readonly kind: MeterState['kind'];

  /** Null until the radio is asked for, and where none is needed. */
  adapter: AdapterState | null = null;
  state: LinkState = { phase: 'idle', message: noMeter, deviceId: null, deviceName: null };
  described: DescribedMeter | null = null;
  batteryPct: number | null = null;
  /** What the meter is set to for the species, as it last said it. */
  speciesSetting: string | null = null;
  counts: NotificationCounts = NO_COUNTS;

  /** Listens for meters until told to stop or to connect. */
  abstract startScan(): void;
  abstract stopScan(): void;
  /**
   * Connects, and connects again by itself whenever the link is lost, until `disconnect`.
   * @param description how to read it, if that is known from before; null lets it describe itself
   */
  abstract connect(deviceId: string, description: MeterDescription | null): void;
  /** Shows what a meter advertises, without connecting, so that it can be described. */
  listen(_deviceId: string): void {}
  /** Whether the meter is only listened to. */
  get listening(): boolean {
    return false;
  }
  /** Whether the meter gives what is described, in the way in which it is reached. */
  offers(description: MeterDescription): boolean {
    if (this.listening) return isAdvertised(description.source);
    return this.described !== null && offers(this.described.characteristics, description);
  }
  /** Writes this to a connected meter that nobody described yet: it may begin to send. */
  tryStart(_start: Start): void {}
  /** Listens for sensors beside the meter, which comes first: a connection that is being made ends it. */
  overhear(_on: boolean): void {}
  /**
   * Reads a sensor that was heard beside the meter, over a short connection of its own. Null where it does not answer, or
   * the adapter holds no second connection.
   */
  async visit(_deviceId: string): Promise<SensedAir | null> {
    return null;
  }
  /** A visit under way is given up: pins go in. */
  endVisit(): void {}
  /** Forgets how the connected meter is read, until it is described again: everything that it sends comes. */
  undescribe(): void {}
  /** Reads the connected meter by this description from now on: a person confirmed it. */
  abstract describe(description: MeterDescription): void;
  /**
   * The yard knows the connected meter by this description; null where it knows nothing of it, as of one never met. One
   * that never changes is read as it is.
   */
  recall(_known: MeterDescription | null): void {}
  /** Leaves the meter in peace: unsubscribed and disconnected when the promise resolves. */
  abstract disconnect(): Promise<void>;
  /** Disconnects and lets go of the radio. The link cannot be used again. */
  abstract close(): Promise<void>;

  protected setAdapter(adapter: AdapterState): void {
    if (adapter.message.code === this.adapter?.message.code && adapter.way === this.adapter.way) return;
    this.adapter = adapter;
    this.emit('adapter', adapter);
  }

  protected setState(
    phase: LinkState['phase'],
    message: Message,
    device: Pick<LinkState, 'deviceId' | 'deviceName'>,
  ) {
    this.state = { phase, message, deviceId: device.deviceId, deviceName: device.deviceName };
    this.emit('state', this.state);
  }

  protected setDescribed(described: DescribedMeter): void {
    this.described = described;
    this.emit('described', described);
  }

  protected setBattery(pct: number): void {
    this.batteryPct = pct;
    this.emit('battery', pct);
  }

  /** Nothing of the meter that was connected before holds for the next one. */
  protected forgetMeter(): void {
    this.described = null;
    this.batteryPct = null;
    this.speciesSetting = null;
    this.counts = NO_COUNTS;
  }

  /** Decodes, counts and passes on one packet of the source that holds the reading, or of any other. */
  protected receive(packet: Packet): void {
    const description = this.described?.description ?? null;
    if (description === null || !isFrom(description.source, packet.from)) {
      this.refuse(packet, message('meter.value.undescribed'));
      return;
    }
    const { value: decoded, batteryPct, species, ...fields } = decodePacket(packet.bytes, description);
    if (batteryPct !== null && batteryPct !== this.batteryPct) this.setBattery(batteryPct);
    if (species !== null && species !== this.speciesSetting) {
      this.speciesSetting = species;
      this.emit('setting', species);
    }
    if (decoded && !decoded.ok && !decoded.noReading) {
      this.refuse(packet, decoded.problem, fields);
      return;
    }
    const counted = decoded === null ? 'other' : decoded.ok ? 'decoded' : 'noReading';
    this.counts = {
      ...this.counts,
      received: this.counts.received + 1,
      [counted]: this.counts[counted] + 1,
    };
    this.emit('notification', {
      ...packet,
      ...fields,
      value: decoded?.ok ? decoded.value : null,
      problem: decoded && !decoded.ok ? decoded.problem : null,
      isOther: decoded === null,
      sequence: this.counts.received,
    });
  }

  protected refuse(packet: Packet, problem: Message, fields: Fields = NOTHING_BESIDE): void {
    this.refuseUnseen(1, problem);
    this.emit('notification', {
      ...packet,
      ...fields,
      value: null,
      problem,
      isOther: false,
      sequence: this.counts.received,
    });
  }

  /** Counts notifications that came but could not be passed on one by one. */
  protected refuseUnseen(count: number, problem: Message): void {
    this.counts = {
      ...this.counts,
      received: this.counts.received + count,
      refused: this.counts.refused + count,
      lastRefusal: problem,
    };
  }
}

export const noMeter = message('meter.state.none');
