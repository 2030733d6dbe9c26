import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { depthRead } from '../../../shared-core/probing/readings/depth-read.ts';
import {
  averageIsSchema,
  depthOf,
  estimateBoard,
  estimateSchema,
} from '../../../shared-core/probing/readings/estimate.ts';
import {
  chanceAverageAbove,
  type KnownOfBoard,
} from '../../../shared-core/probing/readings/profile-posterior.ts';
import type { Depth } from '../../../shared-core/probing/readings/reading.ts';
import { plannedDepthMm } from '../../../shared-core/probing/readings/spots.ts';
import { coverageFactor } from '../../../shared-core/wood/maths/student-t.ts';
import { reading } from './a-board.ts';

const THICKNESS_MM = 27;
const known = (more: Partial<KnownOfBoard> = {}): KnownOfBoard => ({
  thicknessMm: THICKNESS_MM,
  emcPct: null,
  placeKind: 'shop',
  isNewHere: null,
  history: null,
  ...more,
});
const counted = (depth: Depth, values: number[], depthMm?: number, uncertainty = 0.5) =>
  values.map((mcPct, index) => ({
    reading: reading(index + 1, depth, mcPct, {
      spot: {
        depth,
        depthMm: depthMm ?? plannedDepthMm(depth, THICKNESS_MM),
        fromEndMm: 1000,
        face: 'face',
      },
    }),
    mcPct,
    standardUncertaintyPct: uncertainty,
  }));
const many = (pct: number): number[] => Array(50).fill(pct);

describe('the average over the thickness', () => {
  // Arithmetic: a parabola with core c and surface s averages s + 2/3 (c - s). Real profiles are flatter or steeper
  // within, which moves it by some tenths of a point and is in its uncertainty.
  test('is about 14% for a core of 16% and a surface of 10%', () => {
    const { estimate, posterior } = estimateBoard(
      [...counted('shell', many(10), 1e-6), ...counted('core', many(16), 13.5)],
      known(),
    )!;
    expect(estimate.averagePct).toBeCloseTo(14, -0.5);
    expect(Math.abs(estimate.averagePct - 14)).toBeLessThan(posterior.spotsPct * 2);
    expect(estimate.differencePct).toBe(6);
  });

  // Arithmetic: the parabola equals its average at 0.2113 of the thickness, and the flatter families a little nearer to the face.
  test('is what pins at a fifth of the thickness read, whatever the gradient', () => {
    for (const emcPct of [6, 9, 13]) {
      const { estimate } = estimateBoard(
        counted('average', many(13), 0.205 * THICKNESS_MM),
        known({ emcPct }),
      )!;
      expect(estimate.averagePct).toBeCloseTo(13, 0);
    }
  });

  // 4/4 red oak, its average spots at 7.1, 7.3 and 7.4 %, was shown as 8.2 % on average; another at 17.4 to 17.6 % as 16.6 %,
  // and white oak at 4.8, 5.1 and 4.5 % as 7.0 %.
  test('lies within what average spots read, whatever the air', () => {
    for (const emcPct of [6, 9, 13.5, 18, null])
      for (const read of [
        [4.8, 5.1, 4.5],
        [7.1, 7.3, 7.4],
        [17.5, 17.6, 17.4],
        [14.6, 15.7, 15.2],
        [11, 11],
      ])
        for (const depthFrom of ['pins', 'person'] as const) {
          const of = counted('average', read, 8).map((each) => ({
            ...each,
            reading: { ...each.reading, depthFrom },
          }));
          const outdoors = known({ thicknessMm: 25.4, placeKind: 'outdoors', emcPct });
          const { estimate, posterior } = estimateBoard(of, outdoors)!;
          expect(estimate.averagePct).toBeGreaterThanOrEqual(Math.min(...read) - 1e-9);
          expect(estimate.averagePct).toBeLessThanOrEqual(Math.max(...read) + 1e-9);
          // The chances that the call goes by are about the same average.
          expect(posterior.averagePct).toBe(estimate.averagePct);
          expect(chanceAverageAbove(posterior, Math.max(...read) + 4)).toBeLessThan(0.05);
        }
  });

  test('lies between shell and core, wherever those were read', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 8, max: 30, noNaN: true }),
        fc.double({ min: 0, max: 6, noNaN: true }),
        fc.double({ min: 0.05, max: 0.12, noNaN: true }),
        fc.double({ min: 0.4, max: 0.5, noNaN: true }),
        (corePct, drop, shellAt, coreAt) => {
          const at = (x: number) => corePct - drop * (1 - 2 * x) ** 2;
          const { estimate } = estimateBoard(
            [
              ...counted('shell', many(at(shellAt)), shellAt * 27),
              ...counted('core', many(at(coreAt)), coreAt * 27),
            ],
            known(),
          )!;
          expect(estimate.averagePct).toBeGreaterThan(corePct - drop - 0.1);
          expect(estimate.averagePct).toBeLessThan(corePct + 0.1);
          expect(Math.abs(estimate.averagePct - (corePct - drop / 3))).toBeLessThan(0.12 * drop + 0.1);
        },
      ),
    );
  });
});

