import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alongBoard } from '../../../shared-core/probing/readings/along-board.ts';
import {
  basisNow,
  PAIRS,
  type PlanBasis,
  usualBasis,
  usualCoreWay,
} from '../../../shared-core/probing/readings/plan-basis.ts';
import {
  countSpots,
  EXTRA_SPOTS,
  endClearanceMm,
  firstSpot,
  howTo,
  isReadAt,
  isSameSpot,
  pinsOf,
  plannedDepthMm,
  planSpots,
  spotAt,
  spotName,
} from '../../../shared-core/probing/readings/spots.ts';
import { builtInEndUses } from '../../../shared-core/wood/species/built-in.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';

const pins = (lengthMm: number, insulated = false) => ({ lengthMm, insulated });

describe('the plan of spots for a 3 m board, 27 mm thick', () => {
  const { plan, remarks } = planSpots({ lengthMm: 3000, thicknessMm: 27, planBasis: PAIRS });

  test('is in the order a person walks: shell, then deeper to the core, then on along the board', () => {
    const left = message('spot.from-left', { fromDistanceMm: 1000 });
    const right = message('spot.from-right', { fromDistanceMm: 1000 });
    expect(plan.map(({ along, spot }) => [spot.depth, along])).toEqual([
      ['shell', left],
      ['core', left],
      ['shell', right],
      ['core', right],
    ]);
    expect(remarks).toEqual([]);
  });

  test('puts the shell pins just under the face and the core pins at mid-thickness', () => {
    expect(plan.map((each) => each.spot.depthMm)).toEqual([2.5, 13.5, 2.5, 13.5]);
  });
});

describe('short boards', () => {
  test('a 50 cm board is probed in its middle, and the plan says so', () => {
    const { plan, remarks } = planSpots({ lengthMm: 500, thicknessMm: 52, planBasis: PAIRS });
    const middle = message('spot.in-middle', { fromDistanceMm: 250 });
    expect(plan.map(({ along, spot }) => [spot.depth, along])).toEqual([
      ['shell', middle],
      ['core', middle],
    ]);
    expect(remarks).toEqual([message('spot-plan.short-board', { boardLengthMm: 500, clearDistanceMm: 300 })]);
  });

  test('a 70 cm board has room for one pair of spots at 30 cm from both ends', () => {
    const { plan, remarks } = planSpots({ lengthMm: 700, thicknessMm: 27, planBasis: PAIRS });
    expect(plan).toHaveLength(2);
    expect(remarks).toEqual([
      message('spot-plan.fewer', { boardLengthMm: 700, clearDistanceMm: 300, count: 1, places: 2 }),
    ]);
  });

  test('an 80 cm board has both pairs of spots moved in to 30 cm', () => {
    const { plan } = planSpots({ lengthMm: 800, thicknessMm: 27, planBasis: PAIRS });
    expect(plan.map((each) => each.spot.fromEndMm)).toEqual([300, 300, 300, 300]);
  });
});

test('a board of unknown length still has its spots, with the distance left open and a caution', () => {
  const { plan, remarks } = planSpots({ lengthMm: null, thicknessMm: 27, planBasis: PAIRS });
  const third = message('spot.third-from-left');
  const twoThirds = message('spot.third-from-right');
  expect(plan.map(({ along, spot }) => [spot.depth, along])).toEqual([
    ['shell', third],
    ['core', third],
    ['shell', twoThirds],
    ['core', twoThirds],
  ]);
  expect(plan.every((each) => each.spot.fromEndMm === null)).toBe(true);
  expect(remarks).toEqual([message('spot-plan.length-unknown', { clearDistanceMm: 300 })]);
});

test('of a board of unknown length, spots are named by the part of it that is to their left', () => {
  const along = (places: number) => {
    const { plan } = planSpots({
      lengthMm: null,
      thicknessMm: 25,
      planBasis: usualBasis(25, pins(8)),
      places,
    });
    return plan.map((spot) => inEnglish(spot.along));
  };
  expect(along(3)).toEqual(['left quarter', 'middle', 'right quarter']);
  expect(along(4)[1]).toMatch(/40%/);
});

