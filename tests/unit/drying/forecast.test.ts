import { describe, expect, test } from 'vitest';
import { type ForecastInput, forecastBoard, forecastSchema } from '../../../shared-core/wood/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  type FitReading,
  runBoard,
} from '../../../shared-core/wood/history-fit.ts';
import type { MonthlyAir } from '../../../shared-core/wood/monthly-air.ts';

const dayMs = 86_400_000;
const sawn = Date.UTC(2025, 3, 10);
const shed: MonthlyAir = [0, 1, 5, 10, 15, 19, 21, 20, 16, 11, 5, 1].map((tempC) => ({ tempC, rh: 0.68 }));
const room: MonthlyAir = shed.map(() => ({ tempC: 20, rh: 0.36 }));

const oak: DryingBoard = {
  thicknessMm: 28,
  basicSpecificGravity: 0.56,
  faces: ['open', 'open'],
  start: { atMs: sawn, mcPct: null, logSd: 0.3, shellRatio: 1 },
  stays: [{ fromMs: sawn, air: shed }],
};

function inputOf(changes: Partial<ForecastInput> = {}): ForecastInput {
  return {
    nowMs: sawn + 120 * dayMs,
    board: oak,
    readings: [],
    siblings: [],
    use: { minPct: 6, maxPct: 9, maxShellCorePct: 2 },
    elsewhere: [{ placeId: 2, air: room }],
    placeId: 1,
    horizonDays: 365,
    ...changes,
  };
}

/** Shell and core readings, as a board with these unknowns would give them. */
function readingsOf(theta: readonly number[], daysAfter: readonly number[]): FitReading[] {
  const instants = daysAfter.map((day) => sawn + day * dayMs);
  const depths = [0.1, 0.5];
  const run = runBoard(boardModel(oak), theta, oak.stays, sawn, instants.at(-1)!, null, instants, depths);
  return instants.flatMap((atMs, at) =>
    depths.map((depthFraction, row) => ({
      atMs,
      depthFraction,
      mcPct: run.depthPct[row]![at]!,
      standardUncertaintyPct: 1,
    })),
  );
}
const middle = dryingPrior(oak).mean;

