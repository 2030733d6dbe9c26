/** What typed numbers say of a made-up meter of few bytes, where little else can show the same. */
import { describe, expect, test } from 'vitest';
import type { WatchedPacket } from '../../../shared-core/gatt/movement.ts';
import { possibleLayouts } from '../../../shared-core/gatt/possible-layouts.ts';
import { propose, proposeInTurns } from '../../../shared-core/gatt/propose.ts';
import { isBeside, type ShownNumber } from '../../../shared-core/gatt/shown-number.ts';

const source = { kind: 'sent', serviceUuid: 'fff0', characteristicUuid: 'fff1' } as const;

/** Boards of 8 s: a second of air, six of the number at rest, a second of air; five packets a second. */
const steady = (
  pack: (stored: number | null, index: number) => readonly number[],
  ...stored: number[]
): WatchedPacket[] =>
  Array.from({ length: stored.length * 40 }, (_, index) => {
    const at = index % 40;
    const isIn = at >= 5 && at < 35;
    return {
      atMs: index * 200,
      bytes: Uint8Array.from(pack(isIn ? stored[Math.floor(index / 40)]! : null, index)),
    };
  });
const typed = (value: number, board = 0, resolution = 0.1): ShownNumber => ({
  value,
  resolution,
  fromMs: board * 8000 + 5500,
  toMs: board * 8000 + 6700,
});
const byte = (stored: number | null) => [stored ?? 0];
const found = (packets: readonly WatchedPacket[], ...shown: ShownNumber[]) =>
  propose([{ source, packets }], shown, 'pct');

describe('what came belongs to a typed number', () => {
  test('from 20 s before it was begun until it was typed', () => {
    const number = { fromMs: 30_000, toMs: 31_000 };
    const at = [9999, 10_000, 30_500, 31_000, 31_001];
    expect(at.map((ms) => isBeside(ms, number))).toEqual([false, true, true, true, false]);
  });

  test('where the pins were lifted by then, too, but not long ago', () => {
    const packets = [
      ...steady(byte, 134),
      ...Array.from({ length: 120 }, (_, at) => ({ atMs: 8000 + at * 200, bytes: Uint8Array.of(0) })),
    ];
    const late = (fromMs: number) => found(packets, { ...typed(13.4), fromMs, toMs: fromMs + 1000 });
    expect(late(26_000)[0]).toMatchObject({ value: { format: 4, exponent: -1 }, follows: [true] });
    expect(late(28_000)).toEqual([]);
  });

  test('however long the pins are in the air since, without a number', () => {
    const letters = (text: string) => [...new TextEncoder().encode(text)];
    const air = Array.from({ length: 400 }, (_, at) => ({
      atMs: 16_000 + at * 100,
      bytes: Uint8Array.from(letters('--%')),
    }));
    const packets = [...steady((stored) => letters(stored === null ? '--%' : `${stored}%`), 13, 26), ...air];
    expect(found(packets, typed(13, 0, 1), typed(26, 1, 1))[0]).toMatchObject({
      value: { kind: 'text', nth: 1 },
    });
  });

  test('where nothing was sent until then, it is not found', () => {
    const packets = steady(byte, 134).map((packet) => ({ ...packet, atMs: packet.atMs + 60_000 }));
    expect(found(packets, typed(13.4))).toEqual([]);
  });

  test('and what was sent last holds until the next is sent', () => {
    const packets = [0, 134, 0].map((stored, at) => ({ atMs: at * 4000, bytes: Uint8Array.of(stored) }));
    const late = { ...typed(13.4), fromMs: 7500, toMs: 7900 };
    expect(found(packets, late)[0]).toMatchObject({ value: { format: 4, exponent: -1 } });
  });
});

