/** Which of several ways to read a meter's bytes is likelier, enough and sure. Limits are our judgment. */
import { describe, expect, test } from 'vitest';
import {
  type Candidate,
  isBeyondChance,
  isClear,
  isEnough,
  isPartOf,
  likelierFirst,
  showsTheSame,
} from '../../../shared-core/gatt/candidate.ts';
import type { Layout } from '../../../shared-core/gatt/layout.ts';
import type { PacketKind } from '../../../shared-core/gatt/packet-kinds.ts';

const plain = { exponent: 0, scale: 1, offset: 0 } as const;
const source = { kind: 'sent', serviceUuid: 'fff0', characteristicUuid: 'fff1' } as const;
const number = (format: number, byteOffset: number): Layout => ({
  kind: 'number',
  format,
  byteOffset,
  ...plain,
});
const textFrom = (byteOffset: number): Layout => ({ kind: 'text', byteOffset, nth: 1, ...plain });
/** Packets of these lengths. */
const kindOf = (...lengths: number[]): PacketKind => ({
  source,
  match: null,
  packets: lengths.map((length, at) => ({ atMs: at, bytes: new Uint8Array(length) })),
});
const kind = kindOf(4);
const candidate = (made: Partial<Candidate> = {}): Candidate => ({
  kind,
  layout: number(4, 0),
  follows: [],
  followed: 2,
  cost: 0,
  score: 0,
  fitted: 0,
  ...made,
});
const judged = (layout: Layout, reads: string[], of = kind) => ({
  candidate: candidate({ layout, kind: of }),
  reads,
});
const typed = (value: number, resolution = 0.1) => ({ value, resolution, fromMs: 0, toMs: 0 });

test('the likelier follows more numbers, or as many with the higher score', () => {
  const [more, higher, lower] = [
    candidate({ followed: 3, score: -9 }),
    candidate({ score: 2 }),
    candidate({ score: 1 }),
  ];
  expect([lower, more, higher].toSorted(likelierFirst)).toEqual([more, higher, lower]);
});

test('enough is to follow all numbers, of which two differ besides those that its scale took', () => {
  const three = [typed(10), typed(20), typed(30)];
  expect(isEnough(candidate({ followed: 3 }), three)).toBe(true);
  expect(isEnough(candidate({ followed: 2 }), three)).toBe(false);
  expect(isEnough(candidate({ followed: 3, fitted: 1 }), three)).toBe(true);
  expect(isEnough(candidate({ followed: 3, fitted: 2 }), three)).toBe(false);
  // They differ by 5 of the coarser last digits.
  expect(isEnough(candidate(), [typed(10, 1), typed(14, 0.1)])).toBe(false);
  expect(isEnough(candidate(), [typed(10, 1), typed(15, 0.1)])).toBe(true);
});

describe('a piece of a number', () => {
  const whole = judged(number(6, 1), ['', '13.4', '25.7']);
  const pieceOf = (layout: Layout, reads: string[], of = kind) => isPartOf(judged(layout, reads, of), whole);

  test('reads what the whole one reads of wood, in some of its bytes', () => {
    expect(pieceOf(number(4, 1), ['25.5', '13.4', '25.7'])).toBe(true);
    expect(pieceOf(number(4, 2), ['', '13.4', '25.7'])).toBe(true);
    expect(pieceOf(number(6, 1), ['25.5', '13.4', '25.7'])).toBe(true);
  });

  test('is none where it reads anything else', () => {
    expect(pieceOf(number(4, 1), ['', '13.4', '25.6'])).toBe(false);
    expect(pieceOf(number(4, 1), ['', '13.5', '25.6'])).toBe(false);
  });

  test('is none with a byte before or behind the whole one', () => {
    const same = ['', '13.4', '25.7'];
    expect(pieceOf(number(4, 0), same)).toBe(false);
    expect(pieceOf(number(6, 0), same)).toBe(false);
    expect(pieceOf(number(6, 2), same)).toBe(false);
    expect(pieceOf(number(4, 3), same)).toBe(false);
  });

  test('is none in packets of another kind', () => {
    expect(pieceOf(number(4, 1), ['', '13.4', '25.7'], kindOf(4))).toBe(false);
  });

  test('of a text may lie at the end of the longest packet', () => {
    const mixed = kindOf(2, 4, 3);
    const text = judged(textFrom(1), ['13.4'], mixed);
    expect(isPartOf(judged(number(4, 3), ['13.4'], mixed), text)).toBe(true);
    expect(isPartOf(judged(number(4, 4), ['13.4'], mixed), text)).toBe(false);
    expect(isPartOf(text, judged(number(6, 1), ['13.4'], mixed))).toBe(false);
  });
});

