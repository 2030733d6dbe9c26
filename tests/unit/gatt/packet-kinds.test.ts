/** Packets of several kinds from one place, told apart by their first byte. */
import { expect, test } from 'vitest';
import { kindsOf } from '../../../shared-core/gatt/packet-kinds.ts';
import { decodeLayout } from '../../../shared-core/gatt/value.ts';

const source = { kind: 'sent', serviceUuid: 'fff0', characteristicUuid: 'fff1' } as const;
/** Packets with these first bytes, none where null; the second byte tells them apart. */
const packetsOf = (...firsts: (number | null)[]) =>
  firsts.map((first, at) => ({
    atMs: at * 100,
    bytes: first === null ? Uint8Array.of() : Uint8Array.of(first, at),
  }));
const run = (first: number, count: number): number[] => Array.from({ length: count }, () => first);
/** Of each kind that is told apart, its first byte and its packets. */
const told = (...firsts: (number | null)[]) => {
  const packets = packetsOf(...firsts);
  const [whole, ...kinds] = kindsOf({ source, packets });
  expect(whole).toEqual({ source, match: null, packets });
  return kinds.map(({ match, packets: own }) => [
    match && 'equals' in match ? match.equals : null,
    own.map(({ atMs }) => atMs / 100),
  ]);
};

test('each kind has its own packets, and all of them are there besides', () => {
  expect(told(5, 9, 5, 9, 5, 9)).toEqual([
    [5, [0, 2, 4]],
    [9, [1, 3, 5]],
  ]);
});

test('a kind is what the first byte of its packets reads', () => {
  const kinds = kindsOf({ source, packets: packetsOf(5, 200, 5, 200, 5, 200) }).slice(1);
  for (const { match, packets } of kinds) {
    if (match === null || 'word' in match) throw new Error('no first byte');
    const read = packets.map(({ bytes }) => decodeLayout(bytes, match.layout));
    expect(read).toEqual(packets.map(() => ({ ok: true, value: match.equals })));
  }
});

test('one first byte is no kind', () => {
  expect(told(5, 5, 5, 5, 5, 5)).toEqual([]);
});

test('a kind has three packets or more', () => {
  expect(told(5, 9, 5, 9, 5, 5)).toEqual([]);
  expect(told(5, 9, 5, 9, 5, 5, 9)).toHaveLength(2);
});

test('there are six kinds at most', () => {
  const inTurn = (count: number) => Array.from({ length: 3 * count }, (_, at) => at % count);
  expect(told(...inTurn(6))).toHaveLength(6);
  expect(told(...inTurn(7))).toEqual([]);
});

test('the kind changes with every fourth packet or more often', () => {
  const often = [...run(1, 4), ...run(2, 4), ...run(1, 3), ...run(2, 3), ...run(1, 2)];
  expect(told(...often)).toHaveLength(2);
  expect(told(...often, 1)).toEqual([]);
});

test('a packet with nothing in it is of no kind', () => {
  expect(told(5, null, 5, null, 5, null).map(([first]) => first)).toEqual([5]);
});
