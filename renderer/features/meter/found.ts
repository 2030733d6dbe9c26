import {
  type MeterDescription,
  type MeterFields,
  NO_FIELDS,
  plainDescription,
} from '../../../shared-core/gatt/meter-description.ts';
import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import { decodePacket } from '../../../shared-core/gatt/packet.ts';
import type { Proposal } from '../../../shared-core/gatt/propose.ts';
import { fromOf, keyOfFrom } from '../../../shared-core/gatt/source.ts';
import type { HeardPlace } from '../../stores/watching.ts';

/** A proposal with what came from its place. */
export interface Found {
  key: string;
  proposal: Proposal;
  description: MeterDescription;
  /** Those of the kind that has the value, oldest first. */
  packets: readonly WatchedPacket[];
}

/** Beyond this a display shows no moisture content; the resistance has no such limit. */
const RANGES = { pct: { min: 0, max: 100 }, ohm: { min: 0, max: 1e15 } } as const;

export function foundOf(proposal: Proposal, heard: ReadonlyMap<string, HeardPlace>): Found {
  const { source, match, value, unit } = proposal;
  const description = descriptionOf(proposal, NO_FIELDS);
  const packets = heard.get(keyOfFrom(fromOf(source)))?.packets ?? [];
  return {
    key: JSON.stringify({ source, match, value, unit }),
    proposal,
    description,
    packets:
      match === null
        ? packets
        : packets.filter(({ bytes }) => decodePacket(bytes, description).value !== null),
  };
}

/** How to read the meter where the proposal is right. */
export const descriptionOf = (
  { source, match, value, unit }: Proposal,
  fields: MeterFields,
): MeterDescription => ({
  ...plainDescription({ source, value, unit, range: RANGES[unit], origin: 'mapped-by-hand' }),
  match,
  fields,
});

export const newestOf = ({ packets }: Found): Uint8Array | null => packets.at(-1)?.bytes ?? null;