describe('the interval', () => {
  // Worked by hand (GUM 5.1, G.4): what is shared is 0.5; the scatter of four readings that agree is pooled with the
  // prior's 0.5 on 4 degrees to sqrt(4 · 0.25 / 6) on 6, and the average of four has half of that, or a little more.
  test('of two shell and two core readings that agree', () => {
    const { estimate, posterior } = estimateBoard(
      [...counted('shell', [10, 10]), ...counted('core', [10, 10])],
      known(),
    )!;
    const half = Math.sqrt(1 / 6) / 2;
    expect(posterior.spotsPct).toBeGreaterThan(half);
    expect(posterior.spotsPct).toBeLessThan(1.4 * half);
    const u = Math.hypot(0.5, posterior.spotsPct);
    expect(estimate.standardUncertaintyPct).toBeCloseTo(u, 9);
    expect(estimate.highPct - estimate.averagePct).toBeCloseTo(
      coverageFactor(0.9, 6 * (u / posterior.spotsPct) ** 4) * u,
      6,
    );
    expect(estimate.averagePct - estimate.lowPct).toBeCloseTo(estimate.highPct - estimate.averagePct, 9);
  });

  test('narrows with more readings, but never below what the readings share', () => {
    const width = (n: number) => {
      const { estimate } = estimateBoard(
        [...counted('shell', Array(n).fill(9)), ...counted('core', Array(n).fill(9))],
        known(),
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
        known(),
      )!;
      return estimate.highPct - estimate.lowPct;
    };
    expect(width(2)).toBeGreaterThan(width(0));
  });

  test('is wider where only one depth was read, and ends at zero', () => {
    const { estimate } = estimateBoard(counted('shell', [2, 2]), known())!;
    expect(estimate.corePct).toBeNull();
    expect(estimate.differencePct).toBeNull();
    expect(estimate.countedCore).toBe(0);
    expect(estimate.lowPct).toBe(0);
    const both = estimateBoard([...counted('shell', [20, 20]), ...counted('core', [20, 20])], known())!;
    const one = estimateBoard(counted('core', [20, 20]), known())!;
    expect(one.estimate.standardUncertaintyPct).toBeGreaterThan(both.estimate.standardUncertaintyPct);
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
      const gradient = 1.3 * 1.5 + 2 * normal();
      const at = (depth: Depth) =>
        10 + gradient * (1 / 3.5 - (1 - (2 * plannedDepthMm(depth, THICKNESS_MM)) / THICKNESS_MM) ** 2.5);
      const spot = (depth: Depth) => at(depth) + shared + 0.5 * normal();
      const { estimate } = estimateBoard(
        [
          ...counted('shell', [spot('shell'), spot('shell')]),
          ...counted('core', [spot('core'), spot('core')]),
        ],
        known({ emcPct: 8.5 }),
      )!;
      if (estimate.lowPct <= 10 && estimate.highPct >= 10) held += 1;
      const { minPct, maxPct } = estimate.likelyInterval;
      if (minPct <= 10 && maxPct >= 10) heldLikely += 1;
    }
    expect(held / 4000).toBeGreaterThan(0.885);
    expect(held / 4000).toBeLessThan(0.93);
    expect(heldLikely / 4000).toBeGreaterThan(0.785);
    expect(heldLikely / 4000).toBeLessThan(0.84);
  });
});

