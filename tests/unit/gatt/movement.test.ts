import { describe, expect, test } from 'vitest';
import { movementOf, type WatchedPacket } from '../../../shared-core/gatt/movement.ts';

/** Tenths of a percent with a little noise: in the air, in wood from 1 s to 4 s, in the air, in wetter wood from 6 s. */
function tenthsAt(ms: number): number {
  const noise = Math.round(Math.sin(ms * 1.7));
  if (ms < 1000 || (ms >= 4000 && ms < 6000)) return 0;
  return (ms < 4000 ? 134 : 251) + noise;
}

/** Ten packets a second for 9 s. */
const packets = (bytesAt: (ms: number, index: number) => number[]): WatchedPacket[] =>
  Array.from({ length: 90 }, (_, index) => ({
    atMs: index * 100,
    bytes: Uint8Array.from(bytesAt(index * 100, index)),
  }));
const text = (shown: string) => [...new TextEncoder().encode(shown)];

describe('which bytes go with the pins', () => {
  test('a reading moves, a constant is still', () => {
    const { motions, liveliest, size } = movementOf(packets((ms) => [7, tenthsAt(ms)]));
    expect(liveliest).toBe(1);
    expect(motions).toEqual(['still', 'moves']);
    expect(size).toBeGreaterThan(5);
  });

  test('a sequence number counts, with its higher byte, in both byte orders', () => {
    const counter = (index: number) => 250 + index * 3;
    const low = movementOf(packets((ms, index) => [tenthsAt(ms), counter(index) & 255, counter(index) >> 8]));
    expect(low.motions).toEqual(['moves', 'counts', 'counts']);
    const high = movementOf(
      packets((ms, index) => [counter(index) >> 8, counter(index) & 255, tenthsAt(ms)]),
    );
    expect(high.motions).toEqual(['counts', 'counts', 'moves']);
  });

  test('a clock of milliseconds that does not tick evenly counts in all its bytes', () => {
    const clock = (ms: number, index: number) => 5000 + ms + ((index * 37) % 60);
    const { motions } = movementOf(
      packets((ms, index) => [clock(ms, index) & 255, clock(ms, index) >> 8, tenthsAt(ms)]),
    );
    expect(motions).toEqual(['counts', 'counts', 'moves']);
  });

  test('a counter in text counts, the number beside it moves', () => {
    const { motions } = movementOf(
      packets((ms, index) => text(`${String(index % 10)} ${(tenthsAt(ms) / 10).toFixed(1).padStart(4)}`)),
    );
    expect(motions[0]).toBe('counts');
    expect(motions.slice(2)).toContain('moves');
  });

  test('a lost packet makes no reading of a counter', () => {
    const lossy = packets((_, index) => [index]).filter((_, index) => index % 11 !== 5);
    expect(movementOf(lossy)).toEqual({ motions: ['counts'], liveliest: null, size: 0 });
  });
});

/** One packet after another, of these bytes. */
const inTurn = (...bytes: readonly number[][]) =>
  movementOf(bytes.map((each, index) => ({ atMs: index * 100, bytes: Uint8Array.from(each) })));
/** Numbers from a first one on, by these steps. */
function from(first: number, steps: readonly number[]): number[] {
  const numbers = [first];
  for (const step of steps) numbers.push(numbers.at(-1)! + step);
  return numbers;
}
const repeated = (count: number, steps: readonly number[]) =>
  Array.from({ length: count }, (_, index) => steps[index % steps.length]!);
const byteOf = (number: number) => [number & 255];
const highAndLow = (number: number) => [number >> 8, number & 255];

describe('a byte that goes on by the same step', () => {
  const motion = (steps: readonly number[], bytes = byteOf) =>
    inTurn(...from(3, steps).map(bytes)).motions[0];
  /** 21 steps of 3, but for some in the middle. */
  const threes = (...others: number[]) => repeated(21, [3]).toSpliced(9, others.length, ...others);

  test('counts after five steps, fewer can be chance', () => {
    expect(motion(repeated(4, [3]))).toBe('moves');
    expect(motion(repeated(5, [3]))).toBe('counts');
  });

  test('counts though one step in seven is another', () => {
    expect(motion(threes(7, 90, 7))).toBe('counts');
    expect(motion(threes(7, 90, 7, 90))).toBe('moves');
    expect(motion([...repeated(17, [3]), 7, 90, 7])).toBe('counts');
    expect(motion([...repeated(16, [3]), 7, 90, 7, 90])).toBe('moves');
  });

  test('may be off by two where it is a clock of larger steps', () => {
    expect(motion(repeated(20, [17, 15, 19, 17]))).toBe('counts');
    expect(motion(repeated(20, [100, 102, 98]))).toBe('counts');
    expect(motion(repeated(20, [100, 103, 97]))).toBe('moves');
    expect(motion(repeated(20, [16, 14, 18, 16]))).toBe('moves');
    expect(motion(repeated(20, [3, 1, 5]))).toBe('moves');
  });

  test('counts as the last digit of a text, which begins again after 9', () => {
    const digits = (first: number) => (number: number) => [first + (number % 10)];
    expect(motion(repeated(20, [3]), digits(0x30))).toBe('counts');
    expect(motion(repeated(4, [3]), digits(0x30))).toBe('moves');
    expect(motion(repeated(20, [3, 9, 1, 4]), digits(0x30))).toBe('moves');
    // From "/" on, and up to ":", which are no digits.
    expect(motion(repeated(20, [3]), digits(0x2f))).toBe('moves');
    expect(motion(repeated(20, [3]), digits(0x31))).toBe('moves');
  });

  test('counts where it seldom goes on, but always by one', () => {
    const seldom = (...rises: number[]) => motion(rises.flatMap((rise) => [rise, 0, 0, 0]));
    expect(seldom(1, 1, 1, 1, 1)).toBe('counts');
    expect(seldom(1, 1, 1, 1)).toBe('moves');
    expect(seldom(1, 1, 2, 1, 1, 1)).toBe('moves');
    expect(seldom(1, 1, 1, 255, 1, 1)).toBe('moves');
  });
});

