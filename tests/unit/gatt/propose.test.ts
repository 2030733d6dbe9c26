import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import { type Proposal, propose } from '../../../shared-core/gatt/propose.ts';
import { decodeLayout, octetsOfFormat } from '../../../shared-core/gatt/value.ts';
import { randomFrom } from '../../faults/random.ts';
import { isRight, KINDS, makeOddMeter, until } from './odd-meters.ts';
import { insertions, typedAt, watched } from './watched-meter.ts';

const source = { kind: 'sent', serviceUuid: 'fff0', characteristicUuid: 'fff1' } as const;
const plain = { exponent: 0, scale: 1, offset: 0 };
const course = insertions(13.4, 25.7, 9.8);
const typed = [0, 1, 2].map((at) => typedAt(course, at));
const ascii = (text: string) => new TextEncoder().encode(text);

/** An integer in so many bytes. */
const integer = (value: number, octets: number, isHighFirst = false): number[] => {
  const bytes = Array.from({ length: octets }, (_, at) => Math.floor(value / 256 ** at) & 255);
  return isHighFirst ? bytes.reverse() : bytes;
};

const numbersOf = (packets: readonly WatchedPacket[], layout: Layout) =>
  packets.map(({ bytes }) => {
    const decoded = decodeLayout(bytes, layout, { unit: 'pct' });
    return decoded.ok ? Number(decoded.value.toPrecision(9)) : null;
  });

/** What the first proposal makes of the packets must be what the true layout makes of them. */
function expectFound(packets: readonly WatchedPacket[], truth: Layout, proposals: readonly Proposal[]): void {
  expect(proposals[0], 'a proposal').toBeDefined();
  expect(numbersOf(packets, proposals[0]!.value)).toEqual(numbersOf(packets, truth));
}

describe('one typed number', () => {
  test('finds tenths in two bytes between a counter, a battery and a temperature', () => {
    const packets = watched(course, 1, (shown, index) =>
      Uint8Array.from([0xa5, index & 255, 76, ...integer(Math.round((shown ?? 0) * 10), 2), 21]),
    );
    const truth: Layout = { kind: 'number', format: 6, byteOffset: 3, ...plain, exponent: -1 };
    const proposals = propose([{ source, packets }], typed.slice(0, 1), 'pct');
    expectFound(packets, truth, proposals);
    expect(proposals[0]).toMatchObject({ source, follows: [true], isEnough: false, isSure: false });
  });

  test('finds the number in a text with a unit', () => {
    const packets = watched(course, 1, (shown) =>
      ascii(`MC=${shown === null ? '--,-' : shown.toFixed(1).replace('.', ',').padStart(4)} % T21`),
    );
    const [best] = propose([{ source, packets }], typed.slice(0, 1), 'pct');
    expect(best!.value).toEqual({ kind: 'text', byteOffset: 0, nth: 1, ...plain });
  });

  test('is found in the place that moves, though another holds the same number by chance', () => {
    const still = { ...source, characteristicUuid: 'fff2' };
    const packets = watched(course, 1, (shown) =>
      Uint8Array.from([9, ...integer(Math.round((shown ?? 0) * 10), 2)]),
    );
    const constant = watched(course, 1, () => Uint8Array.from([134, 0, 0]));
    const [best] = propose(
      [
        { source: still, packets: constant },
        { source, packets },
      ],
      typed.slice(0, 1),
      'pct',
    );
    expect(best!.source).toEqual(source);
  });

  test('finds ohms', () => {
    const packets = watched(course, 1, (shown) =>
      Uint8Array.from(integer(shown === null ? 0xffffffff : Math.round(shown * 1e6), 4)),
    );
    const [best] = propose([{ source, packets }], [{ ...typed[0]!, value: 13.4e6, resolution: 1e5 }], 'ohm');
    expect(best!.value).toMatchObject({ kind: 'number', format: 8, byteOffset: 0, exponent: 0 });
  });

  test('is found when the pins were lifted before it was typed', () => {
    const packets = watched(course, 1, (shown) =>
      Uint8Array.from([9, ...integer(Math.round((shown ?? 0) * 10), 2)]),
    );
    const late = { ...typed[0]!, fromMs: 11_000, toMs: 12_000 };
    const air = Array.from({ length: 40 }, (_, at) => ({
      atMs: 8000 + at * 100,
      bytes: Uint8Array.of(9, 0, 0),
    }));
    const [best] = propose([{ source, packets: [...packets, ...air] }], [late], 'pct');
    expect(best!.value).toMatchObject({ byteOffset: 1, exponent: -1 });
  });

  test('is not found in bytes that never moved, nor in still bits of bytes that did', () => {
    const packets = watched(course, 1, (shown) =>
      Uint8Array.from([134, 0, ...integer(1340, 2), 134, shown === null ? 0 : 32]),
    );
    const proposals = propose([{ source, packets }], typed.slice(0, 1), 'pct');
    for (const { value } of proposals) expect(new Set(numbersOf(packets, value)).size).toBeGreaterThan(1);
    const still = packets.map((packet) => ({ ...packet, bytes: packet.bytes.slice(0, 5) }));
    expect(propose([{ source, packets: still }], typed.slice(0, 1), 'pct')).toEqual([]);
  });

  test('nothing is proposed where nothing was typed or nothing fits', () => {
    const packets = watched(course, 1, () => ascii('?'));
    expect(propose([{ source, packets }], [], 'pct')).toEqual([]);
    expect(propose([{ source, packets }], typed.slice(0, 1), 'pct')).toEqual([]);
    expect(propose([{ source, packets: [] }], typed.slice(0, 1), 'pct')).toEqual([]);
  });
});

