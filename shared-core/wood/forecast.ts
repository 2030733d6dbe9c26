/**
 * When a board will be fit for its use: where it stands, and side by side if it were moved today.
 *
 * The fitted unknowns (`history-fit.ts`) and the air to come are a normal distribution of four numbers. The model
 * runs at its middle and at two points along each of its axes (three-point Gauss-Hermite nodes), which gives every
 * quantity as a sum of parabolas in independent standard normals; that sum's mean, variance and skewness are exact
 * and its quantiles follow by Cornish and Fisher's expansion (from memory). No random numbers: the same question
 * has the same answer.
 */
import { z } from 'zod';
import { useSchema } from '../probing/assessment.ts';
import { emcOfYear } from './climate.ts';
import { atDepthOf, averageOf, type DryingGrid } from './drying-model.ts';
import { cholesky, type Gaussian, normalCdf, times } from './gaussian.ts';
import {
  boardModel,
  dryingBoardSchema,
  dryingPrior,
  fitHistory,
  fitReadingSchema,
  modelErrorPct,
  pooledPrior,
  runBoard,
} from './history-fit.ts';
import { type MonthlyAir, monthlyAirSchema } from './monthly-air.ts';

const dayMs = 86_400_000;

export const informationSchema = z.object({
  matrix: z.array(z.array(z.number()).length(4)).length(4),
  vector: z.array(z.number()).length(4),
});

export const forecastInputSchema = z.object({
  /** UTC, ms; the caller's clock. */
  nowMs: z.number(),
  board: dryingBoardSchema,
  readings: z.array(fitReadingSchema).max(2000),
  /** What the fits of boards of the same stack and log learnt. */
  siblings: z.array(informationSchema).max(500),
  use: useSchema.pick({ minPct: true, maxPct: true, maxShellCorePct: true }),
  /** Other places, as if the board were moved there now. Where it stands comes first by itself. */
  elsewhere: z.array(z.object({ placeId: z.number().int(), air: monthlyAirSchema })).max(20),
  placeId: z.number().int(),
  horizonDays: z.number().int().min(7).max(3650),
});
export type ForecastInput = z.infer<typeof forecastInputSchema>;

/** The 10, 50 and 90 % values of one quantity. */
export const quantilesSchema = z.object({ low: z.number(), median: z.number(), high: z.number() });
export type Quantiles = z.infer<typeof quantilesSchema>;

/** Values over time for the plot, % MC; every array as long as `atMs`. */
export const bandSchema = z.object({
  atMs: z.array(z.number()),
  average: z.array(quantilesSchema),
  shell: z.array(quantilesSchema),
  core: z.array(quantilesSchema),
});
export type Band = z.infer<typeof bandSchema>;

export const placeForecastSchema = z.object({
  placeId: z.number().int(),
  /**
   * First day on which the board is in its use's range, with its core near enough to its shell: with 10, 50 and 90 %
   * certainty. Null where that does not come within the horizon.
   */
  reach: z.object({
    earlyMs: z.number().nullable(),
    likelyMs: z.number().nullable(),
    lateMs: z.number().nullable(),
  }),
  /** EMC of the place's driest month, % MC: no board's average passes below it there, however long it stands. */
  floorPct: quantilesSchema,
  /** 1 to 12. */
  floorMonth: z.number().int(),
  /** Even the lowest likely floor lies above the use's range: waiting there cannot do. */
  never: z.boolean(),
  band: bandSchema,
});
export type PlaceForecast = z.infer<typeof placeForecastSchema>;

export const forecastSchema = z.object({
  /** What the board's own readings say, for its siblings. */
  information: informationSchema,
  /** Today. */
  now: z.object({
    average: quantilesSchema,
    shell: quantilesSchema,
    core: quantilesSchema,
    /** Just under face A and just under face B, % MC, likeliest. */
    faceAPct: z.number(),
    faceBPct: z.number(),
    /** Probability that the board is fit for its use today. */
    probabilityReady: z.number().min(0).max(1),
    profile: z.array(z.object({ depthFraction: z.number(), pct: quantilesSchema })),
  }),
  /** From the board's start to today. */
  past: bandSchema,
  /** Where it stands, then the others. */
  places: z.array(placeForecastSchema).min(1),
  /** When a probing could change the answer, and why then; null: not at all. */
  nextProbe: z.object({ atMs: z.number().nullable(), why: z.string() }),
  /** Readings against the fit. */
  residuals: z.array(
    z.object({
      atMs: z.number(),
      depthFraction: z.number(),
      measuredPct: z.number(),
      fittedPct: z.number(),
      sdPct: z.number(),
    }),
  ),
  /** Factors on the wood's published diffusivity and on a free face, with their 10 and 90 % values. */
  diffusivityFactor: quantilesSchema,
  surfaceFactor: quantilesSchema,
});
export type Forecast = z.infer<typeof forecastSchema>;

