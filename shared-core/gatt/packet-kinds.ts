import type { Condition, Layout } from './layout.ts';
import type { WatchedPacket } from './movement.ts';
import type { Source } from './source.ts';

/** What was watched of one source, oldest first. */
export interface WatchedSource {
  source: Source;
  packets: readonly WatchedPacket[];
}

/** One kind of packet of a source. */
export interface PacketKind {
  source: Source;
  match: Condition | null;
  packets: readonly WatchedPacket[];
}

/** The source as it is, and its packets by kind where their first byte says the kind. */
export function kindsOf({ source, packets }: WatchedSource): PacketKind[] {
  const whole: PacketKind = { source, match: null, packets };
  const byFirst = new Map<number | undefined, WatchedPacket[]>();
  for (const packet of packets) {
    const own = byFirst.get(packet.bytes[0]);
    if (own) own.push(packet);
    else byFirst.set(packet.bytes[0], [packet]);
  }
  const changes = packets.filter(({ bytes }, at) => at > 0 && bytes[0] !== packets[at - 1]!.bytes[0]);
  const isByKind =
    byFirst.size <= 6 &&
    changes.length * 4 >= packets.length &&
    [...byFirst.values()].every((own) => own.length >= 3);
  if (!isByKind) return [whole];
  const split = [...byFirst].flatMap(([first, own]): PacketKind[] => {
    if (first === undefined) return [];
    return [{ source, match: { layout: firstByte, equals: first }, packets: own }];
  });
  return [whole, ...split];
}

const firstByte: Layout = { kind: 'number', format: 4, byteOffset: 0, exponent: 0, scale: 1, offset: 0 };
