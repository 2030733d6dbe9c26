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