test('a board of just 60 cm has its spot in the middle, 30 cm from both ends', () => {
  const { plan, remarks } = planSpots({ lengthMm: 600, thicknessMm: 27, planBasis: PAIRS });
  expect(plan.map(({ spot }) => spot.fromEndMm)).toEqual([300, 300]);
  expect(remarks.map(({ code }) => code)).toEqual(['spot-plan.fewer']);
});

test('spots of two plans are the same where depth, face and place along the board are', () => {
  const [shell, core, shellOnTheRight] = planSpots({
    lengthMm: 3000,
    thicknessMm: 27,
    planBasis: PAIRS,
  }).plan;
  const alike = planSpots({ lengthMm: 3000, thicknessMm: 30, planBasis: PAIRS }).plan;
  expect(isSameSpot(shell!, alike[0]!)).toBe(true);
  expect(isSameSpot(shell!, core!)).toBe(false);
  expect(isSameSpot(shell!, shellOnTheRight!)).toBe(false);
  expect(isSameSpot(core!, { ...core!, spot: { ...core!.spot, face: 'fresh-cut' } })).toBe(false);
});

// EN 13183-2, resistance method: 0.3 m from an end (from memory).
test('no planned spot is nearer to an end than 300 mm where the length allows, and none is questionable for it', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 50, max: 20_000 }),
      fc.integer({ min: 3, max: 400 }),
      fc.integer({ min: 1, max: 10 }),
      (lengthMm, thicknessMm, places) => {
        const { plan } = planSpots({ lengthMm, thicknessMm, places, planBasis: PAIRS });
        expect(plan.length / 2).toBeGreaterThanOrEqual(1);
        expect(plan.length / 2).toBeLessThanOrEqual(places);
        for (const { spot } of plan) {
          expect(spot.fromEndMm).toBeGreaterThanOrEqual(lengthMm >= 600 ? 300 : lengthMm / 2);
          expect(spot.fromEndMm).toBeGreaterThanOrEqual(endClearanceMm(lengthMm));
          expect(spot.depthMm).toBeGreaterThan(0);
          expect(spot.depthMm).toBeLessThanOrEqual(thicknessMm / 2);
        }
        const shell = plan[0]!.spot.depthMm!;
        expect(shell).toBeLessThan(plan[1]!.spot.depthMm!);
      },
    ),
  );
});

test.each([
  [{ lengthMm: 3000, thicknessMm: 0 }, /thickness/],
  [{ lengthMm: -1, thicknessMm: 27 }, /length/],
  [{ lengthMm: 0, thicknessMm: 27 }, /length/],
  [{ lengthMm: Number.NaN, thicknessMm: 27 }, /length/],
  [{ lengthMm: 3000, thicknessMm: 27, places: 11 }, /places/],
  [{ lengthMm: 3000, thicknessMm: 27, places: 0 }, /places/],
  [{ lengthMm: 3000, thicknessMm: 27, places: 2.5 }, /places/],
])('refuses %j', (board, complaint) => {
  expect(() => planSpots({ ...board, planBasis: PAIRS })).toThrow(complaint);
});

