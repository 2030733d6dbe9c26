/** Sizes of samples from finite populations, against worked examples of textbooks (from memory). */
import { describe, expect, test } from 'vitest';
import { boardsForMean, boardsForNoneWet, probeNext } from '../../shared-core/probing/plan/sample-size.ts';

/** Certainty whose two-sided deviate is 2, which the textbooks' examples use. */
const two = 0.9545;
/** A spread that is known exactly, as those examples take it. */
const KNOWN = Number.POSITIVE_INFINITY;

// Scheaffer, Mendenhall and Ott, Elementary Survey Sampling, example 4.4: accounts receivable, N = 1000, bound $3,
// standard deviation $25: 217.56, so 218 accounts.
test('the mean of 1000 accounts with a spread of 25 to 3 takes 218 of them', () => {
  expect(boardsForMean(1000, 25, 3, two, KNOWN)).toBe(218);
});

// Cochran, Sampling Techniques (1977), section 4.6, from memory: a bed of silver maple seedlings of 430 units, mean 19,
// variance 85.6, to be known to 10 % with t = 2: n0 = 95, and 78 of the 430.
test('the mean of 430 units of a seedling bed to a tenth takes 78 of them', () => {
  expect(boardsForMean(430, Math.sqrt(85.6), 1.9, two, KNOWN)).toBe(78);
  expect(boardsForMean(1_000_000, Math.sqrt(85.6), 1.9, two, KNOWN)).toBe(95);
});

// The same with the rule looked up in a public handbook (ahrq.gov, sample size for a mean):
// n = N s² / ((N - 1) e² / 4 + s²).
test.each([
  [40, 1.2, 0.5],
  [200, 2, 0.6],
  [12, 0.8, 0.4],
])('of %i boards with spread %f and margin %f', (boards, spread, margin) => {
  const rule = (boards * spread ** 2) / (((boards - 1) * margin ** 2) / 4 + spread ** 2);
  expect(boardsForMean(boards, spread, margin, two, KNOWN)).toBe(Math.ceil(rule));
});

describe('a spread that few boards told', () => {
  // Student's t, two sided 90 %, from a printed table (from memory): 2.920 on 2 degrees, 1.833 on 9.
  // Stein (1945): n = t² s² / e² with the t of the first sample.
  test('asks for more boards than a known one, the more the fewer told it', () => {
    const of = (spreadOf: number) => boardsForMean(1_000_000, 1, 0.5, 0.9, spreadOf);
    expect(of(3)).toBe(Math.ceil((2.92 / 0.5) ** 2));
    expect(of(10)).toBe(Math.ceil((1.833 / 0.5) ** 2));
    expect(of(KNOWN)).toBe(Math.ceil((1.645 / 0.5) ** 2));
  });

  test('that is only the usual one: the sample itself will tell it, so it is large enough for its own t', () => {
    const n = boardsForMean(60, 1.5, 0.5, 0.9, null);
    expect(n).toBe(19);
    expect(boardsForMean(60, 1.5, 0.5, 0.9, n)).toBeLessThanOrEqual(n);
    expect(boardsForMean(60, 1.5, 0.5, 0.9, n - 1)).toBeGreaterThan(n - 1);
  });
});

describe('none of the probed boards wet', () => {
  // "59 of an infinite number": with 59 sound pieces at most 5 % are bad with 95 % certainty (0.95^59 = 0.0485),
  // Wilks (1941) and quality control since.
  test('59 of very many for 95 % certainty that at most 5 % are wet', () => {
    expect(boardsForNoneWet(1_000_000, 0.05, 0.95)).toBe(59);
  });

  test('is the smallest number: the chance to miss the wet ones, by binomials, is just small enough', () => {
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k);
    const [boards, wet, certainty] = [60, 7, 0.9];
    const n = boardsForNoneWet(boards, 0.1, certainty);
    expect(choose(boards - wet, n) / choose(boards, n)).toBeLessThanOrEqual(1 - certainty);
    expect(choose(boards - wet, n - 1) / choose(boards, n - 1)).toBeGreaterThan(1 - certainty);
  });

  test('is almost every board where not one may be wet', () => {
    expect(boardsForNoneWet(20, 0, 0.95)).toBe(19);
    expect(boardsForNoneWet(1, 0, 0.95)).toBe(1);
    expect(boardsForNoneWet(1, 0.1, 0.5)).toBe(1);
  });
});

