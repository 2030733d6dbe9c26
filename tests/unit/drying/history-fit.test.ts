import { describe, expect, test } from 'vitest';
import { MOST_SIBLINGS } from '../../../electron/app/forecast/forecast-messages.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import type { MonthlyAir } from '../../../shared-core/wood/climate/monthly-air.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  type FitReading,
  fitHistory,
  modelErrorPct,
  pooledPrior,
  priorPace,
  runBoard,
} from '../../../shared-core/wood/drying/history-fit.ts';
import type { Gaussian, Information } from '../../../shared-core/wood/maths/gaussian.ts';
import { worked } from '../worked.ts';

const fitOf = (...given: Parameters<typeof fitHistory>) => worked(fitHistory(...given));

const sawn = Date.UTC(2025, 3, 10);
const shed: MonthlyAir = [0, 1, 5, 10, 15, 19, 21, 20, 16, 11, 5, 1].map((tempC) => ({ tempC, rh: 0.68 }));
const room: MonthlyAir = shed.map(() => ({ tempC: 20, rh: 0.42 }));

const oak: DryingBoard = {
  thicknessMm: 30,
  basicSpecificGravity: 0.56,
  dryingClass: 'upland-oak',
  start: { atMs: sawn, mcPct: null, logSd: 0.3, shellRatio: 1 },
  stays: [
    { fromMs: sawn, air: shed },
    { fromMs: sawn + 160 * DAY_MS, air: room },
  ],
};
const model = boardModel(oak);
const prior = dryingPrior(oak);
const sdOf = (gaussian: { covariance: number[][] }, i: number): number =>
  Math.sqrt(gaussian.covariance[i]![i]!);

/** Readings that a board with these unknowns would give, shell and core, exact. */
function readingsOf(
  truth: readonly number[],
  daysAfter: readonly number[],
  uncertaintyPct = 0.7,
): FitReading[] {
  const depths = [0.1, 0.5];
  const instants = daysAfter.map((day) => sawn + day * DAY_MS);
  const run = runBoard(model, truth, oak.stays, sawn, instants.at(-1)!, null, instants, depths);
  return instants.flatMap((atMs, at) =>
    depths.map((depthFraction, row) => ({
      atMs,
      depthFraction,
      mcPct: run.depthPct[row]![at]!,
      standardUncertaintyPct: uncertaintyPct,
    })),
  );
}

/** A slower board, freer faces, wetter at first, in damper air, and with a steeper law than the prior's middle. */
const truth = [Math.log(0.25), Math.log(0.12), Math.log(80), 0.8, 0.8];