// Up to 30 mm, pins at a fifth to a third of the thickness read the average: issue 11 (common practice, no source).
describe('what the pins tell of a board from its faces', () => {
  test.each([
    ['8 mm pins in 25 mm', 25, pins(8), 'average', [8, 8, 8]],
    ['8 mm pins in 19 mm: to a quarter', 19, pins(8), 'average', [4.75, 4.75, 4.75]],
    ['8 mm pins in 30 mm', 30, pins(8), 'average', [8, 8, 8]],
    ['5 mm pins in 27 mm are short of a fifth', 27, pins(5), 'shell', [2.5, 2.5]],
    ['13 mm pins in 27 mm reach the middle', 27, pins(13), 'pairs', [2.5, 13, 2.5, 13]],
    ['8 mm pins in 16 mm reach the middle', 16, pins(8), 'pairs', [2, 8, 2, 8]],
    ['8 mm pins in 54 mm reach no core', 54, pins(8), 'shell', [5.5, 5.5]],
    ['20 mm pins in 54 mm reach no core', 54, pins(20, true), 'shell', [5.5, 5.5]],
    ['25 mm pins in 54 mm reach it', 54, pins(25, true), 'pairs', [5.5, 25, 5.5, 25]],
    ['pins of 4 mm in 54 mm go in no deeper', 54, pins(4), 'shell', [4, 4]],
  ] as const)('%s', (_, thicknessMm, known, faces, depthsMm) => {
    const planBasis = usualBasis(thicknessMm, known);
    expect(planBasis).toEqual({ faces, core: null, pins: known });
    const { plan, remarks } = planSpots({ lengthMm: 3000, thicknessMm, planBasis });
    expect(plan.map(({ spot }) => spot.depthMm)).toEqual(depthsMm);
    expect(remarks).toEqual([]);
  });

  test('pins that nobody described count as 8 mm, and the plan says so', () => {
    const planBasis = usualBasis(25, null);
    const { plan, remarks } = planSpots({ lengthMm: 3000, thicknessMm: 25, planBasis });
    expect(plan.map(({ spot }) => [spot.depth, spot.depthMm])).toEqual([
      ['average', 8],
      ['average', 8],
      ['average', 8],
    ]);
    expect(remarks).toEqual([message('spot-plan.pins-assumed', { pinsMm: 8 })]);
    expect(usualBasis(54, null).faces).toBe('shell');
  });

  test('no plan by the pins asks for more than they reach', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 60, noNaN: true }),
        fc.integer({ min: 3, max: 120 }),
        (length, thicknessMm) => {
          const planBasis = usualBasis(thicknessMm, pins(length));
          for (const { spot } of planSpots({ lengthMm: 3000, thicknessMm, planBasis }).plan)
            expect(spot.depthMm).toBeLessThanOrEqual(length);
        },
      ),
    );
  });
});

describe('a core that the pins do not reach', () => {
  const thick = { lengthMm: 3000, thicknessMm: 54 };
  const basis = (core: PlanBasis['core']): PlanBasis => ({ faces: 'shell', core, pins: pins(8) });
  const by = (core: PlanBasis['core'], lengthMm: number | null = 3000) =>
    planSpots({ ...thick, lengthMm, planBasis: basis(core) }).plan;

  test('is no spot of the plan unless a person chose a way to it', () => {
    expect(by(null).map(({ spot }) => spot.depth)).toEqual(['shell', 'shell']);
  });

  test.each(['fresh-cut', 'fresh-rip', 'fresh-split', 'long-pins'] as const)(
    'is read twice by %s, after the shell',
    (core) => {
      const plan = by(core);
      expect(plan.slice(0, 2)).toEqual(by(null));
      expect(plan.slice(2).map(({ spot }) => [spot.depth, spot.depthMm, spot.face])).toEqual(
        Array(2).fill(['core', 27, core === 'long-pins' ? 'face' : core]),
      );
      expect(new Set(plan.map(({ along, spot }) => JSON.stringify([along, spot.depth]))).size).toBe(4);
    },
  );

  // At least 50 cm from an end: issue 11 (common practice, no source).
  test('on a fresh crosscut says where to cut, in a board of 80 cm in its middle', () => {
    expect(howTo(by('fresh-cut')[2]!)).toEqual(message('spot.how-cut', { fromEndDistanceMm: 500 }));
    expect(pinsOf(by('fresh-cut')[2]!)).toEqual(message('spot.pins-in-cut', { depthMm: 27 }));
    expect(howTo(by('fresh-cut', 800)[2]!)).toEqual(message('spot.how-cut-middle'));
    expect(by('fresh-cut', 800)[2]!.spot.fromEndMm).toBe(400);
    expect(by('fresh-cut', null)[2]!.spot.fromEndMm).toBe(500);
    expect(howTo(by('fresh-cut')[0]!)).toBeNull();
  });

  test('is read on both halves of a crosscut, which its names tell apart', () => {
    expect(
      by('fresh-cut')
        .slice(2)
        .map((spot) => spot.along.code),
    ).toEqual(['spot.cut-left', 'spot.cut-right']);
  });

  test('by long pins says to drive them in that deep; through a face, how deep they go', () => {
    const [shell, , long] = by('long-pins');
    expect(howTo(long!)).toEqual(message('spot.how-long-pins'));
    expect(pinsOf(long!)).toEqual(message('spot.pins-long', { depthMm: 27 }));
    expect(pinsOf(shell!)).toEqual(message('spot.pins-to', { depthMm: 5.5 }));
    // A reading of which nobody knows how deep it was.
    const unknown = { ...shell!, spot: { ...shell!.spot, depthMm: null } };
    expect(pinsOf(unknown)).toEqual(message('spot.pins', { depth: 'shell' }));
  });

  test('on a fresh rip stays as far from the old edge as the board is thick', () => {
    expect(howTo(by('fresh-rip')[2]!)).toEqual(message('spot.how-rip', { insideMm: 54 }));
  });

  // Firewood is read on its fresh split face: common practice, no source.
  test('on a fresh split is read in the middle of the new face, and firewood alone is planned so by itself', () => {
    const [, , split] = by('fresh-split');
    expect(inEnglish(spotName(split!))).toBe('Core, fresh split face, 1.0 m from the left end');
    expect(inEnglish(pinsOf(split!))).toBe('pins in the middle of the fresh face');
    expect(inEnglish(howTo(split!)!)).toMatch(/^Split the piece\. .* Axes and pins are sharp\.$/);
    const piece = planSpots({
      lengthMm: 400,
      thicknessMm: 54,
      planBasis: { faces: 'shell', core: 'fresh-split', pins: pins(8) },
    });
    // Nobody can stay 12 in from both ends of a stove length.
    expect(piece.remarks).toEqual([]);
    expect(piece.plan[firstSpot(piece.plan)]!.spot.face).toBe('fresh-split');
    const splitByItself = builtInEndUses.filter((use) => usualCoreWay(use) !== null);
    expect(splitByItself.map(({ id }) => id)).toEqual(['firewood']);
    expect(usualCoreWay(splitByItself[0]!)).toBe('fresh-split');
  });
});

