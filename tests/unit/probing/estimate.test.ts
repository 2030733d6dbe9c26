import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { estimateBoard, extraReadingsFor } from '../../../shared-core/probing/readings/estimate.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import { coverageFactor } from '../../../shared-core/wood/maths/student-t.ts';
import { reading } from './a-board.ts';

const counted = (depth: Depth, values: number[], depthMm: number | null = null, uncertainty = 0.5) =>
  values.map((mcPct, index) => ({
    reading: reading(index + 1, depth, mcPct, {
      spot: { depth, depthMm, fromEndMm: 1000, face: 'face' },
    }),
    mcPct,
    standardUncertaintyPct: uncertainty,
  }));

describe('the average over the thickness', () => {
  // Arithmetic: a parabola with core c and surface s averages s + 2/3 (c - s). Read just under the surface, the
  // shell is the surface.
  test('of core 16 % and a surface of 10 % is 14 %', () => {
    const { estimate } = estimateBoard(
      [...counted('shell', [10, 10], 1e-6), ...counted('core', [16, 16], 13.5)],
      27,
    )!;
    expect(estimate.averagePct).toBeCloseTo(14, 5);
    expect(estimate.differencePct).toBe(6);
  });

  // Arithmetic: the parabola equals its average at 0.2113 of the thickness.
  test('is the shell’s reading where the pins are 0.2113 of the thickness deep', () => {
    const { estimate } = estimateBoard(
      [...counted('shell', [13], 0.5 * (1 - Math.sqrt(1 / 3)) * 40), ...counted('core', [19], 20)],
      40,
    )!;
    expect(estimate.averagePct).toBeCloseTo(13, 6);
  });

  test('any parabola is averaged exactly from wherever shell and core pins went', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 30, noNaN: true }),
        fc.double({ min: -3, max: 15, noNaN: true }),
        fc.double({ min: 0.02, max: 0.2, noNaN: true }),
        fc.double({ min: 0.35, max: 0.5, noNaN: true }),
        (core, drop, shellAt, coreAt) => {
          const at = (x: number) => core - drop * (1 - 2 * x) ** 2;
          const { estimate } = estimateBoard(
            [...counted('shell', [at(shellAt)], shellAt * 50), ...counted('core', [at(coreAt)], coreAt * 50)],
            50,
          )!;
          expect(estimate.averagePct).toBeCloseTo(core - drop / 3, 6);
        },
      ),
    );
  });
});

describe('the interval', () => {
  // Worked by hand (GUM 5.1, G.4): 27 mm, pins at the planned 2.5 and 13.5 mm, so the shell weighs
  // (1/3) / (1 - 5/27)² = 0.5021 and the core 0.4979; all readings 10 % with u 0.5 shared; prior scatter 0.5 on 4
  // degrees and none of its own on 2: s² = 4 · 0.25 / 6; u² = 0.25 + s² (0.5021² + 0.4979²) / 2.
  test('of two shell and two core readings that agree', () => {
    const { estimate } = estimateBoard([...counted('shell', [10, 10]), ...counted('core', [10, 10])], 27)!;
    const spots = Math.sqrt((1 / 6) * ((0.5021 ** 2 + 0.4979 ** 2) / 2));
    const u = Math.hypot(0.5, spots);
    expect(estimate.standardUncertaintyPct).toBeCloseTo(u, 4);
    expect(estimate.highPct - 10).toBeCloseTo(coverageFactor(0.9, 6 * (u / spots) ** 4) * u, 3);
    expect(10 - estimate.lowPct).toBeCloseTo(estimate.highPct - 10, 9);
  });

  test('narrows with more readings, but never below what the readings share', () => {
    const width = (n: number) => {
      const { estimate } = estimateBoard(
        [...counted('shell', Array(n).fill(9)), ...counted('core', Array(n).fill(9))],
        27,
      )!;
      return estimate.highPct - estimate.lowPct;
    };
    expect(width(2)).toBeLessThan(width(1));
    expect(width(8)).toBeLessThan(width(2));
    expect(width(200)).toBeGreaterThan(2 * 1.6448 * 0.5);
  });

  test('widens when the spots disagree', () => {
    const width = (apart: number) => {
      const { estimate } = estimateBoard(
        [...counted('shell', [9 - apart / 2, 9 + apart / 2]), ...counted('core', [9, 9])],
        27,
      )!;
      return estimate.highPct - estimate.lowPct;
    };
    expect(width(2)).toBeGreaterThan(width(0));
  });

  test('is wide where only one depth was read, and ends at zero', () => {
    const { estimate } = estimateBoard(counted('shell', [3, 3]), 27)!;
    expect(estimate.corePct).toBeNull();
    expect(estimate.differencePct).toBeNull();
    expect(estimate.countedCore).toBe(0);
    expect(estimateBoard(counted('shell', [1]), 27)!.estimate.lowPct).toBe(0);
    const both = estimateBoard([...counted('shell', [20, 20]), ...counted('core', [20, 20])], 27)!;
    const one = estimateBoard(counted('core', [20, 20]), 27)!;
    expect(one.estimate.standardUncertaintyPct).toBeGreaterThan(2 * both.estimate.standardUncertaintyPct);
  });

  // Coverage, by simulation: boards drawn from the model's own assumptions, 4000 of them; a proportion of 0.9 has a
  // standard error of 0.005, and the prior on the scatter is right here, so coverage must not be far from 0.9.
  test('holds the true average nine times in ten, and what is shown as likely eight times in ten', () => {
    let seed = 42;
    const uniform = () => {
      seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
      return (seed + 0.5) / 4294967296;
    };
    const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    let held = 0;
    let heldLikely = 0;
    for (let board = 0; board < 4000; board += 1) {
      const shared = 0.5 * normal();
      const spot = () => 10 + shared + 0.5 * normal();
      const { estimate } = estimateBoard(
        [...counted('shell', [spot(), spot()]), ...counted('core', [spot(), spot()])],
        27,
      )!;
      if (estimate.lowPct <= 10 && estimate.highPct >= 10) held += 1;
      const { minPct, maxPct } = estimate.likelyInterval;
      if (minPct <= 10 && maxPct >= 10) heldLikely += 1;
    }
    expect(held / 4000).toBeGreaterThan(0.885);
    expect(held / 4000).toBeLessThan(0.93);
    expect(heldLikely / 4000).toBeGreaterThan(0.785);
    expect(heldLikely / 4000).toBeLessThan(0.83);
  });
});

test('nothing counted, nothing estimated', () => {
  expect(estimateBoard([], 27)).toBeNull();
});

describe('how many more readings would do', () => {
  const board = estimateBoard([...counted('shell', [8, 9.5]), ...counted('core', [8, 9.5])], 27)!;

  test('is the fewest that make the estimate good enough', () => {
    const halfWidth = board.estimate.highPct - board.estimate.averagePct;
    const good = (limit: number) => (better: typeof board) =>
      better.estimate.highPct - better.estimate.averagePct <= limit;
    const more = extraReadingsFor(board, good(0.9 * halfWidth), 6)!;
    expect(more).toBeGreaterThanOrEqual(1);
    if (more > 1) expect(extraReadingsFor(board, good(0.9 * halfWidth), more - 1)).toBeNull();
    expect(extraReadingsFor(board, good(1.645 * 0.5), 6)).toBeNull();
  });
});
