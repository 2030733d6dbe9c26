import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DAY_S } from '../../../shared-core/time.ts';
import { averageOf, dryingGrid } from '../../../shared-core/wood/drying/model/drying-grid.ts';
import { woodDryingLaw } from '../../../shared-core/wood/drying/model/drying-law.ts';
import { dryingAlong, simulateDrying } from '../../../shared-core/wood/drying/model/drying-model.ts';
import type { AirSegment, DryingRun } from '../../../shared-core/wood/drying/model/drying-run.ts';
import { LawTables } from '../../../shared-core/wood/drying/model/law-tables.ts';
import { parabolicStart } from '../../../shared-core/wood/drying/model/parabolic-start.ts';
import { WoodTables } from '../../../shared-core/wood/drying/model/wood-tables.ts';

/** One set of tables for all: they depend on the species alone. */
const oak = new LawTables(woodDryingLaw(0.56));

const steady = (emcPct: number, tempC: number, durationS: number): AirSegment => ({
  durationS,
  emcStartPct: emcPct,
  emcEndPct: emcPct,
  tempC,
});

function runOf(changes: Partial<DryingRun> & { cells?: number; half?: boolean }): DryingRun {
  const { cells = 40, half = true, ...rest } = changes;
  const grid = dryingGrid(28, half, cells);
  return {
    grid,
    tables: oak,
    startPct: new Float64Array(cells).fill(60),
    segments: [steady(12, 20, 60 * DAY_S)],
    diffusivityFactor: 0.5,
    faceFactors: [0.3, 0.3],
    tolerancePct: 1e-3,
    observeS: [],
    depthFractions: [],
    ...rest,
  };
}

describe('accuracy', () => {
  test('is of second order in space, on the graded grid and with D that varies with moisture', () => {
    // A smooth start, so that the order shows at once.
    const average = (cells: number): number[] => {
      const grid = dryingGrid(28, true, cells);
      const result = simulateDrying(
        runOf({
          cells,
          startPct: parabolicStart(grid, 22, 0.7),
          tolerancePct: 1e-6,
          observeS: [2 * DAY_S, 10 * DAY_S, 30 * DAY_S],
          depthFractions: [0.5],
        }),
      );
      return [...result.averagePct, ...result.depthPct[0]!];
    };
    const fine = average(320);
    const error = (cells: number): number =>
      Math.max(...average(cells).map((v, i) => Math.abs(v - fine[i]!)));
    const [e20, e40, e80] = [error(20), error(40), error(80)];
    // The fine grid's own error shifts the last ratio a little (1/15 of an error at 80 cells).
    expect(Math.log2(e20 / e40)).toBeGreaterThan(1.8);
    expect(Math.log2(e20 / e40)).toBeLessThan(2.3);
    expect(Math.log2(e40 / e80)).toBeGreaterThan(1.8);
    expect(Math.log2(e40 / e80)).toBeLessThan(2.4);
  });

  test('is of third order in time: a thousandth of the tolerance takes ten times the steps and leaves a thousandth of the error', () => {
    // The error within a step is judged by a method of second order, so it goes with the cube of the step, and the steps
    // with tolerance^(-1/3); the error of the whole goes with steps^-3.
    const solve = (tolerancePct: number) => {
      const grid = dryingGrid(28, true, 40);
      const result = simulateDrying(
        runOf({
          startPct: parabolicStart(grid, 22, 0.7),
          segments: [{ durationS: 60 * DAY_S, emcStartPct: 14, emcEndPct: 8, tempC: 20 }],
          tolerancePct,
          // Within steps, and at the end of the last.
          observeS: [7.3 * DAY_S, 31.7 * DAY_S, 60 * DAY_S],
          depthFractions: [0.1, 0.5],
        }),
      );
      return {
        seen: [...result.averagePct, ...result.depthPct.flatMap((row) => [...row])],
        steps: result.steps,
      };
    };
    const exact = solve(1e-9).seen;
    const error = ({ seen }: { seen: number[] }): number =>
      Math.max(...seen.map((value, i) => Math.abs(value - exact[i]!)));
    const [rough, fine] = [solve(1e-3), solve(1e-6)];
    const order = Math.log(error(rough) / error(fine)) / Math.log(fine.steps / rough.steps);
    expect(order).toBeGreaterThan(2.7);
    expect(order).toBeLessThan(3.6);
  });

  test('on the coarse grid that fits and forecasts use, is about 0.1 % MC', () => {
    const segments: AirSegment[] = [
      { durationS: 90 * DAY_S, emcStartPct: 14, emcEndPct: 12, tempC: 18 },
      steady(7, 20, 60 * DAY_S),
    ];
    const observeS = Array.from({ length: 15 }, (_, i) => (i + 1) * 10 * DAY_S);
    const look = { segments, observeS, depthFractions: [0.1, 0.5] };
    const coarse = simulateDrying(runOf({ ...look, cells: 12, tolerancePct: 0.05 }));
    const fine = simulateDrying(runOf({ ...look, cells: 160, tolerancePct: 1e-4 }));
    for (const at of observeS.keys()) {
      expect(Math.abs(coarse.averagePct[at]! - fine.averagePct[at]!)).toBeLessThan(0.15);
      for (const row of [0, 1]) {
        expect(Math.abs(coarse.depthPct[row]![at]! - fine.depthPct[row]![at]!)).toBeLessThan(0.4);
      }
    }
  });
});