describe('what a board is planned by now', () => {
  const cut: PlanBasis = { faces: 'shell', core: 'fresh-cut', pins: pins(8) };
  const board = { thicknessMm: 54, isRead: false };

  test('while it is not read: the pins in use, and the choice made for it, else for the round', () => {
    expect(basisNow(board, null, null, pins(8))).toEqual({ ...cut, core: null });
    expect(basisNow(board, null, 'long-pins', pins(8))).toEqual({ ...cut, core: 'long-pins' });
    expect(basisNow(board, cut, 'long-pins', null)).toEqual({ ...cut, pins: null });
    expect(basisNow(board, { ...cut, core: null }, 'long-pins', pins(8)).core).toBeNull();
    expect(basisNow(board, cut, null, pins(30))).toEqual({ faces: 'pairs', core: null, pins: pins(30) });
    expect(basisNow({ ...board, thicknessMm: 27 }, null, 'fresh-cut', pins(8)).core).toBeNull();
  });

  test('once it is read: what it was planned by then, and pairs where that was before plans were kept', () => {
    expect(basisNow({ ...board, isRead: true }, cut, 'long-pins', pins(30))).toEqual(cut);
    expect(basisNow({ ...board, isRead: true }, null, 'long-pins', pins(30))).toEqual(PAIRS);
  });
});

test('more readings have a spot elsewhere for each depth of the plan, reached in the same way', () => {
  const board = {
    lengthMm: 3000,
    thicknessMm: 54,
    planBasis: { faces: 'shell', core: 'fresh-cut', pins: null } as const,
  };
  const elsewhere = message('spot.elsewhere');
  expect(spotAt(board, EXTRA_SPOTS.core)).toMatchObject({
    along: elsewhere,
    by: 'fresh-cut',
    spot: { depth: 'core', face: 'fresh-cut', fromEndMm: null },
  });
  expect(spotAt(board, EXTRA_SPOTS.shell)).toMatchObject({
    along: elsewhere,
    spot: { depth: 'shell', depthMm: 5.5 },
  });
  expect(spotAt(board, EXTRA_SPOTS.average)).toBeUndefined();
  expect(spotAt(board, 4)).toBeUndefined();
});