describe('several typed numbers', () => {
  const tenths = watched(course, 3, (shown, index) =>
    Uint8Array.from([index & 255, ...integer(Math.round((shown ?? 0) * 10), 2, true), 50]),
  );

  test('two different ones make it sure', () => {
    const [best] = propose([{ source, packets: tenths }], typed.slice(0, 2), 'pct');
    expect(best).toMatchObject({ follows: [true, true], isEnough: true, isSure: true });
  });

  test('of those that no display could tell apart, only the likeliest is offered', () => {
    const dry = insertions(8.44, 17.33);
    const hundredths = watched(dry, 2, (shown) =>
      Uint8Array.from(integer(Math.round((shown ?? 0) * 100), 2)),
    );
    // Beside it, some fit with 0.01 more, and the like.
    expect(propose([{ source, packets: hundredths }], [typedAt(dry, 0), typedAt(dry, 1)], 'pct')).toEqual([
      expect.objectContaining({
        value: { kind: 'number', format: 6, byteOffset: 0, ...plain, exponent: -2 },
      }),
    ]);
  });

  test('the same one twice does not', () => {
    const again = [typed[0]!, { ...typed[0]!, fromMs: 5900, toMs: 6900 }];
    expect(propose([{ source, packets: tenths }], again, 'pct')[0]).toMatchObject({
      isEnough: false,
      isSure: false,
    });
  });

  test('a mistyped one is marked, and the others count', () => {
    const [best] = propose(
      [{ source, packets: tenths }],
      [typed[0]!, { ...typed[1]!, value: 57.2 }, typed[2]!],
      'pct',
    );
    expect(best).toMatchObject({ follows: [true, false, true], isEnough: false, isSure: false });
  });

  test.each([
    [0.2, 0],
    [1 / 16, 0],
    [0.25, 3],
    [0.05, -2.5],
  ])('find a scale of %d and an offset of %d, sure only after one more than it takes', (scale, offset) => {
    const packets = watched(course, 3, (shown) =>
      Uint8Array.from([7, ...integer(Math.max(0, Math.round(((shown ?? 0) - offset) / scale)), 2)]),
    );
    const decimals = scale >= 0.25 ? 0 : 1;
    const numbers = [0, 1, 2].map((at) => typedAt(course, at, decimals));
    const truth: Layout = { kind: 'number', format: 6, byteOffset: 1, ...plain, scale, offset };
    const [sure] = propose([{ source, packets }], numbers, 'pct');
    const wrong = numbersOf(packets, sure!.value).map((value, at) => value! - numbersOf(packets, truth)[at]!);
    const inWood = wrong.filter((_, at) => course(at * 100) !== null);
    expect(Math.max(...inWood.map(Math.abs))).toBeLessThanOrEqual(10 ** -decimals);
    expect(propose([{ source, packets }], numbers.slice(0, 2), 'pct').some(({ isSure }) => isSure)).toBe(
      false,
    );
  });

  test('packets of two kinds: those with the value are told by their first byte', () => {
    const packets = watched(course, 2, (shown, index) =>
      index % 2 === 0
        ? Uint8Array.from([1, ...integer(Math.round((shown ?? 0) * 10), 2)])
        : Uint8Array.from([2, (index * 41) & 255, (index * 89) & 255]),
    );
    const [best] = propose([{ source, packets }], typed.slice(0, 2), 'pct');
    expect(best!.match).toMatchObject({ equals: 1 });
    expect(best!.value).toMatchObject({ byteOffset: 1, exponent: -1 });
  });
});