describe('a fit', () => {
  test('without readings is the prior', () => {
    const fit = fitOf(model, [], prior);
    expect(fit.posterior).toEqual(prior);
    expect(fit.information.matrix.flat().every((value) => value === 0)).toBe(true);
  });

  test('is narrower in what the board does after one reading', () => {
    const [, core] = readingsOf(truth, [90]);
    const fit = fitOf(model, [core!], prior);
    expect(sdOf(fit.posterior, 0)).toBeLessThan(0.8 * sdOf(prior, 0));
    // It also moves the right way.
    expect(fit.posterior.mean[0]!).toBeLessThan(prior.mean[0]!);
  });

  test('to many rounds finds the unknowns that made them, within its own spread', () => {
    const fit = fitOf(model, readingsOf(truth, [20, 50, 80, 110, 140, 170, 200, 230], 0.3), prior);
    for (const [i, value] of truth.entries()) {
      expect(Math.abs(fit.posterior.mean[i]! - value)).toBeLessThan(2 * sdOf(fit.posterior, i));
    }
    expect(fit.posterior.mean[0]!).toBeCloseTo(truth[0]!, 0);
    expect(sdOf(fit.posterior, 0)).toBeLessThan(0.3);
    for (const residual of fit.residuals) {
      expect(Math.abs(residual.fittedPct - residual.measuredPct)).toBeLessThan(1.5 * residual.sdPct);
    }
  });

  test('has its cost at a minimum: no step along an unknown makes it fit better', () => {
    const readings = readingsOf(truth, [40, 100, 180]);
    const fit = fitOf(model, readings, prior);
    const cost = (theta: readonly number[]): number => {
      const instants = [...new Set(readings.map((r) => r.atMs))];
      const run = runBoard(model, theta, oak.stays, sawn, instants.at(-1)!, null, instants, [0.1, 0.5]);
      const misfit = fit.residuals.reduce((sum, r) => {
        const fitted = run.depthPct[r.depthFraction < 0.3 ? 0 : 1]![instants.indexOf(r.atMs)]!;
        return sum + ((r.measuredPct - fitted) / r.sdPct) ** 2;
      }, 0);
      return theta.reduce((sum, value, i) => sum + ((value - prior.mean[i]!) / sdOf(prior, i)) ** 2, misfit);
    };
    const best = cost(fit.posterior.mean);
    for (const i of prior.mean.keys()) {
      for (const step of [-0.5, 0.5]) {
        const moved = fit.posterior.mean.map((value, j) =>
          j === i ? value + step * sdOf(fit.posterior, i) : value,
        );
        // Slack for a fit that stops when a further step would gain less than 0.01.
        expect(cost(moved)).toBeGreaterThan(best - 0.02);
      }
    }
  });

  test('takes the model to be less wrong the more rounds agree with it, and no more wrong where they do not', () => {
    const days = [20, 50, 80, 110];
    const errorAfter = (readings: FitReading[]): number => fitOf(model, readings, prior).modelErrorPct;
    const agreeing = [1, 2, 4].map((rounds) => errorAfter(readingsOf(truth, days.slice(0, rounds))));
    expect(errorAfter([])).toBe(modelErrorPct);
    expect(agreeing[0]!).toBeGreaterThan(0.9 * modelErrorPct);
    expect(agreeing[1]!).toBeLessThan(agreeing[0]!);
    expect(agreeing[2]!).toBeLessThan(0.8 * modelErrorPct);
    const scattered = readingsOf(truth, days).map((reading, at) => ({
      ...reading,
      mcPct: reading.mcPct + (at % 3 === 0 ? 2.5 : -2.5),
    }));
    expect(errorAfter(scattered)).toBe(modelErrorPct);
  });

  test('takes twenty spots of one round for one reading of the same meter, not for twenty', () => {
    const [, core] = readingsOf(truth, [90]);
    const one = fitOf(model, [core!], prior);
    const twenty = fitOf(
      model,
      Array.from({ length: 20 }, (_, i) => ({ ...core!, atMs: core!.atMs + i * 20_000 })),
      prior,
    );
    // Their scatter averages out, the meter's error does not.
    expect(sdOf(twenty.posterior, 0)).toBeLessThan(sdOf(one.posterior, 0));
    expect(sdOf(twenty.posterior, 0)).toBeGreaterThan(0.95 * sdOf(one.posterior, 0));
  });

  // By hand: a board long in balance with its room shows nothing but EMC. What the meter is wrong by (0.7) and the offset
  // of the air cannot be told apart, so no number of rounds brings the offset below what the two together leave.
  test('many rounds with one meter do not average away what the meter is wrong by', () => {
    const old: DryingBoard = { ...oak, thicknessMm: 12, stays: [{ fromMs: sawn, air: room }] };
    const years = Array.from({ length: 20 }, (_, i) => 500 + 20 * i);
    const readings = years.flatMap((day) =>
      [0.1, 0.5].map((depthFraction) => ({
        atMs: sawn + day * DAY_MS,
        depthFraction,
        mcPct: 8.2,
        standardUncertaintyPct: 0.7,
      })),
    );
    const fit = fitOf(boardModel(old), readings, dryingPrior(old));
    const least = 1 / Math.sqrt(1 / sdOf(dryingPrior(old), 3) ** 2 + 1 / 0.7 ** 2);
    expect(sdOf(fit.posterior, 3)).toBeGreaterThan(least);
    expect(sdOf(fit.posterior, 3)).toBeLessThan(1.05 * least);
  });

  test('a single spot does not count as free of scatter, and spots that agree by chance not either', () => {
    const spot: FitReading = {
      atMs: sawn + 200 * DAY_MS,
      depthFraction: 0.5,
      mcPct: 12,
      standardUncertaintyPct: 0.7,
    };
    // Scatter of spots 0.5, of the model 0.5.
    expect(fitOf(model, [spot], prior).residuals[0]!.sdPct).toBeCloseTo(Math.hypot(0.7, 0.5, 0.5), 6);
    // Four degrees of freedom beforehand and one of their own, which saw nothing; the mean of two.
    const twice = fitOf(model, [spot, spot], prior).residuals[0]!.sdPct;
    expect(twice).toBeCloseTo(Math.hypot(0.7, Math.sqrt((0.25 * 4) / 5 / 2), 0.5), 6);
  });

  test('of wet wood, a reading that errs low weighs no more than one that errs high', () => {
    // Where the board holds 45 % by all else that is known, as a sure start makes it.
    const sure: DryingBoard = { ...oak, start: { ...oak.start, mcPct: 45, logSd: 0.1 } };
    const away = (mcPct: number): number => {
      const reading = {
        atMs: sawn,
        depthFraction: 0.5,
        mcPct,
        standardUncertaintyPct: mcPct > 45 ? 11.5 : 4.5,
      };
      const fit = fitOf(boardModel(sure), [reading], dryingPrior(sure));
      return fit.posterior.mean[2]! - Math.log(45);
    };
    const [low, high] = [away(37), away(53)];
    expect(low).toBeLessThan(0);
    expect(high).toBeGreaterThan(0);
    expect(-low / high).toBeLessThan(1.5);
  });

  test('gives little weight to readings far above fiber saturation', () => {
    const wet = readingsOf(truth, [5])[1]!;
    const fit = fitOf(model, [wet], prior);
    expect(wet.mcPct).toBeGreaterThan(60);
    expect(sdOf(fit.posterior, 0)).toBeGreaterThan(0.9 * sdOf(prior, 0));
  });

  test('refuses a reading older than the board', () => {
    expect(() =>
      fitHistory(
        model,
        [{ atMs: sawn - DAY_MS, depthFraction: 0.5, mcPct: 20, standardUncertaintyPct: 1 }],
        prior,
      ),
    ).toThrow(RangeError);
  });
});

