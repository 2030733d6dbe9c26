import type { BitsLayout, Layout, NumberLayout, TextLayout } from './layout.ts';
import { numbersInText } from './text-value.ts';
import { octetsOfFormat, placeOf, readableFormats, storageOfFormat } from './value.ts';

/**
 * Every way in which a packet may hold a number, before any scale, and how likely each is beforehand. What it costs is
 * in bits: one more is half as likely. Which formats are common is common practice, no source.
 */
export interface PossibleLayout {
  layout: Layout;
  cost: number;
}

const plain = { exponent: 0, scale: 1, offset: 0 } as const;

/** By format code; what is not here is rare. */
const costOfFormat: Readonly<Record<number, number>> = {
  6: 0,
  22: 0.4,
  20: 0.4,
  14: 0.5,
  4: 0.7,
  23: 0.7,
  8: 1,
  16: 1.1,
  7: 1.2,
  12: 1.3,
  15: 1.4,
  21: 1.4,
};
const RARE = 2.5;
const HIGH_FIRST = 0.7;
const ONE_BIT_FIELD = 2.2;
const ODD_BITS = 0.6;
const LATER_NUMBER = 0.2;
/** Bits of a field that can hold a reading. */
const BITS = [7, 9, 10, 11, 12, 13, 14, 15, 16] as const;
const USUAL_BITS: readonly number[] = [10, 12, 14];

/** Those of a packet like this one. */
export function possibleLayouts(packet: Uint8Array): PossibleLayout[] {
  return [...textLayouts(packet), ...numberLayouts(packet.length), ...bitsLayouts(packet.length)];
}

function numberLayouts(length: number): PossibleLayout[] {
  return readableFormats.flatMap((format) => {
    const octets = octetsOfFormat(format)!;
    const orders = octets === 1 ? ([undefined] as const) : ([undefined, 'high-first'] as const);
    const offsets = Array.from({ length: Math.max(0, length - octets + 1) }, (_, at) => at);
    return offsets.flatMap((byteOffset) =>
      orders.map((byteOrder) => {
        const layout: NumberLayout = { kind: 'number', format, byteOffset, byteOrder, ...plain };
        return {
          layout,
          cost: (costOfFormat[format] ?? RARE) + (byteOrder === undefined ? 0 : HIGH_FIRST),
        };
      }),
    );
  });
}

/** Those that are not whole bytes in one of the SIG's formats anyway. */
function bitsLayouts(length: number): PossibleLayout[] {
  const made: PossibleLayout[] = [];
  for (const bits of BITS) {
    for (let firstBit = 0; firstBit + bits <= 8 * length; firstBit++) {
      if (bits % 8 === 0 && firstBit % 8 === 0) continue;
      for (const byteOrder of [undefined, 'high-first'] as const) {
        // A signed one with a reading, which is above zero, is an unsigned one of a bit less.
        const layout: BitsLayout = { kind: 'bits', firstBit, bits, signed: false, byteOrder, ...plain };
        const cost =
          ONE_BIT_FIELD +
          (USUAL_BITS.includes(bits) ? 0 : ODD_BITS) +
          (byteOrder === undefined ? 0 : HIGH_FIRST);
        made.push({ layout, cost });
      }
    }
  }
  return made;
}

/** From the first byte on, and from where text begins behind other bytes. */
function textLayouts(packet: Uint8Array): PossibleLayout[] {
  const starts = isText(packet[0]) ? [0] : [];
  for (let at = 1; at < packet.length; at++) {
    if (isText(packet[at]) && !isText(packet[at - 1])) starts.push(at);
  }
  return starts.flatMap((byteOffset) =>
    Array.from({ length: numbersInText(packet.slice(byteOffset)) }, (_, index) => {
      const layout: TextLayout = { kind: 'text', byteOffset, nth: index + 1, ...plain };
      return { layout, cost: LATER_NUMBER * index };
    }),
  );
}

/** ASCII that can be seen, and space. */
const isText = (byte: number | undefined): boolean => byte !== undefined && byte >= 0x20 && byte < 0x7f;

/** The bytes of a packet of some length that a layout reads. */
export function bytesOfLayout(layout: Layout, length: number): { from: number; to: number } {
  const { from, count } = placeOf(layout);
  return { from, to: count === null ? length : from + count };
}

/** Whether it holds whole numbers, which only a scale makes a reading. */
export function isInteger(layout: Layout): boolean {
  if (layout.kind !== 'number') return layout.kind === 'bits';
  const kind = storageOfFormat(layout.format)?.kind;
  return kind === 'unsigned' || kind === 'signed';
}
