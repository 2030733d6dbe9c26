import { createServer, connect as open, type Server } from 'node:net';
import { monotonicMs } from '../../electron/monotonic.ts';
import { aclPacket, H4Framing } from './h4-framing.ts';

/** The ATT channel, and the opcode of a notification (Core Specification, Vol 3 Part A 2.1 and Part F 3.4.7.1). */
const attChannel = 0x0004;
const notification = 0x1b;

/** Given each value, uint16, and the machine's monotonic clock, ms. */
type NoteValue = (value: number, atMs: number) => void;

/**
 * Stands between a host (the app's radio process, or a meter's server) and its emulated adapter, and notes when each notified
 * value is handed to the host: the moment at which a real controller would have brought it.
 * @param path  where the host connects, as H4_PATH
 * @param left  given each value that the host hands to its adapter
 */
export function noteArrivals(
  path: string,
  adapterPath: string,
  heard: NoteValue,
  left: NoteValue = () => undefined,
): Promise<Server> {
  const server = createServer((host) => {
    const adapter = open(adapterPath);
    const noteIn = noting(heard);
    const noteOut = noting(left);
    adapter.on('data', (bytes) => noteIn(bytes, () => host.write(bytes)));
    host.on('data', (bytes) => noteOut(bytes, () => adapter.write(bytes)));
    for (const [one, other] of [
      [host, adapter],
      [adapter, host],
    ] as const)
      one.on('error', () => other.destroy()).on('close', () => other.destroy());
  });
  return new Promise((resolve) => server.listen(path, () => resolve(server)));
}

function noting(note: NoteValue) {
  const framing = new H4Framing();
  return (bytes: Buffer, passOn: () => void): void => {
    const atMs = monotonicMs();
    passOn();
    for (const packet of framing.packetsIn(bytes)) {
      const value = notifiedValue(packet);
      if (value !== null) note(value, atMs);
    }
  };
}

/** Octets: kind, handle and flags (2), length (2), L2CAP length (2), channel (2), opcode, attribute (2), value. */
function notifiedValue(packet: Buffer): number | null {
  if (packet[0] !== aclPacket || packet.length < 14) return null;
  if (packet.readUInt16LE(7) !== attChannel || packet[9] !== notification) return null;
  return packet.readUInt16LE(12);
}