describe('boards of one stack and log', () => {
  const sibling = fitOf(model, readingsOf(truth, [60, 110, 160]), prior).information;

  test('share what they learned: the prior moves to the siblings and is narrower', () => {
    const pooled = pooledPrior(prior, [sibling]);
    expect(pooled.mean[0]!).toBeLessThan(prior.mean[0]!);
    expect(sdOf(pooled, 0)).toBeLessThan(sdOf(prior, 0));
    const more = pooledPrior(prior, [sibling, sibling, sibling]);
    expect(sdOf(more, 0)).toBeLessThan(sdOf(pooled, 0));
  });

  test('keep a spread of their own, however many were probed', () => {
    const pooled = pooledPrior(
      prior,
      Array.from({ length: 400 }, () => sibling),
    );
    expect(sdOf(pooled, 0)).toBeGreaterThan(0.24);
    expect(sdOf(pooled, 1)).toBeGreaterThan(0.29);
  });

  // What is left is how boards of a log differ among themselves: by arithmetic, 1 + 1 / 40 of its variance.
  test('learn a pace from as many as the app takes that a whole stack of 1,200 would not teach better', () => {
    const [some, whole] = [MOST_SIBLINGS, 1200].map((count) =>
      pooledPrior(prior, Array<Information>(count).fill(sibling)),
    ) as [Gaussian, Gaussian];
    expect(sdOf(some, 0)).toBeLessThan(1.05 * sdOf(whole, 0));
    expect(Math.abs(some.mean[0]! - whole.mean[0]!)).toBeLessThan(0.1 * sdOf(whole, 0));
  });

  test('learn nothing from siblings without readings', () => {
    const none = fitOf(model, [], prior).information;
    const pooled = pooledPrior(prior, [none, none]);
    for (const i of prior.mean.keys()) {
      expect(pooled.mean[i]).toBeCloseTo(prior.mean[i]!, 6);
      expect(sdOf(pooled, i)).toBeCloseTo(sdOf(prior, i), 6);
    }
  });

  // The scalar case by hand: group variance g = P - w, sibling's estimate t with variance v;
  // group posterior precision 1/g + 1/(v + w); the board's prior adds w again.
  test('pool as a normal hierarchy does, checked by hand for one unknown', () => {
    const [p, w, v, t] = [priorPace.diffusivity.logSd ** 2, 0.0625, 0.05, -1.6];
    const only = (value: number): number[][] =>
      prior.mean.map((_, i) => prior.mean.map((_m, j) => (i === 0 && j === 0 ? value : 0)));
    const pooled = pooledPrior(prior, [{ matrix: only(1 / v), vector: [t / v, 0, 0, 0, 0] }]);
    const groupPrecision = 1 / (p - w) + 1 / (v + w);
    expect(sdOf(pooled, 0) ** 2).toBeCloseTo(1 / groupPrecision + w, 9);
    expect(pooled.mean[0]).toBeCloseTo(
      (Math.log(priorPace.diffusivity.medians['upland-oak']) / (p - w) + t / (v + w)) / groupPrecision,
      9,
    );
  });
});