describe('a forecast', () => {
  test('is plain data of its schema, and the same each time', () => {
    const input = inputOf({ readings: readingsOf(middle, [60, 119]) });
    const forecast = forecastBoard(input);
    expect(forecastSchema.parse(JSON.parse(JSON.stringify(forecast)))).toEqual(forecast);
    expect(forecastBoard(input)).toEqual(forecast);
  });

  test('orders its dates and its bands, and starts where the past ends', () => {
    const forecast = forecastBoard(inputOf({ readings: readingsOf(middle, [60, 119]) }));
    for (const place of forecast.places) {
      const { earlyMs, likelyMs, lateMs } = place.reach;
      if (likelyMs !== null) expect(earlyMs!).toBeLessThanOrEqual(likelyMs);
      if (lateMs !== null) expect(likelyMs!).toBeLessThanOrEqual(lateMs);
      for (const row of [place.band.average, place.band.shell, place.band.core, forecast.past.average]) {
        for (const { low, median, high } of row) {
          expect(low).toBeLessThan(median);
          expect(median).toBeLessThan(high);
        }
      }
      expect(place.band.atMs[0]).toBe(inputOf().nowMs);
      expect(place.band.average[0]!.median).toBeCloseTo(forecast.past.average.at(-1)!.median, 6);
      expect(place.band.average[0]!.median).toBeCloseTo(forecast.now.average.median, 6);
    }
    expect(forecast.past.atMs[0]).toBe(sawn);
    expect(forecast.past.atMs.at(-1)).toBe(inputOf().nowMs);
  });

  test('says that an open shed never makes furniture wood, that a heated room does, and what the shed ends at', () => {
    const forecast = forecastBoard(inputOf({ readings: readingsOf(middle, [60, 119]) }));
    const [here, inside] = forecast.places;
    expect(here!.placeId).toBe(1);
    expect(here!.never).toBe(true);
    expect(here!.reach).toEqual({ earlyMs: null, likelyMs: null, lateMs: null });
    expect(here!.floorPct.median).toBeGreaterThan(11);
    expect(inside!.placeId).toBe(2);
    expect(inside!.never).toBe(false);
    expect(inside!.reach.likelyMs).not.toBeNull();
    for (const { median } of here!.band.average) expect(median).toBeGreaterThan(here!.floorPct.median);
  });

  test('narrows with one reading, and more with rounds', () => {
    const width = (readings: FitReading[]): number => {
      const { average } = forecastBoard(inputOf({ readings })).now;
      return average.high - average.low;
    };
    const none = width([]);
    const one = width(readingsOf(middle, [100]).slice(1));
    const many = width(readingsOf(middle, [40, 70, 100, 119]));
    expect(one).toBeLessThan(0.7 * none);
    expect(many).toBeLessThan(one);
  });

  test('narrows when siblings have been probed', () => {
    const probed = forecastBoard(inputOf({ readings: readingsOf(middle, [60, 119]) }));
    const alone = forecastBoard(inputOf());
    const helped = forecastBoard(inputOf({ siblings: [probed.information, probed.information] }));
    const width = (f: typeof alone): number => f.now.average.high - f.now.average.low;
    expect(width(helped)).toBeLessThan(0.8 * width(alone));
  });

  test('comes true: for boards of other kinds the truth lies in its range about as often as it says', () => {
    // Unknowns set on a grid of the prior's own quantiles at 10, 50 and 90 %, not at random: 27 boards.
    const prior = dryingPrior(oak);
    const use = { minPct: 6, maxPct: 18, maxShellCorePct: 6 };
    let inside = 0;
    let boards = 0;
    for (const d of [-1.28, 0, 1.28]) {
      for (const s of [-1.28, 0, 1.28]) {
        for (const m of [-1.28, 0, 1.28]) {
          const theta = prior.mean.map(
            (mean, i) => mean + [d, s, m, 0][i]! * Math.sqrt(prior.covariance[i]![i]!),
          );
          const nowMs = sawn + 40 * dayMs;
          const forecast = forecastBoard(
            inputOf({ nowMs, use, elsewhere: [], readings: readingsOf(theta, [20, 40]), horizonDays: 700 }),
          );
          const daily = Array.from({ length: 600 }, (_, i) => nowMs + i * dayMs);
          const run = runBoard(boardModel(oak), theta, oak.stays, sawn, daily.at(-1)!, null, daily, [
            3 / 28,
            1 - 3 / 28,
            0.5,
          ]);
          const at = daily.findIndex(
            (_, i) => run.averagePct[i]! <= 18 && run.depthPct[2]![i]! - run.depthPct[0]![i]! <= 6,
          );
          const { earlyMs, lateMs } = forecast.places[0]!.reach;
          boards++;
          if (daily[at]! >= earlyMs! && (lateMs === null || daily[at]! <= lateMs)) inside++;
        }
      }
    }
    // 80 % of boards drawn from the prior should; these corners are further out than most, and the readings exact.
    expect(inside / boards).toBeGreaterThan(0.7);
  });
});