describe('any layout', () => {
  /** Writes a whole number so that the layout reads it, into bytes of other things. */
  function pack(layout: Layout, stored: number, around: Uint8Array): Uint8Array {
    const bytes = Uint8Array.from(around);
    if (layout.kind === 'text') return ascii(`${'x'.repeat(layout.byteOffset)}${stored} %`);
    const put = (bit: number, on: boolean) => {
      const isHigh = layout.byteOrder === 'high-first';
      const at = bit >> 3;
      const mask = 1 << (isHigh ? 7 - (bit % 8) : bit % 8);
      bytes[at] = on ? bytes[at]! | mask : bytes[at]! & ~mask;
    };
    const [first, bits] =
      layout.kind === 'bits'
        ? [layout.firstBit, layout.bits]
        : [layout.byteOffset * 8, octetsOfFormat(layout.format)! * 8];
    for (let n = 0; n < bits; n++) {
      const isOn = Math.floor(stored / 2 ** n) % 2 === 1;
      put(layout.byteOrder === 'high-first' ? first + bits - 1 - n : first + n, isOn);
    }
    return bytes;
  }

  const numberLayout = fc
    .record({
      format: fc.constantFrom(5, 6, 7, 8, 9, 13, 14, 15, 16, 17),
      byteOffset: fc.integer({ min: 0, max: 6 }),
      byteOrder: fc.constantFrom(undefined, 'high-first' as const),
      exponent: fc.constantFrom(-1, -2, -1),
    })
    .map(
      ({ exponent, ...made }): Layout => ({
        kind: 'number',
        ...plain,
        ...made,
        // Twelve bits hold no hundredths of what wood holds.
        exponent: octetsOfFormat(made.format)! > 2 || [6, 14].includes(made.format) ? exponent : -1,
      }),
    );
  const bitsLayout = fc
    .record({
      firstBit: fc.integer({ min: 0, max: 60 }),
      bits: fc.integer({ min: 12, max: 16 }),
      byteOrder: fc.constantFrom(undefined, 'high-first' as const),
      exponent: fc.constantFrom(-1, -2, -1),
    })
    .map((made): Layout => ({ kind: 'bits', signed: false, ...plain, ...made }));

  const makePackets = ({ layout, around, rests }: Made) => {
    const own = insertions(...rests.map((tenths) => tenths / 10));
    const packets = watched(own, rests.length, (shown, index) => {
      const other = Uint8Array.from(around);
      other[around.length - 1] = index & 255;
      // Bytes of the value that lie on the counter are the value.
      return pack(layout, Math.round((shown ?? 0) / Number(`1e${layout.exponent}`)), other);
    });
    return { packets, numbers: rests.map((_, at) => typedAt(own, at)) };
  };
  type Made = { layout: Layout; around: Uint8Array; rests: number[] };
  const beside = {
    around: fc.uint8Array({ minLength: 12, maxLength: 12 }),
    rests: fc.tuple(
      // Odd: a last bit that is never set cannot be seen.
      fc.integer({ min: 30, max: 90 }).map((half) => 2 * half + 1),
      fc.integer({ min: 200, max: 290 }),
      fc.integer({ min: 300, max: 390 }),
    ),
  };

  test('of whole bytes is read right after two typed numbers, whatever else is in its packets', () => {
    fc.assert(
      fc.property(fc.record({ layout: numberLayout, ...beside }), (made) => {
        const { packets, numbers } = makePackets({ ...made, rests: made.rests.slice(0, 2) });
        expectFound(packets, made.layout, propose([{ source, packets }], numbers, 'pct'));
      }),
      { numRuns: 12, seed: 1 },
    );
  });

  test('of bits is read correctly after three numbers, and nothing else is sure after two', () => {
    fc.assert(
      fc.property(fc.record({ layout: bitsLayout, ...beside }), (made) => {
        const { packets, numbers } = makePackets(made);
        const afterTwo = propose([{ source, packets }], numbers.slice(0, 2), 'pct');
        const truth = numbersOf(packets, made.layout);
        const sure = afterTwo.filter(({ isSure }) => isSure);
        for (const { value } of sure) expect(numbersOf(packets, value)).toEqual(truth);
        expectFound(packets, made.layout, propose([{ source, packets }], numbers, 'pct'));
      }),
      { numRuns: 8, seed: 2 },
    );
  });

  test('bytes that follow no number are never offered as sure', () => {
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        let state = seed | 1;
        const random = () => {
          state = (Math.imul(state, 1_103_515_245) + 12_345) | 0;
          return (state >>> 16) & 255;
        };
        const packets = watched(course, 2, () => Uint8Array.from({ length: 8 }, random));
        const proposals = propose([{ source, packets }], typed.slice(0, 2), 'pct');
        expect(proposals.filter(({ isSure }) => isSure)).toEqual([]);
      }),
      { numRuns: 8 },
    );
  });
});