describe('mass', () => {
  test('that left through the faces is what the board lost, to rounding, whatever the board, the air and the tolerance', () => {
    fc.assert(
      fc.property(
        fc.record({
          cells: fc.integer({ min: 4, max: 60 }),
          half: fc.boolean(),
          start: fc.double({ min: 5, max: 150, noNaN: true }),
          factor: fc.double({ min: 0.05, max: 5, noNaN: true }),
          a: fc.double({ min: 0, max: 3, noNaN: true }),
          b: fc.double({ min: 0, max: 3, noNaN: true }),
          tolerancePct: fc.constantFrom(0.5, 0.05, 1e-3),
          emcs: fc.array(fc.double({ min: 3, max: 24, noNaN: true }), { minLength: 2, maxLength: 5 }),
        }),
        ({ cells, half, start, factor, a, b, tolerancePct, emcs }) => {
          const run = runOf({
            cells,
            half,
            startPct: new Float64Array(cells).fill(start),
            diffusivityFactor: factor,
            faceFactors: [a, half ? a : b],
            tolerancePct,
            segments: emcs.slice(1).map((emcEndPct, i) => ({
              durationS: 20 * DAY_S,
              emcStartPct: emcs[i]!,
              emcEndPct,
              tempC: 5 * i,
            })),
          });
          const result = simulateDrying(run);
          const saved = averageOf(run.grid, result.finalPct);
          expect(Math.abs(start - saved - result.lostPct)).toBeLessThan(1e-10 * start);
        },
      ),
      { numRuns: 60 },
    );
  });
});