describe('two show the same', () => {
  const same = (a: string[], b: string[], shown = [typed(13, 1)], of = kind) =>
    showsTheSame(judged(number(4, 0), a), judged(number(4, 1), b, of), shown);

  test('where they never differ by more than the last digit', () => {
    expect(same(['13', '20'], ['14', '19'])).toBe(true);
    expect(same(['13', '20'], ['14', '18.9'])).toBe(false);
    expect(same(['13', '20'], ['14.1', '20'])).toBe(false);
    expect(same(['13', ''], ['13', '0.5'])).toBe(true);
  });

  test('by the finest of the typed numbers', () => {
    expect(same(['13'], ['13.5'], [typed(13, 1), typed(13, 0.1)])).toBe(false);
  });

  test('and not in packets of another kind', () => {
    expect(same(['13'], ['13'], [typed(13, 1)], kindOf(4))).toBe(false);
  });
});

test('the best is clear where the next follows fewer numbers, is three bits behind, or there is none', () => {
  const best = candidate({ score: 5 });
  expect(isClear(best, undefined)).toBe(true);
  expect(isClear(best, candidate({ score: 2 }))).toBe(true);
  expect(isClear(best, candidate({ score: 2.1 }))).toBe(false);
  expect(isClear(best, candidate({ score: 5, followed: 1 }))).toBe(true);
});

describe('beyond chance', () => {
  // A reading is up to 50%, so that this is one number in 1024: 10 bits.
  const tenBits = typed(13.4, 50 / 1024);
  const tried = { number: 4, bits: 8, text: 1 };
  const bits = { kind: 'bits', firstBit: 0, bits: 10, signed: false, ...plain } as const;

  test('are four bits more than what was tried and what the layout costs', () => {
    const isBeyond = (made: Partial<Candidate>) => isBeyondChance(candidate(made), [tenBits], 'pct', tried);
    // 4 layouts of numbers were tried, 2 bits; 8 fields of bits, 3 bits.
    expect(isBeyond({ cost: 4 })).toBe(true);
    expect(isBeyond({ cost: 4.1 })).toBe(false);
    expect(isBeyond({ cost: 3, layout: bits })).toBe(true);
    expect(isBeyond({ cost: 3.1, layout: bits })).toBe(false);
  });

  test('count each number but those that a scale took', () => {
    const isBeyond = (cost: number, fitted: number) =>
      isBeyondChance(candidate({ cost, fitted }), [tenBits, tenBits], 'pct', tried);
    expect(isBeyond(14, 0)).toBe(true);
    expect(isBeyond(14.1, 0)).toBe(false);
    expect(isBeyond(4, 1)).toBe(true);
    expect(isBeyond(4.1, 1)).toBe(false);
    expect(isBeyond(-1, 2)).toBe(false);
  });

  test('ohms are likely up to eight times as many', () => {
    const isBeyond = (cost: number) =>
      isBeyondChance(candidate({ cost }), [typed(64_000, 500)], 'ohm', tried);
    // 8 × 64,000 in steps of 500: 1024 numbers.
    expect(isBeyond(4)).toBe(true);
    expect(isBeyond(4.1)).toBe(false);
  });
});