describe('today', () => {
  test('the profile is lowest at the faces and highest in the middle of a drying board', () => {
    const { profile } = forecastBoard(inputOf({ readings: readingsOf(middle, [60, 119]) })).now;
    expect(profile.map((p) => p.depthFraction)).toHaveLength(21);
    expect(profile[10]!.pct.median).toBeGreaterThan(profile[1]!.pct.median);
    expect(profile[1]!.pct.median).toBeCloseTo(profile[19]!.pct.median, 6);
  });

  test('a board with bark on face B is wetter there', () => {
    const board: DryingBoard = { ...oak, faces: ['open', 'bark'] };
    const { faceAPct, faceBPct } = forecastBoard(inputOf({ board, elsewhere: [] })).now;
    expect(faceBPct).toBeGreaterThan(faceAPct + 1);
  });

  test('is ready with high probability when it has stood long in air that suits its use', () => {
    const board: DryingBoard = { ...oak, stays: [{ fromMs: sawn, air: room }] };
    const long = inputOf({ nowMs: sawn + 700 * dayMs, board, elsewhere: [] });
    const use = { minPct: 4, maxPct: 11, maxShellCorePct: 2 };
    const { now, places } = forecastBoard({ ...long, use });
    expect(now.probabilityReady).toBeGreaterThan(0.9);
    expect(places[0]!.reach.earlyMs).toBe(long.nowMs);
  });

  test('on the day it was sawn there is no past yet', () => {
    const { past, now } = forecastBoard(inputOf({ nowMs: sawn, elsewhere: [] }));
    expect(past.atMs).toEqual([sawn]);
    expect(now.probabilityReady).toBeLessThan(0.01);
  });
});

describe('the next probing', () => {
  const shop = { minPct: 6, maxPct: 16, maxShellCorePct: 6 };

  test('is now for a board that nobody has probed', () => {
    const input = inputOf();
    expect(forecastBoard(input).nextProbe).toMatchObject({ atMs: input.nowMs });
  });

  test('is not here for a board that cannot get ready here', () => {
    const readings = readingsOf(middle, [30, 60, 90, 119]);
    const { nextProbe } = forecastBoard(inputOf({ readings }));
    expect(nextProbe.atMs).toBeNull();
    expect(nextProbe.why).toMatch(/bring it in/);
  });

  test('is a month after the first, while the rate is unsure', () => {
    const nowMs = sawn + 20 * dayMs;
    const { nextProbe } = forecastBoard(inputOf({ nowMs, use: shop, readings: readingsOf(middle, [20]) }));
    expect(nextProbe.atMs).toBe(nowMs + 30 * dayMs);
  });

  test('is now when it may be ready or not', () => {
    const nowMs = sawn + 103 * dayMs;
    const forecast = forecastBoard(
      inputOf({ nowMs, use: shop, readings: readingsOf(middle, [30, 60]), elsewhere: [] }),
    );
    expect(forecast.now.probabilityReady).toBeGreaterThan(0.1);
    expect(forecast.now.probabilityReady).toBeLessThan(0.9);
    expect(forecast.nextProbe.atMs).toBe(nowMs);
  });

  test('is never again for a board found ready today', () => {
    const board: DryingBoard = { ...oak, stays: [{ fromMs: sawn, air: room }] };
    const nowMs = sawn + 700 * dayMs;
    const readings: FitReading[] = [0.1, 0.5].map((depthFraction) => ({
      atMs: nowMs,
      depthFraction,
      mcPct: 7,
      standardUncertaintyPct: 0.7,
    }));
    const { nextProbe } = forecastBoard(inputOf({ nowMs, board, readings, elsewhere: [] }));
    expect(nextProbe).toMatchObject({ atMs: null, why: expect.stringMatching(/ready/) });
  });
});

describe('is refused', () => {
  test.each([
    ['a board that starts after today', { nowMs: sawn - dayMs }, /after today/],
    [
      'a reading from the future',
      { readings: [{ atMs: sawn + 500 * dayMs, depthFraction: 0.5, mcPct: 12, standardUncertaintyPct: 1 }] },
      /future/,
    ],
    [
      'a history without its first place',
      { board: { ...oak, stays: [{ fromMs: sawn + dayMs, air: shed }] } },
      /add the place/,
    ],
  ] as const)('%s', (_, changes, message) => {
    expect(() => forecastBoard(inputOf(changes as Partial<ForecastInput>))).toThrow(message);
  });
});
