import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parsePresentationFormat } from '../../../shared-core/gatt/presentation-format.ts';

const bytes = (hex: string) => Uint8Array.from(Buffer.from(hex.replaceAll('-', ''), 'hex'));

describe('Characteristic Presentation Format, 0x2904', () => {
  // Worked example of a peripheral vendor's data sheet (Bluefruit LE AT commands, GATTADDCHAR, looked up):
  // "PRESENTATION=17-00-AC-27-01-00-00": FLOAT, exponent 0, degrees Fahrenheit 0x27AC, namespace SIG, no description.
  test('reads the published example 17-00-AC-27-01-00-00', () => {
    expect(parsePresentationFormat(bytes('17-00-AC-27-01-00-00'))).toEqual({
      ok: true,
      value: { format: 23, exponent: 0, unit: 0x27ac, namespace: 1, description: 0 },
    });
  });

  // Layout: Bluetooth SIG, Characteristic Presentation Format: the exponent is a sint8, the others little-endian.
  test('reads the exponent as signed and the description as little-endian', () => {
    expect(parsePresentationFormat(bytes('06-fe-ad-27-01-06-01'))).toEqual({
      ok: true,
      value: { format: 6, exponent: -2, unit: 0x27ad, namespace: 1, description: 0x0106 },
    });
  });

  test.each([0, 6, 8])('refuses %i bytes with the number needed', (length) => {
    expect(parsePresentationFormat(new Uint8Array(length).fill(4))).toEqual({
      ok: false,
      problem: { code: 'meter.self.format-length', facts: { sent: length, needed: 7 } },
    });
  });

  // Bluetooth SIG, Format Types: 0x00 and 0x1C to 0xFF are reserved for future use.
  test.each(['00', '1c', 'ff'])('refuses the reserved format 0x%s', (format) => {
    expect(parsePresentationFormat(bytes(`${format}00ad27010000`))).toEqual({
      ok: false,
      problem: { code: 'meter.self.format-undefined', facts: { format: Number.parseInt(format, 16) } },
    });
  });

  test('answers whatever bytes come', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 20 }), (any) => {
        expect(parsePresentationFormat(any).ok).toBe(any.length === 7 && any[0]! >= 1 && any[0]! <= 27);
      }),
    );
  });
});