/** 90 % point of the standard normal. */
const z90 = 1.2816;

/** Values at the middle and at the two points along each axis, in that order: middle, +1, -1, +2, -2, … */
function quantilesOf(values: readonly number[], errorSd: number): Quantiles {
  const { mean, sd, skewness } = momentsOf(values, errorSd);
  const at = (z: number): number => mean + sd * (z + ((z * z - 1) * skewness) / 6);
  return { low: at(-z90), median: at(0), high: at(z90) };
}

function momentsOf(
  values: readonly number[],
  errorSd: number,
): { mean: number; sd: number; skewness: number } {
  const middle = values[0]!;
  let mean = middle;
  let variance = errorSd * errorSd;
  let third = 0;
  for (let k = 1; k < values.length; k += 2) {
    const [up, down] = [values[k]!, values[k + 1]!];
    const straight = (up - down) / (2 * Math.sqrt(3));
    const bent = (up + down - 2 * middle) / 6;
    mean += bent;
    variance += straight * straight + 2 * bent * bent;
    third += 6 * straight * straight * bent + 8 * bent ** 3;
  }
  const sd = Math.sqrt(variance);
  // Beyond this the expansion would fold back on itself between its 10 and 90 % points.
  const skewness = sd === 0 ? 0 : Math.max(-1.5, Math.min(1.5, third / sd ** 3));
  return { mean, sd, skewness };
}

/** The points of `quantilesOf` for a normal distribution. */
function nodesOf(distribution: Gaussian): number[][] {
  const lower = cholesky(distribution.covariance);
  const nodes = [distribution.mean];
  for (let axis = 0; axis < lower.length; axis++) {
    for (const sign of [1, -1]) {
      const along = lower.map((_, j) => (j === axis ? sign * Math.sqrt(3) : 0));
      nodes.push(times(lower, along).map((value, i) => value + distribution.mean[i]!));
    }
  }
  return nodes;
}

/** Depth that stands for the shell: 3 mm as pins go in, but within the outer sixth of a thin board. */
const shellFraction = (thicknessMm: number): number => Math.min(3 / thicknessMm, 1 / 6);

/** How unsure a place's air to come is against its monthly means, % MC of EMC. Common practice, no source. */
const comingAirSdPct = 0.5;
/** The same for a place where no board of this fit has stood. */
const untriedAirSdPct = 1;

type Series = { average: Float64Array; shellA: Float64Array; shellB: Float64Array; core: Float64Array };

/** Shell for a judgement is the drier of the two faces: it is that which strains against the core. */
const shellOf = (series: Series, at: number): number => Math.min(series.shellA[at]!, series.shellB[at]!);

/** Points in a band: enough for a plot, and no more than the window needs. */
const bandPoints = 120;

function bandOf(runs: readonly Series[], allMs: readonly number[]): Band {
  const every = Math.ceil(allMs.length / bandPoints);
  const shown = allMs.map((_, at) => at).filter((at) => at % every === 0 || at === allMs.length - 1);
  const over = (value: (series: Series, at: number) => number): Quantiles[] =>
    shown.map((at) =>
      quantilesOf(
        runs.map((series) => value(series, at)),
        modelErrorPct,
      ),
    );
  return {
    atMs: shown.map((at) => allMs[at]!),
    average: over((series, at) => series.average[at]!),
    shell: over(shellOf),
    core: over((series, at) => series.core[at]!),
  };
}

/** How far a board is from being fit for its use, % MC: 0 or less is fit. */
const shortfall = (
  use: ForecastInput['use'],
  averagePct: number,
  shellPct: number,
  corePct: number,
): number =>
  Math.max(averagePct - use.maxPct, use.minPct - averagePct, corePct - shellPct - use.maxShellCorePct);