describe('a board', () => {
  test('comes to the EMC of its air from above and from below', () => {
    for (const start of [40, 4]) {
      const { finalPct } = simulateDrying(
        runOf({ startPct: new Float64Array(40).fill(start), segments: [steady(9, 25, 2000 * DAY_S)] }),
      );
      for (const mc of finalPct) expect(mc).toBeCloseTo(9, 2);
    }
  });

  test('keeps its moisture when both faces are sealed', () => {
    const { finalPct, lostPct } = simulateDrying(runOf({ half: false, faceFactors: [0, 0] }));
    expect(lostPct).toBe(0);
    for (const mc of finalPct) expect(mc).toBeCloseTo(60, 9);
  });

  test('dries the same whatever was run along the same course before', () => {
    const course = runOf({
      half: false,
      segments: [steady(12, 20, 30 * DAY_S), steady(6, 25.5, 30 * DAY_S)],
      observeS: [DAY_S, 20 * DAY_S, 50 * DAY_S],
      depthFractions: [0.1, 0.5],
    });
    const wood = new WoodTables(0.56);
    const paces = [
      {},
      { faceFactors: [0, 0.3] as const, emcOffsetPct: 2 },
      { tables: wood.with(0.4), diffusivityFactor: 2 },
      { tables: wood.with(1.1), startPct: new Float64Array(40).fill(8) },
      { faceFactors: [0.3, 0] as const },
    ].map((changes) => ({ ...course, ...changes }));
    const run = dryingAlong(course);
    expect([...paces, ...paces].map(run)).toEqual([...paces, ...paces].map(simulateDrying));
  });

  test('whose faces are alike is the same computed whole or as a half', () => {
    const look = { observeS: [10 * DAY_S, 40 * DAY_S], depthFractions: [0.1, 0.5, 0.9], tolerancePct: 1e-5 };
    const half = simulateDrying(runOf({ ...look, cells: 60 }));
    const whole = simulateDrying(runOf({ ...look, cells: 120, half: false }));
    for (const at of [0, 1]) {
      expect(whole.averagePct[at]).toBeCloseTo(half.averagePct[at]!, 3);
      for (const row of [0, 1, 2]) expect(whole.depthPct[row]![at]).toBeCloseTo(half.depthPct[row]![at]!, 3);
    }
  });

  test('with one sealed face dries like one of twice the thickness with both open', () => {
    const sealed = simulateDrying(
      runOf({ half: false, cells: 200, faceFactors: [0.3, 0], observeS: [50 * DAY_S], tolerancePct: 1e-4 }),
    );
    const run = runOf({ observeS: [50 * DAY_S], cells: 200, tolerancePct: 1e-4 });
    const thick = simulateDrying({ ...run, grid: dryingGrid(56, true, 200) });
    expect(sealed.averagePct[0]).toBeCloseTo(thick.averagePct[0]!, 2);
  });

  test('with bark on face B is wetter there, and dries more slowly', () => {
    const look = { half: false, observeS: [30 * DAY_S], depthFractions: [0.1, 0.9] };
    const open = simulateDrying(runOf({ ...look, faceFactors: [0.3, 0.3] }));
    const bark = simulateDrying(runOf({ ...look, faceFactors: [0.3, 0.01] }));
    expect(bark.depthPct[1]![0]!).toBeGreaterThan(bark.depthPct[0]![0]! + 5);
    expect(bark.averagePct[0]!).toBeGreaterThan(open.averagePct[0]! + 5);
  });

  test('dries faster when it is warmer, thinner, or of a lighter species', () => {
    const left = (run: DryingRun): number => simulateDrying(run).lostPct;
    const usual = left(runOf({}));
    expect(left(runOf({ segments: [steady(12, 35, 60 * DAY_S)] }))).toBeGreaterThan(usual);
    expect(left({ ...runOf({}), grid: dryingGrid(20, true, 40) })).toBeGreaterThan(usual);
    expect(left(runOf({ tables: new LawTables(woodDryingLaw(0.35)) }))).toBeGreaterThan(usual);
  });

  test('never leaves the range between its start and its airs', () => {
    const { averagePct, depthPct } = simulateDrying(
      runOf({
        tolerancePct: 0.05,
        segments: [steady(16, 10, 30 * DAY_S), steady(6, 22, 30 * DAY_S)],
        observeS: Array.from({ length: 241 }, (_, i) => (i * DAY_S) / 4),
        depthFractions: [0, 0.05, 0.5],
      }),
    );
    for (const row of [averagePct, ...depthPct]) {
      for (const mc of row) {
        expect(mc).toBeGreaterThan(5.9);
        expect(mc).toBeLessThan(60.1);
      }
    }
  });
});