describe('the display shows a number', () => {
  // Most round, and some cut off; common practice, no source.
  test.each([
    [135, 13, true],
    [135, 14, true],
    [139, 13, true],
    [134, 14, false],
    [140, 13, false],
  ])('where %d tenths are stored, %d shows: %s', (tenths, shown, isFound) => {
    // In tenths alone: no other layout of the byte is near.
    const all = found(steady(byte, tenths), typed(shown, 0, 1));
    const inTenths = all.filter(({ value }) => value.kind === 'number' && value.exponent === -1);
    expect(inTenths.length > 0).toBe(isFound);
  });

  test('that stays for 0.4 s, or nobody could read it', () => {
    const shownFor = (count: number) =>
      found(
        Array.from({ length: 80 }, (_, at) => ({
          atMs: at * 100,
          bytes: Uint8Array.of(at >= 50 && at < 50 + count ? 134 : 200 + (at % 2)),
        })),
        typed(13.4),
      );
    expect(shownFor(4)).toHaveLength(1);
    expect(shownFor(3)).toEqual([]);
  });
});

describe('whole percents in one byte', () => {
  const packets = steady(byte, 13, 26, 41);
  const three = [typed(13, 0, 1), typed(26, 1, 1), typed(41, 2, 1)];

  test('are found from one, and sure after two', () => {
    const value = { kind: 'number', format: 4, byteOffset: 0, exponent: 0, scale: 1, offset: 0 };
    const one = found(packets, three[0]!)[0];
    expect(one).toMatchObject({ value, match: null, unit: 'pct', isEnough: false, isSure: false });
    const [best, ...others] = found(packets, three[0]!, three[1]!);
    expect(best).toMatchObject({ value, follows: [true, true], isEnough: true, isSure: true });
    expect(others.some(({ isSure }) => isSure)).toBe(false);
  });

  test('are not sure so soon among other bytes, of which one may be so by chance', () => {
    const noise = (index: number) => [3, 5, 7].map((each) => (each * index * index) & 255);
    const among = steady((stored, index) => [...noise(index), stored ?? 0], 13, 26);
    expect(found(among, ...three.slice(0, 2)).some(({ isSure }) => isSure)).toBe(false);
  });

  test('follow all numbers but one that was mistyped, and not where two were', () => {
    const wrong = (at: number): ShownNumber => ({ ...three[at]!, value: 77 });
    expect(found(packets, three[0]!, wrong(1), three[2]!)[0]!.follows).toEqual([true, false, true]);
    expect(found(packets, three[0]!, wrong(1), wrong(2))).toEqual([]);
  });
});

test('numbers prove enough once they are five last digits apart', () => {
  const enough = (tenths: number) =>
    found(steady(byte, 134, tenths), typed(13.4), typed(tenths / 10, 1))[0]!.isEnough;
  expect(enough(138)).toBe(false);
  expect(enough(139)).toBe(true);
});

test('a scale takes one number more, an offset two', () => {
  const [a, b, c, d] = [60, 100, 180, 140];
  const number = (stored: number, board: number, offset: number) => typed(stored / 4 + offset, board, 0.1);
  const packets = steady(byte, a, b, c, d);
  const enough = (count: number, offset: number) =>
    found(packets, ...[a, b, c, d].slice(0, count).map((stored, board) => number(stored, board, offset)))[0];
  expect(enough(2, 0)).toMatchObject({ value: { scale: 0.25, offset: 0 }, isEnough: false });
  expect(enough(3, 0)).toMatchObject({ value: { scale: 0.25, offset: 0 }, isEnough: true });
  expect(enough(3, 5)).toMatchObject({ value: { scale: 0.25, offset: 5 }, isEnough: false });
  expect(enough(4, 5)).toMatchObject({ value: { scale: 0.25, offset: 5 }, isEnough: true });
});

describe('packets of several kinds from one place', () => {
  /** The number in every nth packet, and others between. */
  const kinds = (count: number) =>
    steady(
      (stored, index) => (index % count === 0 ? [1, stored ?? 0] : [1 + (index % count), 255]),
      134,
      227,
    );
  const two = [typed(13.4), typed(22.7, 1)];

  test('are told apart by their first byte', () => {
    expect(found(kinds(2), ...two)[0]).toMatchObject({
      match: { layout: { format: 4, byteOffset: 0 }, equals: 1 },
      value: { format: 4, byteOffset: 1, exponent: -1 },
    });
    expect(found(kinds(6), ...two)[0]?.match).toMatchObject({ equals: 1 });
  });

  test('are not, where there are so many that their first byte is no kind', () => {
    expect(found(kinds(7), ...two).filter(({ match }) => match !== null)).toEqual([]);
  });

  test('are not, where they do not take turns', () => {
    const inTurn = steady((stored, index) => [index < 40 ? 1 : 2, stored ?? 0], 134, 227);
    expect(found(inTurn, ...two).map(({ match }) => match)).toEqual([null]);
  });
});

