import { isReadableFormat } from '../../../shared-core/gatt/value.ts';

const names: Readonly<Record<number, string>> = {
  2: '2 bits, unsigned',
  3: '4 bits, unsigned',
  4: '8 bits, unsigned',
  5: '12 bits, unsigned',
  6: '16 bits, unsigned',
  7: '24 bits, unsigned',
  8: '32 bits, unsigned',
  9: '48 bits, unsigned',
  10: '64 bits, unsigned',
  12: '8 bits, signed',
  13: '12 bits, signed',
  14: '16 bits, signed',
  15: '24 bits, signed',
  16: '32 bits, signed',
  17: '48 bits, signed',
  18: '64 bits, signed',
  20: '32-bit floating point (IEEE 754)',
  21: '64-bit floating point (IEEE 754)',
  22: '16-bit SFLOAT (IEEE 11073)',
  23: '32-bit FLOAT (IEEE 11073)',
  25: 'Text (UTF-8)',
};

/** A format code in words; the code itself where it is one that cannot be read as a number. */
export const formatWords = (format: number): string => names[format] ?? `format ${format}`;

/** The formats that a person can choose, by the SIG's code. */
export const readableFormats: readonly number[] = Object.keys(names).map(Number).filter(isReadableFormat);