describe('the middle of a board', () => {
  test('is read by pins that are known to be there, not by the plan', () => {
    const inCore = (of: Parameters<typeof estimateBoard>[0]) => estimateBoard(of, known())!.estimate.inCore;
    const core = counted('core', [10, 10]);
    expect(inCore(core)).toBe(2);
    expect(inCore(counted('core', [10, 10], 8))).toBe(0);
    const planned = core.map((each) => ({
      ...each,
      reading: { ...each.reading, depthFrom: 'plan' as const },
    }));
    expect(inCore(planned)).toBe(0);
  });
});

describe('the average that no pins reached', () => {
  const averageIs = (shellPct: number, uncertainty: number) =>
    estimateBoard(counted('shell', [shellPct, shellPct], undefined, uncertainty), known({ emcPct: 10 }))!
      .estimate.averageIs;

  // At most 5 points wide, and a core below 25 %: common practice, no source.
  test('is estimated where that is close enough, and no number where it is not', () => {
    expect(averageIs(10, 0.5)).toBe('estimated');
    expect(averageIs(10, 5)).toBe('unknown');
    expect(averageIs(27, 0.1)).toBe('unknown');
  });

  // Arithmetic: the shell reads 17 % and the core lies 6.8 points above it, below the 25 %; above the average of 20.5 %,
  // the same points would pass them.
  test('is by a core as far above the shell as drying allows, not as far above the average', () => {
    const { estimate, posterior } = estimateBoard(counted('shell', [17, 17]), known({ emcPct: 12 }))!;
    expect(17 + posterior.differencePct).toBeLessThan(25);
    expect(estimate.averagePct + posterior.differencePct).toBeGreaterThan(25);
    expect(estimate.averageIs).toBe('estimated');
  });

  test('is estimated up to a core of 25%, which is the shell where the board is taking up moisture', () => {
    const wetting = { differencePct: -1, differenceSdPct: 0.2 };
    const at = (shellPct: number) =>
      estimateBoard(
        counted('shell', Array(8).fill(shellPct), undefined, 0.1),
        known({ emcPct: 24, history: wetting }),
      )!.estimate.averageIs;
    expect([at(25), at(25.01)]).toEqual(['estimated', 'unknown']);
  });

  test('is read as soon as one pin was deeper than the shell', () => {
    const one = [...counted('shell', [10, 10]), ...counted('average', [10])];
    expect(estimateBoard(one, known())!.estimate.averageIs).toBe('read');
  });
});

test('average spots that differ have an average between them, not at one of them', () => {
  const { estimate } = estimateBoard(counted('average', [10, 12, 14], 6), known())!;
  expect(estimate.averagePct).toBeGreaterThan(11);
  expect(estimate.averagePct).toBeLessThan(13);
});

// 7.1, 7.3 and 7.4 % in damp air: where only the plan says how deep the pins were, they may have read another layer.
test('average spots hold the average among them only where their depth is known', () => {
  const at = (...depthFrom: ('pins' | 'plan')[]) => {
    const of = counted('average', [7.1, 7.3, 7.4], 8).map((each, index) => ({
      ...each,
      reading: { ...each.reading, depthFrom: depthFrom[index]! },
    }));
    return estimateBoard(of, known({ thicknessMm: 25.4, placeKind: 'outdoors', emcPct: 18 }))!.estimate
      .averagePct;
  };
  expect(at('pins', 'pins', 'pins')).toBeLessThanOrEqual(7.4);
  expect(at('plan', 'plan', 'plan')).toBeGreaterThan(7.5);
  expect(at('pins', 'plan', 'pins')).toBeGreaterThan(7.41);
});

