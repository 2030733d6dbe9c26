import { create } from 'zustand';
import type { EventData } from '../../shared-core/contract/events.ts';
import { bytesOfHex } from '../../shared-core/gatt/bytes-of-hex.ts';
import {
  type MeterDescription,
  type MeterFields,
  NO_FIELDS,
  type Start,
} from '../../shared-core/gatt/meter-description.ts';
import type { WatchedPacket } from '../../shared-core/gatt/movement.ts';
import { isBeside, type ShownNumber } from '../../shared-core/gatt/shown-number.ts';
import { keyOfFrom, type PacketFrom } from '../../shared-core/gatt/source.ts';
import { bridge } from '../data/bridge.ts';
import { useMeter } from './meter.ts';

/** What came from one place since the meter was connected, oldest first, on this window's clock. */
export interface HeardPlace {
  from: PacketFrom;
  packets: readonly WatchedPacket[];
}

/** Of one place: a minute and a half of a lively meter. */
const MOST_PACKETS = 900;

/** What the display of a meter counts in. */
export type DisplayUnit = 'pct' | 'kiloohm' | 'megaohm' | 'gigaohm';

/** Kept while a person is on another page. */
interface Watching {
  /** By place, while a meter waits to be described. */
  places: ReadonlyMap<string, HeardPlace>;
  /** Typed off its display: what came beside them is kept while a person walks to other wood. */
  numbers: readonly ShownNumber[];
  unit: DisplayUnit;
  /** Which proposal a person chose; null for the first. */
  chosenKey: string | null;
  /** What else is in the packets, as it was found beside one proposal. */
  beside: { key: string | null; fields: MeterFields };
  start: Start | null;
  showsBytes: boolean;
  /** As it was read before it was to be described again. */
  before: MeterDescription | null;
}

const nothing: Watching = {
  places: new Map(),
  numbers: [],
  unit: 'pct',
  chosenKey: null,
  beside: { key: null, fields: NO_FIELDS },
  start: null,
  showsBytes: false,
  before: null,
};

export const useWatching = create<Watching>()(() => nothing);

function hear({ nowMs, packets }: EventData<'meter.packets'>): void {
  const ahead = nowMs - performance.now();
  const { places: known, numbers } = useWatching.getState();
  const places = new Map(known);
  for (const { from, bytesHex, atMs } of packets) {
    const key = keyOfFrom(from);
    const packet = { atMs: atMs - ahead, bytes: bytesOfHex(bytesHex) };
    const before = places.get(key)?.packets ?? [];
    const kept = before
      .slice(0, 1 - MOST_PACKETS)
      .filter((each) => numbers.some((number) => isBeside(each.atMs, number)));
    places.set(key, { from, packets: [...kept, ...before.slice(1 - MOST_PACKETS), packet] });
  }
  useWatching.setState({ places });
}

/** Listens to what is to be described from now on. */
export function followWatching(): () => void {
  const stops = [
    bridge().on('meter.packets', hear),
    // Another meter, or none, or one that is described: nothing of it counts for the next.
    useMeter.subscribe(({ state }, before) => {
      const isOther = state?.deviceId !== before.state?.deviceId;
      // A live one that is to be watched again has lost its description, and comes to a stop a moment later.
      const isRead = state?.phase === 'live' && state.description !== null;
      if (isOther || isRead) useWatching.setState(nothing);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}