const days = (fromMs: number, count: number, stepDays: number): number[] =>
  Array.from({ length: Math.floor(count / stepDays) + 1 }, (_, i) => fromMs + i * stepDays * dayMs);

/**
 * The forecast of one board: a pure function of what is known today.
 *
 * @throws RangeError where the history is not in order, or a number is outside what the model takes; the message says
 *         what to set right
 */
export function forecastBoard(input: ForecastInput): Forecast {
  const { board, nowMs } = input;
  const begun = board.start.atMs;
  if (nowMs < begun) throw new RangeError('The board starts after today: set the day it was sawn right.');
  if (input.readings.some((reading) => reading.atMs > nowMs)) {
    throw new RangeError('A reading is from the future: set the clock or its day right.');
  }
  const model = boardModel(board);
  const prior = pooledPrior(dryingPrior(board), input.siblings);
  const fit = fitHistory(model, input.readings, prior);
  const nodes = nodesOf(fit.posterior);
  const shell = shellFraction(board.thicknessMm);
  const depths = [shell, 1 - shell, 0.5];

  const pastDays = (nowMs - begun) / dayMs;
  const pastStep = Math.max(1, pastDays / bandPoints);
  const pastMs = [...days(begun, pastDays, pastStep).filter((ms) => ms < nowMs), nowMs];
  const pastRuns = nodes.map((theta) =>
    runBoard(model, theta, board.stays, begun, nowMs, null, pastMs, depths),
  );
  const profiles = pastRuns.map((run) => run.finalPct);
  const seriesOf = (run: { averagePct: Float64Array; depthPct: Float64Array[] }): Series => ({
    average: run.averagePct,
    shellA: run.depthPct[0]!,
    shellB: run.depthPct[1]!,
    core: run.depthPct[2]!,
  });

  const here = board.stays.findLast((stay) => stay.fromMs <= nowMs)!;
  const untilMs = nowMs + input.horizonDays * dayMs;
  const aheadMs = days(nowMs, input.horizonDays, 1);
  const places = [{ placeId: input.placeId, air: here.air }, ...input.elsewhere].map((place, index) => {
    const airOffsetPct = index === 0 ? fit.posterior.mean[3]! : 0;
    const airSdPct =
      index === 0 ? Math.hypot(Math.sqrt(fit.posterior.covariance[3]![3]!), comingAirSdPct) : untriedAirSdPct;
    const runs = nodes.map((theta, k) => {
      // Another place's air is not off by what this one's was, and no year is the mean year: the last two nodes,
      // which differ from the middle in nothing else, stand for the air to come.
      const sign = k === nodes.length - 2 ? 1 : k === nodes.length - 1 ? -1 : 0;
      const ahead = [...theta.slice(0, 3), airOffsetPct + sign * Math.sqrt(3) * airSdPct];
      const stays = [{ fromMs: nowMs, air: place.air }];
      return seriesOf(runBoard(model, ahead, stays, nowMs, untilMs, profiles[k]!, aheadMs, depths));
    });
    return placeForecast(input.use, place, aheadMs, runs, airOffsetPct, airSdPct);
  });

  const past = bandOf(pastRuns.map(seriesOf), pastMs);
  const today = nowOf(input, model.grid, profiles, shell);
  const [d, s] = fit.posterior.mean;
  return {
    information: fit.information,
    now: today,
    past,
    places,
    nextProbe: nextProbe(input, today.probabilityReady, places, Math.sqrt(fit.posterior.covariance[0]![0]!)),
    residuals: fit.residuals,
    diffusivityFactor: logQuantiles(d!, Math.sqrt(fit.posterior.covariance[0]![0]!)),
    surfaceFactor: logQuantiles(s!, Math.sqrt(fit.posterior.covariance[1]![1]!)),
  };
}

const logQuantiles = (mean: number, sd: number): Quantiles => ({
  low: Math.exp(mean - z90 * sd),
  median: Math.exp(mean),
  high: Math.exp(mean + z90 * sd),
});