// A board of 27 mm, its core planned at half of that.
test('pins were as deep as they are known to be, else as deep as planned', () => {
  const depth = (depthMm: number | null) =>
    depthOf({ spot: { ...reading(1, 'core', 10).spot, depthMm } }, THICKNESS_MM);
  expect(depth(8)).toBe(8);
  expect(depth(27)).toBe(27);
  expect(depth(null)).toBe(13.5);
  expect(depth(28)).toBe(13.5);
});

test('pins of unknown depth say no more than pins of which only the plan says how deep they were', () => {
  const averagePct = (depthFrom: 'pins' | 'plan', depthMm: number | null) => {
    const deep = counted('core', [13, 13]).map((each) => ({
      ...each,
      reading: { ...each.reading, depthFrom, spot: { ...each.reading.spot, depthMm } },
    }));
    return estimateBoard([...counted('shell', [10, 10]), ...deep], known({ emcPct: 12 }))!.estimate
      .averagePct;
  };
  expect(averagePct('pins', null)).toBe(averagePct('plan', 13.5));
  // Shorter pins would have read their 13 % nearer to the face, so the average may lie higher.
  expect(averagePct('pins', null)).toBeGreaterThan(averagePct('pins', 13.5));
});

test('pins of unknown depth, or near the other face, have not read the middle', () => {
  const inCore = (depthMm: number | null) => {
    const [one] = counted('core', [10]);
    const spot = { ...one!.reading.spot, depthMm };
    return estimateBoard([{ ...one!, reading: { ...one!.reading, spot } }], known())!.estimate.inCore;
  };
  expect(inCore(null)).toBe(0);
  expect(inCore(24)).toBe(0);
  // Four tenths of 27 mm, from either face.
  expect([inCore(10.8), inCore(16.2)]).toEqual([1, 1]);
});

test('an estimate is kept whole: with both ends of its interval and a word for how its average is known', () => {
  const { estimate } = estimateBoard(counted('average', [10, 12]), known())!;
  expect(estimateSchema.parse(estimate)).toEqual(estimate);
  for (const averageIs of ['read', 'estimated', 'unknown', 'above'])
    expect(averageIsSchema.safeParse(averageIs).success).toBe(true);
  expect(averageIsSchema.safeParse('').success).toBe(false);
  expect(estimateSchema.safeParse({ ...estimate, likelyInterval: {} }).success).toBe(false);
});

test('nothing counted, nothing estimated', () => {
  expect(estimateBoard([], known())).toBeNull();
});

describe('a reading whose pins are known to have been elsewhere', () => {
  // 8 mm of 54 mm is 0.15 of the thickness, 27 mm half of it.
  const at = (depth: Depth, depthMm: number, depthFrom: 'person' | 'plan' = 'person') =>
    depthRead(
      { ...reading(1, depth, 14), depthFrom, spot: { ...counted(depth, [14], depthMm)[0]!.reading.spot } },
      54,
    );

  test('tells what they reached, and not what its spot is for', () => {
    expect(at('core', 8)).toBe('shell');
    expect(at('core', 46)).toBe('shell');
    expect(at('core', 13)).toBe('average');
    expect(at('shell', 27)).toBe('core');
    expect(at('average', 27)).toBe('core');
    expect(at('core', 25)).toBe('core');
  });

  test('but where only the plan says how deep it was, that is no news', () => {
    expect(at('core', 8, 'plan')).toBe('core');
  });

  test('is none of the core, nor of the shell–core difference', () => {
    const thick = known({ thicknessMm: 54 });
    const shallow = [...counted('shell', [12, 12], 5), ...counted('core', [14, 14], 8)];
    expect(estimateBoard(shallow, thick)!.estimate).toMatchObject({
      shellPct: 13,
      corePct: null,
      differencePct: null,
      // Its spots are read all the same.
      countedCore: 2,
    });
  });
});