describe('made-up meters of every kind', () => {
  // `describing.bench.ts` measures more of them.
  test.each(KINDS)(
    '%s: the first is right after two numbers nearly always, and what is sure is right',
    (kind) => {
      const random = randomFrom(7);
      const meters = Array.from({ length: 10 }, () => makeOddMeter(kind, random));
      const right = meters.filter((meter) => {
        const numbers = meter.numbers.slice(0, 2);
        const [best] = propose(until(meter.places, numbers), numbers, 'pct');
        if (best?.isSure) expect(isRight(best, meter), JSON.stringify(meter.truth)).toBe(true);
        return isRight(best, meter);
      });
      expect(right.length).toBeGreaterThanOrEqual(kind === 'scaled' ? 7 : 9);
    },
  );

  test('passing a number for a moment does not count as showing it', () => {
    // A count that runs through every digit before the number: "7 MC= 21,7 %".
    const packets = watched(course, 2, (shown, index) =>
      ascii(`${index % 10} MC=${(shown ?? 0).toFixed(1).replace('.', ',').padStart(5)} % T21`),
    );
    const proposals = propose([{ source, packets }], typed.slice(0, 2), 'pct');
    expect(proposals.map(({ value }) => value.kind)).toEqual(['text']);
    expect(proposals[0]!.isSure).toBe(true);
  });

  test('at most three are offered', () => {
    const packets = watched(course, 1, (shown) => Uint8Array.from(integer(Math.round((shown ?? 0) * 10), 2)));
    expect(propose([{ source, packets }], typed.slice(0, 1), 'pct').length).toBeLessThanOrEqual(3);
  });
});
