import type { MeterState } from '../../../shared-core/contract/meter.ts';
import { type Movement, movementOf, type WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import { fromOf, isFrom, keyOfFrom, type PacketFrom, type Source } from '../../../shared-core/gatt/source.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { HeardPlace } from '../../stores/watching.ts';

/** A place that a connected meter may send its reading from. */
export interface ShownPlace {
  key: string;
  source: Source;
  /** As the meter describes it; its number in the list where it does not. */
  name: string | Message;
  packets: readonly WatchedPacket[];
  movement: Movement;
}

/** Those that may be chosen by hand, with the one that is read now. */
export function placesToChoose(
  state: MeterState,
  heard: ReadonlyMap<string, HeardPlace>,
  source: Source | null,
): ShownPlace[] {
  const places = shownPlaces(state, heard);
  if (source === null || places.some((place) => isFrom(source, fromOf(place.source)))) return places;
  const from = fromOf(source);
  const key = keyOfFrom(from);
  const name = nameOf(from, places.length + 1);
  return [...places, { key, source, name, packets: [], movement: movementOf([]) }];
}

/** How often a value that does not come by itself is read, ms. */
const READ_EVERY_MS = 500;

/** All places of a meter, those that move most with its pins first. */
export function shownPlaces(
  { characteristics }: MeterState,
  heard: ReadonlyMap<string, HeardPlace>,
): ShownPlace[] {
  const offered = characteristics
    .filter(({ canNotify }) => canNotify)
    .map((each) => ({ from: { kind: 'characteristic', ...uuidsOf(each) } as const, ...each }));
  const keys = new Set(offered.map(({ from }) => keyOfFrom(from)));
  const others = [...heard].filter(([key]) => !keys.has(key)).map(([, { from }]) => ({ from }));
  const places = [...offered, ...others].map((place, index): ShownPlace => {
    const key = keyOfFrom(place.from);
    const packets = heard.get(key)?.packets ?? [];
    const own = 'userDescription' in place ? place.userDescription : null;
    return {
      key,
      source: sourceOf(place.from, 'canNotify' in place),
      name: own || nameOf(place.from, index + 1),
      packets,
      movement: movementOf(packets),
    };
  });
  return places.toSorted(
    (a, b) => b.movement.size - a.movement.size || Math.sign(b.packets.length) - Math.sign(a.packets.length),
  );
}

const uuidsOf = ({
  serviceUuid,
  characteristicUuid,
}: {
  serviceUuid: string;
  characteristicUuid: string;
}) => ({
  serviceUuid,
  characteristicUuid,
});

function sourceOf(from: PacketFrom, isSent: boolean): Source {
  if (from.kind !== 'characteristic') return from;
  return isSent
    ? { kind: 'sent', ...uuidsOf(from) }
    : { kind: 'read', ...uuidsOf(from), everyMs: READ_EVERY_MS };
}

const nameOf = (from: PacketFrom, number: number): Message =>
  message(from.kind === 'characteristic' ? 'watch.place' : 'watch.place-advertised', { number });

/** What a person sees of its motion. */
export function motionOf({
  packets,
  movement,
}: ShownPlace): 'moves' | 'hardly' | 'counts' | 'still' | 'silent' {
  if (packets.length === 0) return 'silent';
  if (movement.size >= MOVES_BITS) return 'moves';
  if (movement.size > 0) return 'hardly';
  return movement.motions.includes('counts') ? 'counts' : 'still';
}

/** Its range is more than three times its noise. */
const MOVES_BITS = 2;