// Student's t, two-sided 90 %: 6.314 at 1 degree of freedom, 2.920 at 2, 2.353 at 3 (any table; from memory).
test('few boards tell little: t has the degrees of freedom of the boards behind the spread', () => {
  // n0 = (6.314 × 1.5 / 0.5)² = 358.8, of 60: 358.8 / (1 + 357.8 / 60) = 51.5.
  expect(boardsForMean(60, 1.5, 0.5, 0.9, 2)).toBe(52);
  // 3 boards: (2.920 / 2)² = 2.1. Of 2: (6.314 / 2)² = 10.
  expect(boardsForMean(1_000_000, 0.5, 1, 0.9, null)).toBe(3);
});

test('no sample is larger than the stack, or smaller than a board', () => {
  expect(boardsForMean(5, 4, 0.01, 0.99, KNOWN)).toBe(5);
  expect(boardsForMean(500, 0.01, 5, 0.9, KNOWN)).toBe(1);
});

describe('which board next', () => {
  const endUse = { minPct: 6, maxPct: 9 };

  test('the unsure one near the limit before the sure one and the far one', () => {
    const order = probeNext(
      [
        { boardId: 1, averagePct: 20, standardUncertaintyPct: 1 },
        { boardId: 2, averagePct: 9.2, standardUncertaintyPct: 0.8 },
        { boardId: 3, averagePct: 9.2, standardUncertaintyPct: 1.6 },
        { boardId: 4, averagePct: 7.5, standardUncertaintyPct: 0.5 },
      ],
      endUse,
    );
    expect(order.map((board) => board.boardId)).toEqual([3, 2, 4, 1]);
    expect(order[3]!.worthPct).toBeLessThan(1e-6);
  });

  // Unit normal linear loss integral, Raiffa and Schlaifer's table: 0 -> .3989, 0.5 -> .1978, 1 -> .08332, 2 -> .008491.
  test.each([
    [9, 0.3989],
    [9.5, 0.1978],
    [10, 0.08332],
    [11, 0.008491],
  ])('average %f with an uncertainty of 1 is worth %f', (averagePct, loss) => {
    const [board] = probeNext([{ boardId: 1, averagePct, standardUncertaintyPct: 1 }], endUse);
    expect(Math.abs(board!.worthPct - loss)).toBeLessThan(6e-5);
  });

  // The same table: the lower limit counts as the upper one does.
  test('the nearer limit decides, and of boards worth the same the one entered first comes first', () => {
    const at = (boardId: number, averagePct: number) => ({ boardId, averagePct, standardUncertaintyPct: 1 });
    const order = probeNext([at(3, 6), at(2, 5), at(1, 6)], endUse);
    expect(order.map(({ boardId }) => boardId)).toEqual([1, 3, 2]);
    expect(order[0]!.worthPct).toBeCloseTo(0.3989, 4);
    expect(order[2]!.worthPct).toBeCloseTo(0.08332, 4);
  });

  test('a board at the limit gets the wrong call half the time', () => {
    expect(
      probeNext([{ boardId: 1, averagePct: 9, standardUncertaintyPct: 2 }], endUse)[0]!.wrongCall,
    ).toBeCloseTo(0.5, 6);
  });
});

test.each([
  ['no boards', /1 to 1000000 boards, not 0/, () => boardsForMean(0, 1, 1, 0.9, null)],
  ['no boards to find none wet', /boards, not 0/, () => boardsForNoneWet(0, 0.1, 0.9)],
  ['too many boards', /boards, not 1000001/, () => boardsForMean(1_000_001, 1, 1, 0.9, null)],
  ['half a board', /boards, not 0.5/, () => boardsForNoneWet(0.5, 0.1, 0.9)],
  ['no spread', /spread .* above 0/, () => boardsForMean(10, 0, 1, 0.9, null)],
  ['an endless spread', /spread .* above 0/, () => boardsForMean(10, Infinity, 1, 0.9, null)],
  ['a spread of one board', /2 boards or more, not 1/, () => boardsForMean(10, 1, 1, 0.9, 1)],
  ['no margin', /margin .* above 0/, () => boardsForMean(10, 1, 0, 0.9, null)],
  ['certainty of one', /Certainty 1 is outside/, () => boardsForNoneWet(10, 0.1, 1)],
  ['less certain than a coin', /Certainty 0.4 is outside/, () => boardsForMean(10, 1, 1, 0.4, null)],
  ['every board wet', /Share 1 is outside/, () => boardsForNoneWet(10, 1, 0.9)],
  ['less than none wet', /Share -0.1 is outside/, () => boardsForNoneWet(10, -0.1, 0.9)],
  [
    'no uncertainty',
    /Board 1 has no average with an uncertainty above 0/,
    () => probeNext([{ boardId: 1, averagePct: 9, standardUncertaintyPct: 0 }], { minPct: 6, maxPct: 9 }),
  ],
])('is refused: %s', (_, complaint, ask) => {
  expect(ask).toThrow(RangeError);
  expect(ask).toThrow(complaint);
});