test('of two places, that which shows the numbers is found', () => {
  const other = { ...source, characteristicUuid: 'fff2' };
  const places = [
    { source: other, packets: steady((_, index) => [(index * index) & 255], 134) },
    { source, packets: steady(byte, 134) },
  ];
  expect(propose(places, [typed(13.4)], 'pct').map((each) => each.source)).toEqual([source]);
});

describe('of two places that show the number', () => {
  const place = (name: string, packets: readonly WatchedPacket[]) => ({
    source: { ...source, characteristicUuid: name },
    packets,
  });
  /** Names of the places proposed, the likeliest first. */
  const names = (places: readonly ReturnType<typeof place>[], ...shown: ShownNumber[]) =>
    propose(places, shown, 'pct').map(
      (each) => 'characteristicUuid' in each.source && each.source.characteristicUuid,
    );
  const two = [typed(13.4), typed(22.7, 1)];

  test('both are offered, and none is sure', () => {
    const places = [place('a', steady(byte, 134, 227)), place('b', steady(byte, 134, 227))];
    expect(names(places, ...two)).toEqual(['a', 'b']);
    const all = propose(places, two, 'pct');
    expect(all.map(({ isEnough, isSure }) => [isEnough, isSure])).toEqual([
      [true, false],
      [true, false],
    ]);
  });

  test('and of four, three are offered', () => {
    const places = ['a', 'b', 'c', 'd'].map((name) => place(name, steady(byte, 134, 227)));
    expect(names(places, ...two)).toEqual(['a', 'b', 'c']);
  });

  test('the one that also rests at other times is likelier', () => {
    const restless = steady(
      (stored, index) => [stored === 60 && index % 2 === 0 ? 200 : (stored ?? 0)],
      134,
      60,
    );
    const restful = steady((stored, index) => [stored === 60 && index < 60 ? 200 : (stored ?? 0)], 134, 60);
    expect(names([place('restless', restless), place('restful', restful)], typed(13.4))).toEqual([
      'restful',
      'restless',
    ]);
  });

  test('the one that shows nothing else then is likelier', () => {
    const flickering = (board: number) =>
      steady(
        (stored, index) => [stored === null ? 0 : stored + (index >= 40 === (board === 1) ? index & 1 : 0)],
        134,
        134,
      );
    expect(names([place('now', flickering(0)), place('later', flickering(1))], typed(13.4))).toEqual([
      'later',
      'now',
    ]);
  });

  test('the one with nothing that moves beside it is likelier', () => {
    const moving = steady((stored, index) => [stored ?? 0, (index * index * 37) & 255], 134, 227);
    const still = steady((stored) => [stored ?? 0, 9], 134, 227);
    expect(names([place('moving', moving), place('still', still)], ...two)[0]).toBe('still');
  });
});

describe('packets of different lengths', () => {
  test('hold the number where the longest do', () => {
    const mixed = (isShort: (index: number) => boolean) =>
      steady((stored, index) => (isShort(index) ? [7] : [7, stored ?? 0]), 134, 227);
    const two = [typed(13.4), typed(22.7, 1)];
    for (const odd of [0, 1, 2, 3]) {
      expect(
        found(
          mixed((index) => index % 4 === odd),
          ...two,
        )[0],
      ).toMatchObject({
        value: { format: 4, byteOffset: 1, exponent: -1 },
        follows: [true, true],
      });
    }
    // Of one board, short ones came alone.
    expect(
      found(
        mixed((index) => index < 40),
        ...two,
      )[0],
    ).toMatchObject({ follows: [false, true] });
    expect(
      found(
        mixed((index) => index >= 40),
        ...two,
      )[0],
    ).toMatchObject({ follows: [true, false] });
  });
});

