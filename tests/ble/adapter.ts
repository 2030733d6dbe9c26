/**
 * The adapter between the app's radio process and btvirt, a separate process: `adapter.ts <socket> <btvirt's socket>`.
 * When the radio process is gone without a goodbye, its links end, as the system and the link's supervision time limit
 * see to with a real adapter; btvirt would keep them forever.
 */
import { connect, createServer, type Socket } from 'node:net';
import { commandPacket, eventPacket, H4Framing, handleOfLink } from './h4-framing.ts';

const disconnectionComplete = 0x05;

/** HCI Disconnect, "remote user terminated connection" (Core Specification, Vol 4 Part E 7.1.6). */
const disconnectCommand = (handle: number) =>
  Buffer.from([commandPacket, 0x06, 0x04, 3, handle & 0xff, handle >> 8, 0x13]);

/** Tracks the handles of the links that are up. Layouts: Core Specification, Vol 4 Part E 7.7.5 and 7.7.65.1. */
function trackLinks(packet: Buffer, links: Set<number>): void {
  if (packet[0] !== eventPacket) return;
  if (packet[1] === disconnectionComplete) links.delete(packet.readUInt16LE(4));
  const made = handleOfLink(packet);
  if (made !== null) links.add(made);
}

function relay(host: Socket, btvirtPath: string): void {
  const controller = connect(btvirtPath);
  const framing = new H4Framing();
  const links = new Set<number>();
  let hostGone = false;
  // btvirt looks at a closed socket before it reads what was written to it, so the answers are waited for.
  const closeWhenFree = () => {
    if (hostGone && links.size === 0) controller.destroy();
  };
  controller.on('data', (bytes) => {
    for (const packet of framing.packetsIn(bytes)) trackLinks(packet, links);
    if (!hostGone) host.write(bytes);
    closeWhenFree();
  });
  controller.on('error', () => host.destroy());
  controller.on('close', () => host.destroy());
  host.on('data', (bytes) => controller.write(bytes));
  host.on('error', () => undefined);
  host.on('close', () => {
    hostGone = true;
    for (const handle of links) controller.write(disconnectCommand(handle));
    closeWhenFree();
  });
}

const [socketPath, btvirtPath] = process.argv.slice(2);
createServer((host) => relay(host, btvirtPath!)).listen(socketPath);
process.on('disconnect', () => process.exit(0));