test('the average is planned a quarter of the thickness deep', () => {
  expect(plannedDepthMm('average', 28)).toBe(7);
});

test('readings at one spot of the plan count as one spot, those elsewhere as one each', () => {
  const at = (...indexes: (number | null)[]) => countSpots(indexes.map((spotIndex) => ({ spotIndex })));
  expect(at(0, 0, 2)).toBe(2);
  expect(at(100, 100, 102)).toBe(3);
  expect(at(1, 1, null, null, 101)).toBe(4);
  expect(at()).toBe(0);
});

test('of a board of unknown length, the ends and the core are as far away as on a long one', () => {
  expect(endClearanceMm(null)).toBe(300);
  const planBasis = { faces: 'shell', core: 'fresh-rip', pins: pins(8) } as const;
  const { plan } = planSpots({ lengthMm: null, thicknessMm: 54, planBasis });
  expect(plan.map(({ spot }) => spot.fromEndMm)).toEqual([null, null, null, null]);
  // A crosscut that may be anywhere is still 50 cm from the end.
  const cut = { lengthMm: 800, thicknessMm: 54, planBasis: { ...planBasis, core: 'fresh-cut' } as const };
  expect(howTo(spotAt(cut, EXTRA_SPOTS.core)!)).toEqual(message('spot.how-cut', { fromEndDistanceMm: 500 }));
});

test('a reading belongs to no spot where the plan has none', () => {
  const [shell] = planSpots({ lengthMm: 3000, thicknessMm: 27, planBasis: PAIRS }).plan;
  expect(isReadAt(undefined, shell!.spot)).toBe(false);
  expect(isReadAt(shell, shell!.spot)).toBe(true);
});

