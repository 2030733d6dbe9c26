import type { Peripheral } from '@abandonware/noble';

/** What noble's HCI bindings hold of a link and do not pass on. Those for Windows and macOS have none of it. */
export interface NobleLinks {
  _bindings?: {
    _handles?: Record<string, number | string>;
    _aclStreams?: Record<string, NobleStream>;
    _gatts?: Record<string, NobleGatt>;
  };
}
interface NobleStream {
  on(event: 'data', listener: (channel: number, data: Buffer) => void): void;
  on(event: 'encryptFail' | 'encrypt', listener: (isEncrypted?: unknown) => void): void;
  encrypt(): void;
}
interface NobleGatt {
  _security: string;
  _currentCommand: { buffer: Buffer } | null;
  writeAtt(data: Buffer): void;
}

const attChannel = 0x0004;
/** Core Specification, Vol 3 Part F 3.4.1.1: opcode, the request's opcode, its handle, the error's code. */
const errorResponse = 0x01;
const errorOctets = 5;
/** A meter whose code is to be typed, or that shows nothing, is not waited for. */
const pairingWithinMs = 5000;

/** What a connected meter refuses, which noble takes for no answer. */
export class LinkEar {
  /** It asked for pairing, which has not come about. */
  isUnpaired = false;
  readonly #waiting = new Set<{ opcodes: readonly number[]; reject: (error: Error) => void }>();

  constructor(noble: NobleLinks, peripheral: Peripheral) {
    const { _handles, _aclStreams, _gatts } = noble._bindings ?? {};
    const handle = _handles?.[peripheral.id];
    const stream = handle === undefined ? undefined : _aclStreams?.[handle];
    const gatt = handle === undefined ? undefined : _gatts?.[handle];
    if (stream === undefined || gatt === undefined) return;
    stream.on('data', (channel, data) => {
      if (channel === attChannel && data[0] === errorResponse && data.length === errorOctets)
        this.#refused(data[1]!, data[4]!, gatt._security);
    });
    this.#followPairing(stream, gatt);
  }

  /**
   * Waits for noble's answer, or the meter's word that it refuses.
   * @param opcodes of the requests that noble makes of it
   */
  unlessRefused<T>(answer: Promise<T>, opcodes: readonly number[]): Promise<T> {
    return new Promise<T>((resolve, reject) => {
      const waiting = { opcodes, reject };
      this.#waiting.add(waiting);
      answer.then(resolve, reject).finally(() => this.#waiting.delete(waiting));
    });
  }

  #refused(opcode: number, code: number, security: string): void {
    // noble asks for pairing first, and then asks again.
    if (asksForPairing(code) && security !== 'medium') return;
    for (const waiting of this.#waiting) {
      if (!waiting.opcodes.includes(opcode)) continue;
      this.#waiting.delete(waiting);
      waiting.reject(new Error(`the meter refuses: ATT error ${code} to request ${opcode}`));
    }
  }

  /** noble waits forever where pairing fails. Here the request is made again, so that the meter's refusal answers it. */
  #followPairing(stream: NobleStream, gatt: NobleGatt): void {
    let waiting: NodeJS.Timeout | undefined;
    const fail = () => {
      clearTimeout(waiting);
      if (gatt._security === 'medium') return;
      gatt._security = 'medium';
      if (gatt._currentCommand !== null) gatt.writeAtt(gatt._currentCommand.buffer);
    };
    const encrypt = stream.encrypt.bind(stream);
    stream.encrypt = () => {
      this.isUnpaired = true;
      clearTimeout(waiting);
      waiting = setTimeout(fail, pairingWithinMs);
      encrypt();
    };
    stream.on('encryptFail', fail);
    stream.on('encrypt', (isEncrypted) => {
      if (!isEncrypted) return;
      this.isUnpaired = false;
      clearTimeout(waiting);
    });
  }
}

/** Insufficient authentication, authorization or encryption (Core Specification, Vol 3 Part F 3.4.1.1). */
const asksForPairing = (code: number) => code === 0x05 || code === 0x08 || code === 0x0f;
