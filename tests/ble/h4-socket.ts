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
import { commandPacket, eventPacket, H4Framing, leMetaEvent } from './h4-framing.ts';

/** What RADIO_CONTROL holds, as JSON. */
export interface RadioControl {
  adapter: 'on' | 'off' | 'refused';
  /** `hold`: a meter that was heard but went silent. A real controller goes on trying; btvirt would give up at once. */
  connecting: 'answer' | 'hold';
  /** Signal strength to report for every advertisement; btvirt itself reports "not available" (127). */
  rssiDbm: number;
}

const createConnection = 0x200d;

class H4Socket extends EventEmitter {
  #socket: Socket | null = null;
  readonly #framing = new H4Framing();

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
    for (const packet of this.#framing.packetsIn(bytes)) {
      if (control().adapter === 'off') continue;
      setSignalStrength(packet);
      // One by one, as the native module does: a listener that throws must not take the next packet with it.
      setImmediate(() => this.emit('data', packet));
    }
  }
}

const advertisingReport = 0x02;

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
