/**
 * Stands in for the native HCI socket module, for both sides of the tests: it speaks H4 over btvirt's unix socket
 * (H4_PATH), as a controller on a serial line would. Everything above the HCI is the libraries' own code.
 *
 * A file named by RADIO_CONTROL lets a test make this adapter behave as real ones do and emulated ones do not: go
 * away, be forbidden, never complete a connection, report a signal strength.
 */
import { EventEmitter } from 'node:events';
import { readFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';

/** What RADIO_CONTROL holds, as JSON. */
export interface RadioControl {
  adapter: 'on' | 'off' | 'refused';
  /** `hold`: a meter that was heard but went silent. A real controller goes on trying; btvirt would give up at once. */
  connecting: 'answer' | 'hold';
  /** Signal strength to report for every advertisement; btvirt itself says "not available" (127). */
  rssiDbm: number;
}

const commandPacket = 1;
const aclPacket = 2;
const scoPacket = 3;
const eventPacket = 4;
const leMetaEvent = 0x3e;
const advertisingReport = 0x02;
const createConnection = 0x200d;

class H4Socket extends EventEmitter {
  #socket: Socket | null = null;
  #received = Buffer.alloc(0);

  bindRaw(): number {
    return this.#open();
  }
  bindUser(): number {
    return this.#open();
  }
  bindControl(): void {}
  start(): void {}
  setFilter(): void {}
  stop(): void {
    this.#socket?.destroy();
    this.#socket = null;
  }

  isDevUp(): boolean {
    return this.#socket !== null && !this.#socket.destroyed && control().adapter !== 'off';
  }

  write(packet: Buffer): void {
    const { adapter, connecting } = control();
    if (adapter === 'refused') {
      // What the kernel answers to a process without cap_net_raw.
      this.emit('error', Object.assign(new Error('EPERM, Operation not permitted'), { code: 'EPERM' }));
      return;
    }
    if (adapter === 'off') return;
    const opcode = packet[0] === commandPacket ? packet.readUInt16LE(1) : 0;
    if (opcode === createConnection && connecting === 'hold') return;
    this.#socket?.write(packet);
  }

  #open(): number {
    this.#socket ??= connect(process.env.H4_PATH!)
      .on('data', (bytes) => this.#receive(bytes))
      .on('error', (error) => console.error(`H4: ${error.message}`));
    return 0;
  }

  #receive(bytes: Buffer): void {
    this.#received = Buffer.concat([this.#received, bytes]);
    for (;;) {
      const length = packetLength(this.#received);
      if (length === null || this.#received.length < length) return;
      const packet = Buffer.from(this.#received.subarray(0, length));
      this.#received = this.#received.subarray(length);
      if (control().adapter === 'off') continue;
      setSignalStrength(packet);
      this.emit('data', packet);
    }
  }
}

/** @returns null when more bytes are needed to know */
function packetLength(bytes: Buffer): number | null {
  if (bytes.length < 5) return bytes.length >= 3 && bytes[0] === eventPacket ? 3 + bytes[2]! : null;
  switch (bytes[0]) {
    case eventPacket:
      return 3 + bytes[2]!;
    case aclPacket:
      return 5 + bytes.readUInt16LE(3);
    case scoPacket:
      return 4 + bytes[3]!;
    default:
      throw new Error(`no H4 packet begins with ${bytes[0]}`);
  }
}

function setSignalStrength(packet: Buffer): void {
  if (packet[0] !== eventPacket || packet[1] !== leMetaEvent || packet[3] !== advertisingReport) return;
  // btvirt sends one report an event; its signal strength is the last byte.
  packet.writeInt8(control().rssiDbm, packet.length - 1);
}

function control(): RadioControl {
  const usual: RadioControl = { adapter: 'on', connecting: 'answer', rssiDbm: 127 };
  const file = process.env.RADIO_CONTROL;
  if (!file) return usual;
  return { ...usual, ...(JSON.parse(readFileSync(file, 'utf8')) as Partial<RadioControl>) };
}

// The libraries `require` the class itself.
export { H4Socket as 'module.exports' };