describe('a byte beside a counter', () => {
  /** A counter that begins again at packets 26, 52 and 78, beside another byte. */
  const beside = (other: (index: number) => number) =>
    inTurn(...Array.from({ length: 90 }, (_, index) => [other(index), (index * 10) & 255])).motions;

  test('belongs to it where it goes on each time that the counter begins again, and only then', () => {
    expect(beside((index) => (index * 10) >> 8)).toEqual(['counts', 'counts']);
    // One byte goes on from 255 with 0.
    expect(beside((index) => (254 + ((index * 10) >> 8)) & 255)).toEqual(['counts', 'counts']);
  });

  test.each<[string, (index: number) => number]>([
    ['by two', (index) => 2 * ((index * 10) >> 8)],
    ['back', (index) => 9 - ((index * 10) >> 8)],
    ['not each time', (index) => (index < 52 ? 0 : 1)],
    ['also in between', (index) => ((index * 10) >> 8) + (index < 60 ? 0 : 1)],
  ])('is another thing where it goes %s', (_, other) => {
    expect(beside(other)).toEqual(['moves', 'counts']);
  });

  test('is another thing where a shorter packet now and then shifts the two', () => {
    // Five of the first 50 packets lack it, so it seems to go on as the counter does.
    const packet = (index: number) => [(index * 3) & 255, index < 91 ? 7 : 8];
    const lacking = Array.from({ length: 100 }, (_, index) =>
      packet(index).slice(0, index < 50 && index % 10 === 4 ? 1 : 2),
    );
    expect(inTurn(...lacking).motions).toEqual(['counts', 'moves']);
    const still = lacking.map(([counter, ...other]) => [counter!, ...other.map(() => 7)]);
    expect(inTurn(...still).motions).toEqual(['counts', 'still']);
  });

  test('that only rises is no counter beside a constant', () => {
    expect(inTurn(...from(10, repeated(20, [1, 2, 4, 1, 7])).map((rising) => [7, rising])).motions).toEqual([
      'still',
      'moves',
    ]);
  });
});

describe('a clock that does not tick evenly', () => {
  /** 20 steps in which the higher byte goes on five times, or more. */
  const ticks = (standing: number) => [
    ...repeated(20 - standing, [70, 120, 90, 50, 130]),
    ...repeated(standing, [0]),
  ];

  test('counts in both bytes where three packets of 20 come twice, not where four do', () => {
    expect(inTurn(...from(0, ticks(3)).map(highAndLow)).motions).toEqual(['counts', 'counts']);
    expect(inTurn(...from(0, ticks(4)).map(highAndLow)).motions).toEqual(['counts', 'moves']);
  });

  test('counts in both bytes where one went on by 256 while packets were lost', () => {
    const lossy = from(0, [...ticks(0), 256]).map(highAndLow);
    expect(inTurn(...lossy).motions).toEqual(['counts', 'counts']);
  });
});

describe('what moves most', () => {
  const size = (bytesAt: Parameters<typeof packets>[0]) => movementOf(packets(bytesAt)).size;
  const reading = size((ms) => [tenthsAt(ms)]);

  test('a reading before a temperature that creeps', () => {
    expect(reading).toBeGreaterThan(size((ms) => [20 + Math.floor(ms / 3000)]));
  });
  test('a reading before noise', () => {
    expect(reading).toBeGreaterThan(size((_, index) => [(index * index * 97) % 251]));
  });
  test('a counter and nothing at all have none', () => {
    expect(size((_, index) => [index])).toBe(0);
    expect(movementOf([])).toEqual({ motions: [], liveliest: null, size: 0 });
  });

  test('is measured in bits, from the noise between two packets to the whole range', () => {
    const of = (...numbers: number[]) => inTurn(...numbers.map(byteOf)).size;
    expect(of(20, 20, 20, 20, 20, 120, 120, 120, 120, 120)).toBeCloseTo(Math.log2(1 + 100));
    expect(of(20, 30, 20, 30, 20)).toBeCloseTo(Math.log2(1 + 10 / 11));
  });
});
