import type { AttHow } from './gatt-server.ts';

/** Packets of an HCI serial line (Core Specification, Vol 4 Part A): one octet for the kind, then a header with its length. */
export const commandPacket = 1;
export const aclPacket = 2;
export const scoPacket = 3;
export const eventPacket = 4;
export const leMetaEvent = 0x3e;

const connectionComplete = 0x01;

/** Handle of the link that this event says is up (Core Specification, Vol 4 Part E 7.7.65.1); null for any other packet. */
export const handleOfLink = (packet: Buffer): number | null =>
  packet[0] === eventPacket &&
  packet[1] === leMetaEvent &&
  packet[3] === connectionComplete &&
  packet[4] === 0
    ? packet.readUInt16LE(5)
    : null;

const attChannel = 0x0004;
/** That a packet goes on where the one before ended (Core Specification, Vol 4 Part E 5.4.2). */
const goesOn = 0x1000;

/**
 * One ATT packet in an L2CAP frame (Core Specification, Vol 3 Part A 3.1), as packets for the controller.
 * @param handle  of the link
 */
export function attPackets(handle: number, bytes: Buffer, how: AttHow): Buffer[] {
  const frame = Buffer.alloc(4 + bytes.length);
  frame.writeUInt16LE(bytes.length, 0);
  frame.writeUInt16LE(attChannel, 2);
  bytes.copy(frame, 4);
  const cut = how === 'whole' ? frame.length : 4 + Math.ceil(bytes.length / 2);
  return [frame.subarray(0, cut), ...(how === 'halves' ? [frame.subarray(cut)] : [])].map((part, index) => {
    const head = Buffer.alloc(5);
    head[0] = aclPacket;
    head.writeUInt16LE(handle | (index === 0 ? 0 : goesOn), 1);
    head.writeUInt16LE(part.length, 3);
    return Buffer.concat([head, part]);
  });
}

/** Cuts a stream of bytes into packets. */
export class H4Framing {
  #rest = Buffer.alloc(0);

  packetsIn(bytes: Buffer): Buffer[] {
    this.#rest = Buffer.concat([this.#rest, bytes]);
    const packets: Buffer[] = [];
    for (;;) {
      const length = packetLength(this.#rest);
      if (length === null || this.#rest.length < length) return packets;
      packets.push(Buffer.from(this.#rest.subarray(0, length)));
      this.#rest = this.#rest.subarray(length);
    }
  }
}

/** @returns null when more bytes are needed to know */
function packetLength(bytes: Buffer): number | null {
  switch (bytes[0]) {
    case undefined:
      return null;
    case commandPacket:
      return bytes.length < 4 ? null : 4 + bytes[3]!;
    case aclPacket:
      return bytes.length < 5 ? null : 5 + bytes.readUInt16LE(3);
    case scoPacket:
      return bytes.length < 4 ? null : 4 + bytes[3]!;
    case eventPacket:
      return bytes.length < 3 ? null : 3 + bytes[2]!;
    default:
      throw new Error(`no H4 packet begins with ${bytes[0]}`);
  }
}