function placeForecast(
  use: ForecastInput['use'],
  place: { placeId: number; air: MonthlyAir },
  atMs: readonly number[],
  runs: readonly Series[],
  airOffsetPct: number,
  airSdPct: number,
): PlaceForecast {
  const year = emcOfYear(place.air);
  const reach: PlaceForecast['reach'] = { earlyMs: null, likelyMs: null, lateMs: null };
  for (const [at, ms] of atMs.entries()) {
    const short = quantilesOf(
      runs.map((series) => shortfall(use, series.average[at]!, shellOf(series, at), series.core[at]!)),
      modelErrorPct,
    );
    if (short.low <= 0) reach.earlyMs ??= ms;
    if (short.median <= 0) reach.likelyMs ??= ms;
    if (short.high <= 0) reach.lateMs ??= ms;
    if (reach.lateMs !== null) break;
  }
  const floor = year.driestEmcPct + airOffsetPct;
  const floorPct = { low: floor - z90 * airSdPct, median: floor, high: floor + z90 * airSdPct };
  return {
    placeId: place.placeId,
    reach,
    floorPct,
    floorMonth: year.driestMonth,
    never: reach.earlyMs === null && floorPct.low > use.maxPct,
    band: bandOf(runs, atMs),
  };
}

function nowOf(
  input: ForecastInput,
  grid: DryingGrid,
  profiles: readonly Float64Array[],
  shell: number,
): Forecast['now'] {
  const over = (value: (profile: Float64Array) => number): Quantiles =>
    quantilesOf(profiles.map(value), modelErrorPct);
  const shellPct = (profile: Float64Array): number =>
    Math.min(atDepthOf(grid, profile, shell), atDepthOf(grid, profile, 1 - shell));
  const short = momentsOf(
    profiles.map((p) => shortfall(input.use, averageOf(grid, p), shellPct(p), atDepthOf(grid, p, 0.5))),
    modelErrorPct,
  );
  const middle = profiles[0]!;
  return {
    average: over((profile) => averageOf(grid, profile)),
    shell: over(shellPct),
    core: over((profile) => atDepthOf(grid, profile, 0.5)),
    faceAPct: atDepthOf(grid, middle, shell),
    faceBPct: atDepthOf(grid, middle, 1 - shell),
    probabilityReady: normalCdf(-short.mean / short.sd),
    profile: Array.from({ length: 21 }, (_, i) => ({
      depthFraction: i / 20,
      pct: over((profile) => atDepthOf(grid, profile, i / 20)),
    })),
  };
}

/** A second round some weeks on tells a board's own rate; common practice, no source. */
const learningDays = 30;
/** Below this the board's rate is known well enough that another reading would not move the dates much. */
const knownRateSd = 0.3;

function nextProbe(
  input: ForecastInput,
  probabilityReady: number,
  places: readonly PlaceForecast[],
  rateSd: number,
): Forecast['nextProbe'] {
  const { nowMs } = input;
  const here = places[0]!;
  const lastMs = Math.max(...input.readings.map((reading) => reading.atMs));
  if (input.readings.length === 0) {
    return {
      atMs: nowMs,
      why: 'It has not been probed yet: until then this is what such boards do on average.',
    };
  }
  const today = nowMs - lastMs < dayMs;
  if (probabilityReady >= 0.9) {
    return today
      ? { atMs: null, why: 'It is ready by what is known; another probing would hardly change that.' }
      : { atMs: nowMs, why: 'It should be ready by now: probe it to be sure.' };
  }
  if (probabilityReady >= 0.1) {
    return today
      ? { atMs: nowMs + 7 * dayMs, why: 'It is near its range and today left it open: look again in a week.' }
      : { atMs: nowMs, why: 'It may be ready or not: a probing today decides.' };
  }
  const learnMs = Math.max(nowMs, lastMs + learningDays * dayMs);
  const early = here.reach.earlyMs;
  if (rateSd > knownRateSd && (early === null || learnMs < early)) {
    return {
      atMs: learnMs,
      why: 'How fast this board dries is still unsure; a probing a month after the last one narrows the dates most.',
    };
  }
  if (early === null) {
    return {
      atMs: null,
      why: here.never
        ? 'Waiting here cannot bring it to its range, so probing here changes nothing: bring it in first.'
        : 'It does not come near its range here within the time looked at; probe it when it has been moved.',
    };
  }
  return {
    atMs: Math.max(early, nowMs),
    why: 'Before this day it is ready with less than one chance in ten.',
  };
}