test('where nothing was sent until one of the numbers, it is not found', () => {
  const packets = steady(byte, 134).map((packet) => ({ ...packet, atMs: packet.atMs + 60_000 }));
  const late = { ...typed(13.4), fromMs: 65_500, toMs: 66_700 };
  expect(found(packets, late)).toHaveLength(1);
  expect(found(packets, typed(13.4), late)).toEqual([]);
});

test('bits that never moved are not it, in a byte that did', () => {
  const packets = steady((_, index) => [index % 3 === 0 ? 67 : 67 + 128], 67);
  expect(found(packets, typed(6.7))).toEqual([]);
});

test('a counter that passes the number is not it', () => {
  // At rest for a second at each number.
  const counting = Array.from({ length: 60 }, (_, at) => ({
    atMs: at * 1000,
    bytes: Uint8Array.of(100 + at),
  }));
  const passing = { ...typed(13.4), fromMs: 34_100, toMs: 35_000 };
  expect(found(counting, passing)).toEqual([]);
  const besideReading = counting.map((packet, at) => ({
    ...packet,
    bytes: Uint8Array.of(100 + at, at % 20 < 10 ? 0 : 77),
  }));
  const first = found(besideReading, passing).filter(
    ({ value }) => value.kind === 'number' && value.format === 4 && value.byteOffset === 0,
  );
  expect(first).toEqual([]);
});

test('a piece of the number is not offered beside it', () => {
  const packets = steady((stored) => (stored === null ? [255, 255] : [stored, 0]), 134, 227);
  // Its first byte alone, or 9 bits, read the same of wood, and another number of air.
  const value = expect.objectContaining({ format: 6, byteOffset: 0, exponent: -1 });
  expect(found(packets, typed(13.4), typed(22.7, 1))).toEqual([
    expect.objectContaining({ value, isSure: true }),
  ]);
});

test('a number in packets of every kind needs no kind', () => {
  const packets = steady((stored, index) => [1 + 2 * (index % 2), stored ?? 0], 13, 26);
  const [best] = found(packets, typed(13, 0, 1), typed(26, 1, 1));
  expect(best).toMatchObject({ match: null, value: { format: 4, byteOffset: 1 } });
});

test('a number alone is not enough to be sure, however many digits it has', () => {
  const packets = steady((stored) => (stored === null ? [0, 0] : [stored & 255, stored >> 8]), 13_427);
  expect(found(packets, typed(13.427, 0, 0.001))[0]).toMatchObject({ isEnough: false, isSure: false });
});

test('ohms, in whatever power of ten', () => {
  const packets = steady(byte, 134, 60);
  const ohms = (power: number) => [134, 60].map((each, board) => typed(each * power, board, power));
  for (const [power, exponent] of [
    [1, 0],
    [1000, 3],
    [1e6, 6],
  ] as const) {
    const [best] = propose([{ source, packets }], ohms(power), 'ohm');
    expect(best).toMatchObject({ unit: 'ohm', value: { format: 4, exponent }, follows: [true, true] });
  }
});

test('it can be done in many turns, with the same end', () => {
  const packets = steady(byte, 134);
  const turns = proposeInTurns([{ source, packets }], [typed(13.4)], 'pct');
  let count = 0;
  let turn = turns.next();
  while (!turn.done) {
    count++;
    turn = turns.next();
  }
  // One for each of its eight layouts, and one for each that fits.
  expect(count).toBeGreaterThan(8);
  expect(turn.value).toEqual(found(packets, typed(13.4)));
  expect(proposeInTurns([{ source, packets }], [], 'pct').next()).toEqual({ done: true, value: [] });
});

test('of however many ways that fit, the 60 likeliest are looked at closely, each in a turn', () => {
  const pack = (stored: number | null) => [0, 0, stored ?? 0, 0, 0];
  const packets = steady(pack, 134);
  // Tens alone on the display agree with many.
  const turns = [...proposeInTurns([{ source, packets }], [typed(13, 0, 10)], 'pct')];
  expect(turns).toHaveLength(possibleLayouts(Uint8Array.from(pack(134))).length + 60);
});