test('no cell dries to less than nothing, however dry, warm and sudden the air and rough the tolerance', () => {
  fc.assert(
    fc.property(
      fc.record({
        cells: fc.integer({ min: 4, max: 60 }),
        start: fc.double({ min: 0, max: 200, noNaN: true }),
        factor: fc.double({ min: 0.05, max: 300, noNaN: true }),
        face: fc.double({ min: 0, max: 10, noNaN: true }),
        tolerancePct: fc.constantFrom(0.5, 0.05, 1e-3),
        airs: fc.array(
          fc.record({
            days: fc.double({ min: 0.05, max: 200, noNaN: true }),
            emcStartPct: fc.double({ min: 0, max: 1, noNaN: true }),
            emcEndPct: fc.double({ min: 0, max: 25, noNaN: true }),
            tempC: fc.integer({ min: -20, max: 40 }),
          }),
          { minLength: 1, maxLength: 5 },
        ),
      }),
      ({ cells, start, factor, face, tolerancePct, airs }) => {
        const { finalPct } = simulateDrying(
          runOf({
            cells,
            startPct: new Float64Array(cells).fill(start),
            diffusivityFactor: factor,
            faceFactors: [face, face],
            tolerancePct,
            segments: airs.map(({ days, ...air }) => ({ ...air, durationS: days * DAY_S })),
          }),
        );
        for (const mc of finalPct) expect(mc).toBeGreaterThanOrEqual(-1e-9);
      },
    ),
    { numRuns: 100 },
  );
});

describe('what no board is', () => {
  test.each([
    ['thickness', () => dryingGrid(0, true, 20)],
    ['cells', () => dryingGrid(28, true, 2)],
    ['start', () => simulateDrying(runOf({ startPct: new Float64Array(40).fill(Number.NaN) }))],
    ['start of another length', () => simulateDrying(runOf({ startPct: [1, 2] }))],
    ['factor', () => simulateDrying(runOf({ diffusivityFactor: 0 }))],
    ['face', () => simulateDrying(runOf({ half: false, faceFactors: [1, -1] }))],
    ['unlike faces of half a board', () => simulateDrying(runOf({ faceFactors: [1, 0.5] }))],
    ['EMC', () => simulateDrying(runOf({ segments: [steady(-1, 20, DAY_S)] }))],
    ['duration', () => simulateDrying(runOf({ segments: [steady(10, 20, Number.NaN)] }))],
    ['time beyond the end', () => simulateDrying(runOf({ observeS: [1e9] }))],
    ['times out of order', () => simulateDrying(runOf({ observeS: [DAY_S, 0] }))],
    ['depth', () => simulateDrying(runOf({ depthFractions: [1.2] }))],
    ['tolerance', () => simulateDrying(runOf({ tolerancePct: 0 }))],
  ])('is refused: %s', (_, run) => {
    expect(run).toThrow(RangeError);
  });
});

describe('wood whose diffusivity rises less over moisture content', () => {
  const runWith = (tables: DryingRun['tables']) =>
    simulateDrying(runOf({ tables, observeS: [5, 20, 40, 60].map((day) => day * DAY_S) }));

  test('is the same at 18 %, lets more through when drier, and less when wetter', () => {
    const [all, some] = [woodDryingLaw(0.56), woodDryingLaw(0.56, 0.6)];
    expect(some.diffusivityM2S(18, 20)).toBeCloseTo(all.diffusivityM2S(18, 20), 20);
    expect(some.diffusivityM2S(8, 20)).toBeGreaterThan(1.4 * all.diffusivityM2S(8, 20));
    expect(some.diffusivityM2S(28, 20)).toBeLessThan(all.diffusivityM2S(28, 20));
    const constant = woodDryingLaw(0.56, 0);
    expect(constant.diffusivityM2S(8, 20)).toBeCloseTo(constant.diffusivityM2S(25, 20), 20);
  });

  test('dries about the same from tables that are shared by all exponents', () => {
    const shared = new WoodTables(0.56);
    for (const exponent of [-0.3, 0.2, 0.6, 1, 1.35]) {
      const own = runWith(new LawTables(woodDryingLaw(0.56, exponent)));
      const mixed = runWith(shared.with(exponent));
      for (const [at, pct] of own.averagePct.entries()) {
        expect(Math.abs(mixed.averagePct[at]! - pct)).toBeLessThan(0.15);
      }
    }
  });
});
