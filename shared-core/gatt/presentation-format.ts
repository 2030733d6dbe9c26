import type { Outcome } from '../outcome.ts';
import { message } from '../words/message.ts';

/** What a Characteristic Presentation Format descriptor (0x2904) holds about a value. */
export interface PresentationFormat {
  /** Code of the SIG's format table, 1 to 27. */
  format: number;
  /** Power of ten that the integer is multiplied by; means nothing for the formats that take none. */
  exponent: number;
  /** Assigned number of the unit, such as 0x27AD for percentage. */
  unit: number;
  /** 1 where the SIG itself numbers the descriptions. */
  namespace: number;
  /** Number within the namespace, 0 when unknown. */
  description: number;
}

const lengthBytes = 7;
const lastFormat = 27;

/**
 * Reads the seven bytes of a 0x2904 descriptor: format (uint8), exponent (sint8), unit (uint16), namespace (uint8),
 * description (uint16), little-endian.
 * Source: Bluetooth SIG, Characteristic Presentation Format (Core Specification, Vol 3 Part G 3.3.3.5).
 * @returns the fields; a problem when the length is wrong or the SIG has reserved the format
 */
export function parsePresentationFormat(bytes: Uint8Array): Outcome<PresentationFormat> {
  if (bytes.length !== lengthBytes) {
    return {
      ok: false,
      problem: message('meter.self.format-length', { sent: bytes.length, needed: lengthBytes }),
    };
  }
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const format = view.getUint8(0);
  if (format === 0 || format > lastFormat) {
    return { ok: false, problem: message('meter.self.format-undefined', { format }) };
  }
  return {
    ok: true,
    value: {
      format,
      exponent: view.getInt8(1),
      unit: view.getUint16(2, true),
      namespace: view.getUint8(4),
      description: view.getUint16(5, true),
    },
  };
}