describe('a board whose faces meet something else in each place', () => {
  const board: DryingBoard = {
    ...oak,
    stays: [
      { fromMs: sawn, air: shed, faces: ['open', 'bottom'] },
      { fromMs: sawn + 100 * DAY_MS, air: shed },
      { fromMs: sawn + 160 * DAY_MS, air: room },
    ],
  };
  const unlike = boardModel(board);
  const theta = prior.mean;
  const moved = sawn + 100 * DAY_MS;
  const depths = [0.1, 0.9];
  /** Both sides of the move, and the instant of it. */
  const instants = [10, 100, 101, 159, 200].map((day) => sawn + day * DAY_MS);
  const whole = runBoard(unlike, theta, board.stays, sawn, instants.at(-1)!, null, instants, depths);

  test('is run stay by stay, the one going on from where the other ended', () => {
    const first = runBoard(unlike, theta, board.stays, sawn, moved, null, instants.slice(0, 2), depths);
    const later = [instants[2]!, instants[3]!, instants[4]!];
    const second = runBoard(
      unlike,
      theta,
      board.stays,
      moved,
      instants.at(-1)!,
      first.finalPct,
      later,
      depths,
    );
    expect([...whole.averagePct]).toEqual([...first.averagePct, ...second.averagePct]);
    for (const row of [0, 1])
      expect([...whole.depthPct[row]!]).toEqual([...first.depthPct[row]!, ...second.depthPct[row]!]);
    expect(whole.finalPct).toEqual(second.finalPct);
  });

  test('loses what left through its faces, to rounding', () => {
    const from = runBoard(unlike, theta, board.stays, sawn, sawn, null, [sawn], depths).averagePct[0]!;
    expect(from - whole.averagePct.at(-1)!).toBeCloseTo(whole.lostPct, 8);
  });

  test('dries unevenly where one face is covered, and evens out where none is', () => {
    const [upper, lower] = whole.depthPct as [Float64Array, Float64Array];
    expect(lower[0]! - upper[0]!).toBeGreaterThan(0.5);
    expect(lower[1]! - upper[1]!).toBeGreaterThan(0.1);
    expect(Math.abs(lower[4]! - upper[4]!)).toBeLessThan(0.02);
  });
});