describe('where along the board a reading was taken', () => {
  const taken = (planBasis: PlanBasis, spotIndex: number, lengthMm = 3000) => ({
    roundId: 1,
    spotIndex,
    spot: spotAt({ lengthMm, thicknessMm: 27, planBasis }, spotIndex)!.spot,
  });
  const bases = (['average', 'shell'] as const).flatMap((faces) =>
    ([null, 'fresh-cut', 'fresh-rip', 'fresh-split', 'long-pins'] as const).map(
      (core): PlanBasis => ({ faces, core, pins: null }),
    ),
  );

  test.each([PAIRS, ...bases])(
    'is told from the reading alone, whatever plan it was taken by: %j',
    (planBasis) => {
      const { plan } = planSpots({ lengthMm: 3000, thicknessMm: 27, planBasis });
      const readings = plan.map((_, index) => taken(planBasis, index));
      expect(readings.map((each) => alongBoard(each, { lengthMm: 3000, thicknessMm: 27 }, readings))).toEqual(
        plan.map(({ along }) => along),
      );
    },
  );

  test('of a board whose length was edited since, by the end it was nearer to', () => {
    const average: PlanBasis = { faces: 'average', core: null, pins: null };
    const readings = [0, 1, 2].map((index) => taken(average, index));
    expect(readings.map((each) => alongBoard(each, { lengthMm: 2000, thicknessMm: 27 }, readings))).toEqual([
      message('spot.from-left', { fromDistanceMm: 750 }),
      message('board.spot-from-end', { fromEndDistanceMm: 1500 }),
      message('spot.from-right', { fromDistanceMm: 750 }),
    ]);
  });

  test('of a board whose length was entered since, by the end it was nearer to; in its middle nobody knows', () => {
    const without = (planBasis: PlanBasis) => {
      const board = { lengthMm: null, thicknessMm: 27, planBasis };
      return planSpots(board).plan.map((_, spotIndex) => ({
        roundId: 1,
        spotIndex,
        spot: spotAt(board, spotIndex)!.spot,
      }));
    };
    const along = (readings: ReturnType<typeof without>) =>
      readings.map((each) => alongBoard(each, { lengthMm: 3000, thicknessMm: 27 }, readings));
    expect(along(without({ faces: 'average', core: null, pins: null }))).toEqual([
      message('spot.nearer-left'),
      null,
      message('spot.nearer-right'),
    ]);
    const [left, right] = [message('spot.nearer-left'), message('spot.nearer-right')];
    expect(along(without(PAIRS))).toEqual([left, left, right, right]);
    // A cut is told from a reading alone.
    const cut = along(without({ faces: 'shell', core: 'fresh-cut', pins: null }));
    expect(cut.slice(2).map((each) => each?.code)).toEqual(['spot.cut-left', 'spot.cut-right']);
  });

  test('by its distance alone, where its round read nothing nearer to the right: it may have had one place', () => {
    const average: PlanBasis = { faces: 'average', core: null, pins: null };
    const [first, , last] = [0, 1, 2].map((index) => taken(average, index));
    const edited = { lengthMm: 2000, thicknessMm: 27 };
    const alone = message('board.spot-from-end', { fromEndDistanceMm: 750 });
    expect(alongBoard(first!, edited, [first!])).toEqual(alone);
    expect(alongBoard(first!, edited, [first!, { ...last!, roundId: 2 }])).toEqual(alone);
    expect(alongBoard(last!, edited, [last!])).toEqual(message('spot.from-right', { fromDistanceMm: 750 }));
  });

  test('by its distance, where it has no number in a plan, and by nothing without one', () => {
    const extra = { ...taken(PAIRS, 0), spotIndex: null };
    const board = { lengthMm: 3000, thicknessMm: 27 };
    expect(alongBoard(extra, board, [extra])).toEqual(
      message('board.spot-from-end', { fromEndDistanceMm: extra.spot.fromEndMm! }),
    );
    const unknown = { ...extra, spot: { ...extra.spot, fromEndMm: null } };
    expect(alongBoard(unknown, board, [unknown])).toBeNull();
  });

  test('on the fresh cut, wherever that was before the length was edited', () => {
    const cut: PlanBasis = { faces: 'shell', core: 'fresh-cut', pins: null };
    const readings = [2, 3].map((index) => taken(cut, index, 800));
    const codes = readings.map(
      (each) => alongBoard(each, { lengthMm: 3000, thicknessMm: 27 }, readings)?.code,
    );
    expect(codes).toEqual(['spot.cut-left', 'spot.cut-right']);
  });

  test('on a fresh rip, by the end it was nearer to of the two places along it', () => {
    const rip: PlanBasis = { faces: 'shell', core: 'fresh-rip', pins: null };
    const readings = [0, 1, 2, 3].map((index) => taken(rip, index));
    const codes = readings.map(
      (each) => alongBoard(each, { lengthMm: 2000, thicknessMm: 27 }, readings)?.code,
    );
    expect(codes).toEqual(['spot.from-left', 'spot.from-right', 'spot.from-left', 'spot.from-right']);
  });

  test('by its distance, for one beyond the plan that a person measured, whatever the others are', () => {
    const board = { lengthMm: 3000, thicknessMm: 27 };
    const elsewhere = taken(PAIRS, EXTRA_SPOTS.shell);
    const measured = { ...elsewhere, spot: { ...elsewhere.spot, fromEndMm: 700 } };
    expect(alongBoard(measured, board, [measured, taken(PAIRS, 2)])).toEqual(
      message('board.spot-from-end', { fromEndDistanceMm: 700 }),
    );
  });

  test('as planned, to the nearest millimeter; at the very end of a board of unknown length, there', () => {
    const at = (fromEndMm: number, lengthMm: number | null) => {
      const reading = { ...taken(PAIRS, 2), spot: { ...taken(PAIRS, 2).spot, fromEndMm } };
      return alongBoard(reading, { lengthMm, thicknessMm: 27 }, [reading]);
    };
    expect(at(1000.9, 3000)).toEqual(message('spot.from-right', { fromDistanceMm: 1000 }));
    expect(at(1001, 3000)).toEqual(message('spot.from-right', { fromDistanceMm: 1001 }));
    expect(at(0, null)).toEqual(message('spot.from-right', { fromDistanceMm: 0 }));
  });

  test('elsewhere on the board, for one that is beyond the plan', () => {
    const extra = taken(PAIRS, EXTRA_SPOTS.core);
    expect(alongBoard(extra, { lengthMm: 3000, thicknessMm: 27 }, [extra])).toEqual(
      message('spot.elsewhere'),
    );
  });
});
