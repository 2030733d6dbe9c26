/**
 * When a board will be ready for its use: where it is, and side by side if it were moved today.
 *
 * What the readings leave open (`history-fit.ts`) and the air and the pace to come are seven numbers; what the model itself
 * gets wrong is spread out over each run (`run-quantiles.ts`).
 * The model runs at a fixed set of points spread evenly over them (`normal-points.ts`), each weighed by how well its past
 * agrees with the readings (importance sampling; Gelman and others, Bayesian Data Analysis, section 10.4, from memory):
 * the normal distribution of the fit is only where the points are put. Every quantile, of a moisture content or of a
 * date, is one of the weighed runs. No random numbers: the same question has the same answer. How often it comes true:
 * `tests/bench/forecast.bench.ts`.
 */
import { z } from 'zod';
import type { Outcome } from '../../outcome.ts';
import { DAY_MS } from '../../time.ts';
import { type Message, message, messageSchema } from '../../words/message.ts';
import { emcOfYear } from '../climate/climate.ts';
import { AIR_SPREADS } from '../climate/learned-air.ts';
import { type Learned, type Spreads, type Told, toldOf } from '../climate/learned-at-places.ts';
import { airSdPct, type MonthlyAir } from '../climate/monthly-air.ts';
import {
  cholesky,
  type Gaussian,
  type Information,
  normalCdf,
  posterior,
  times,
  Z_90,
} from '../maths/gaussian.ts';
import { normalPoints } from '../maths/normal-points.ts';
import { endUseSchema } from '../species/end-use.ts';
import { movements } from './air-movement.ts';
import { type Stay, staySchema } from './board-history.ts';
import { comingAirSdPct, responseDays } from './coming-weather.ts';
import { type CoreAhead, coreAheadSchema, coreAheadSteps } from './core-ahead.ts';
import {
  averageGravity,
  boardModel,
  courseOf,
  dryingBoardSchema,
  dryingParameters,
  dryingPrior,
  type FitReading,
  fitHistory,
  fitReadingSchema,
  type HistoryFit,
  modelErrorPct,
  pooledPrior,
} from './history-fit.ts';
import { historyProblem } from './history-problem.ts';
import { SURFACE_SPREADS } from './learned-surface.ts';
import { atDepthOf } from './model/at-depth.ts';
import { averageOf, type DryingGrid } from './model/drying-grid.ts';
import { errorShare, type Quantiles, quantilesSchema, runQuantiles } from './run-quantiles.ts';

const unknowns = dryingParameters.length;
const AIR = dryingParameters.indexOf('emcOffsetPct');
const SURFACE = dryingParameters.indexOf('logSurface');

export const informationSchema = z.object({
  matrix: z.array(z.array(z.number()).length(unknowns)).length(unknowns),
  vector: z.array(z.number()).length(unknowns),
});

const learnedSchema = z.object({ offset: z.number(), sd: z.number().positive() }).nullable();

/** What other boards teach of a place; null where they teach nothing. */
export const learnedOfPlaceSchema = z.object({
  /** Of its EMC (`learned-air.ts`), % MC. */
  air: learnedSchema,
  /** Of how freely boards dry in its moving air (`learned-surface.ts`). */
  surface: learnedSchema,
});
export type LearnedOfPlace = z.infer<typeof learnedOfPlaceSchema>;

export const forecastInputSchema = z.object({
  /** UTC, ms; the caller's clock. */
  nowMs: z.number(),
  board: dryingBoardSchema,
  readings: z.array(fitReadingSchema).max(2000),
  /** What the fits of boards of the same stack and log learned. */
  siblings: z.array(informationSchema).max(500),
  endUse: endUseSchema.pick({ minPct: true, maxPct: true, maxShellCorePct: true }),
  /** Other places, as if the board were moved there now; the place it is in comes before them by itself. */
  elsewhere: z
    .array(
      staySchema
        .pick({ air: true, days: true, movement: true, faces: true })
        .extend({ placeId: z.number().int(), learned: learnedOfPlaceSchema.optional() }),
    )
    .max(20),
  placeId: z.number().int(),
  /** Of where it is. */
  learned: learnedOfPlaceSchema.optional(),
  horizonDays: z.number().int().min(7).max(3650),
});
export type ForecastInput = z.infer<typeof forecastInputSchema>;

/** Values over time for the plot, % MC; every array as long as `atMs`. */
export const bandSchema = z.object({
  atMs: z.array(z.number()),
  average: z.array(quantilesSchema),
  /** Medians. */
  shellPct: z.array(z.number()),
  corePct: z.array(z.number()),
});
export type Band = z.infer<typeof bandSchema>;

export const placeForecastSchema = z.object({
  placeId: z.number().int(),
  /**
   * Day by which the board has come into its use's range, its core near enough to its shell, with a probability of 10, 50
   * and 90 %. On the likely and the late one it has more likely than not stayed there: damper air later in the year may
   * take it back to the side it came from. Null where such a day does not come within the horizon.
   */
  reach: z.object({
    earlyMs: z.number().nullable(),
    likelyMs: z.number().nullable(),
    lateMs: z.number().nullable(),
  }),
  /** EMC of the place's driest month, % MC: no board's average passes below it there, however long it stays. */
  floorPct: quantilesSchema,
  /** 1 to 12; null where the air is the same all year. */
  floorMonth: z.number().int().nullable(),
  /** Even the lowest likely floor lies above the use's range: waiting there cannot do. */
  never: z.boolean(),
  /** When it is likeliest to be within that range, UTC, ms, and its average then, % MC. */
  best: z.object({ fromMs: z.number(), toMs: z.number(), averagePct: z.number() }),
  band: bandSchema,
  /** For judging readings to come, taken by pins that reach no core. */
  coreAhead: z.array(coreAheadSchema),
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
    /** Probability that the board is ready for its use today. */
    probabilityReady: z.number().min(0).max(1),
    profile: z.array(z.object({ depthFraction: z.number(), pct: quantilesSchema })),
  }),
  /** From the board's start to today. */
  past: bandSchema,
  /** The place it is in, then the others. */
  places: z.array(placeForecastSchema).min(1),
  /** When readings could change the answer, and why then; null: not at all. */
  nextProbe: z.object({ atMs: z.number().nullable(), why: messageSchema }),
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

/** Enough that a 10 % point rests on a handful of runs. */
export const pointCount = 48;
/**
 * The points reach further than the fit's normal distribution, for a truth with a longer tail: by this after one round. More
 * rounds leave it nearer to the normal one, and so few points that reach too far would only widen the dates.
 */
const REACH_BEYOND = 0.1;

/**
 * How far the pace from now on may be from that of any law of ours, whatever was learned: what the model lacks shows more and
 * more with the horizon (M. C. Kennedy and A. O'Hagan, Bayesian calibration of computer models, 2001; from memory). Common
 * practice, no source.
 */
export const aheadLogSd = 0.1;

/** One thing that may be true of the board and the air to come, and how much it weighs; all weights add up to 1. */
type Possibility = {
  /** Values of `dryingParameters`. */
  theta: number[];
  /** Standard normal: how the air to come differs from its monthly means. */
  air: number;
  /** Standard normal: how much faster it dries from now on than the model that was fitted to its past would have it. */
  pace: number;
  weight: number;
};

let madePoints: number[][] | null = null;
/**
 * Made in three dimensions more than are used: so few points give widths of dates that are a tenth off those of a thousand,
 * and with these they were nearest (`tests/bench/heated-room.bench.ts`). Made when first needed: the window only reads
 * forecasts.
 */
function points(): readonly number[][] {
  madePoints ??= normalPoints(pointCount, unknowns + 5);
  return madePoints;
}

/** Where the points lie for this fit, still to be weighed; null where its covariance is none. */
function possibilitiesOf({ posterior, observed }: HistoryFit): Omit<Possibility, 'weight'>[] | null {
  const rounds = observed.atMs.length;
  const reach = rounds === 0 ? 1 : 1 + REACH_BEYOND / rounds ** 2;
  const lower = cholesky(posterior.covariance);
  if (lower === null) return null;
  return points().map((point) => ({
    theta: times(lower, point.slice(0, unknowns)).map((value, i) => posterior.mean[i]! + reach * value),
    air: point[unknowns]!,
    pace: point[unknowns + 1]!,
  }));
}

/** Weights of the points, from how badly each agrees with readings and prior; without readings they are alike. */
function weightsOf(costs: readonly number[]): number[] {
  const logs = costs.map((cost, k) => {
    const drawnAs = points()
      [k]!.slice(0, unknowns)
      .reduce((sum, z) => sum + z * z, 0);
    return (drawnAs - cost) / 2;
  });
  const most = Math.max(...logs);
  const raw = logs.map((log) => Math.exp(log - most));
  // No single run may speak for all (E. L. Ionides, Truncated importance sampling, 2008; from memory).
  const cap = raw.reduce((sum, value) => sum + value, 0) / Math.sqrt(raw.length);
  const capped = raw.map((value) => Math.min(cap, value));
  const total = capped.reduce((sum, value) => sum + value, 0);
  return capped.map((value) => value / total);
}

/** Reads quantiles over them. */
const quantilesOver = (possible: readonly Possibility[]) =>
  runQuantiles(
    possible.map(({ weight }) => weight),
    modelErrorPct,
  );

/** Depth of the shell in a forecast: 3 mm as pins go in, but within the outer sixth of a thin board. */
const shellFraction = (thicknessMm: number): number => Math.min(3 / thicknessMm, 1 / 6);

/** Shell for a judgment is the drier of the two faces: it is that which strains against the core. */
type Series = { average: Float64Array; shell: Float64Array; core: Float64Array };

function drierOf(shellA: Float64Array, shellB: Float64Array): Float64Array {
  const drier = new Float64Array(shellA.length);
  for (let i = 0; i < drier.length; i++) drier[i] = Math.min(shellA[i]!, shellB[i]!);
  return drier;
}

/** Points in a band: enough for a plot, and no more than the window needs. */
const bandPoints = 120;

function bandOf(possible: readonly Possibility[], runs: readonly Series[], allMs: readonly number[]): Band {
  const every = Math.ceil(allMs.length / bandPoints);
  const shown = allMs.map((_, at) => at).filter((at) => at % every === 0 || at === allMs.length - 1);
  /** What `read` makes of the values of all runs, instant by instant. */
  const over = <T>(what: keyof Series, read: (values: Float64Array) => T): T[] => {
    const series = runs.map((run) => run[what]);
    const values = new Float64Array(series.length);
    return shown.map((at) => {
      for (let k = 0; k < values.length; k++) values[k] = series[k]![at]!;
      return read(values);
    });
  };
  // Quantiles of their own each: they begin with the order of the instant before.
  const mediansOf = (what: keyof Series): number[] => {
    const { plain } = quantilesOver(possible);
    return over(what, (values) => plain(values).median);
  };
  return {
    atMs: shown.map((at) => allMs[at]!),
    average: over('average', quantilesOver(possible).withError),
    shellPct: mediansOf('shell'),
    corePct: mediansOf('core'),
  };
}

/** How far a board is from being ready for its use, % MC: 0 or less is ready. */
const shortfall = (
  { minPct, maxPct, maxShellCorePct }: ForecastInput['endUse'],
  averagePct: number,
  shellPct: number,
  corePct: number,
): number =>
  Math.max(
    averagePct - maxPct,
    minPct - averagePct,
    corePct - shellPct - (maxShellCorePct ?? Number.POSITIVE_INFINITY),
  );

const days = (fromMs: number, count: number, stepDays: number): number[] =>
  Array.from({ length: Math.floor(count / stepDays) + 1 }, (_, i) => fromMs + i * stepDays * DAY_MS);

/**
 * The forecast of one board: a pure function of what is known today.
 *
 * @returns a problem where the history does not hold together, or its readings go with no way of drying
 * @throws  RangeError for an input outside `forecastInputSchema`
 */
export function forecastBoard(input: ForecastInput): Outcome<Forecast> {
  const { board, nowMs } = input;
  const begun = board.start.atMs;
  const problem = historyProblem(board, input.readings, nowMs);
  if (problem !== null) return { ok: false, problem };
  const model = boardModel(board, input.elsewhere);
  const prior = pooledPrior(withLearned(dryingPrior(board), input), input.siblings);
  const fitted = fitHistory(model, input.readings, prior);
  if (!fitted.ok) return fitted;
  const fit = fitted.value;
  const drawn = possibilitiesOf(fit);
  if (drawn === null) return { ok: false, problem: message('forecast.none.no-fit') };
  const shell = shellFraction(board.thicknessMm);
  // Where both faces are alike, one shell tells of both.
  const depths = model.grid.half ? [0.5, shell] : [0.5, shell, 1 - shell];

  const pastDays = (nowMs - begun) / DAY_MS;
  const pastStep = Math.max(1, pastDays / bandPoints);
  const pastMs = [...days(begun, pastDays, pastStep).filter((ms) => ms < nowMs), nowMs];
  const { observed } = fit;
  // One run tells the past, and what the readings should have been.
  const seenMs = [...new Set([...pastMs, ...observed.atMs])].sort((a, b) => a - b);
  const seenDepths = [...depths, ...observed.depthFractions];
  const placeOf = new Map(seenMs.map((ms, at) => [ms, at]));
  const life = courseOf(model, board.stays, begun, nowMs, seenMs, seenDepths);
  const lives = drawn.map(({ theta }) => life(theta, null));
  const weights = weightsOf(
    drawn.map(({ theta }, k) =>
      fit.costOf(
        theta,
        (instant, depth) =>
          lives[k]!.depthPct[depths.length + depth]![placeOf.get(observed.atMs[instant]!)!]!,
      ),
    ),
  );
  const possible = drawn.map((each, k): Possibility => ({ ...each, weight: weights[k]! }));
  const profiles = lives.map((run) => run.finalPct);
  const pastAt = pastMs.map((ms) => placeOf.get(ms)!);
  const only = (all: Float64Array): Float64Array => {
    const some = new Float64Array(pastAt.length);
    for (let i = 0; i < some.length; i++) some[i] = all[pastAt[i]!]!;
    return some;
  };
  const pastRuns = lives.map(({ averagePct, depthPct }) => ({
    averagePct: only(averagePct),
    depthPct: depthPct.map(only),
  }));
  const seriesOf = (run: { averagePct: Float64Array; depthPct: Float64Array[] }): Series => ({
    average: run.averagePct,
    shell: model.grid.half ? run.depthPct[1]! : drierOf(run.depthPct[1]!, run.depthPct[2]!),
    core: run.depthPct[0]!,
  });

  const here = board.stays.findLast((stay) => stay.fromMs <= nowMs)!;
  const untilMs = nowMs + input.horizonDays * DAY_MS;
  const aheadMs = days(nowMs, input.horizonDays, 1);
  const triedHere = isAirTried(input);
  const boardDays = responseDays(
    board.thicknessMm,
    board.basicSpecificGravity ?? averageGravity,
    model.thicknessFactor * Math.exp(logMoments(possible, 0).mean),
  );
  const stayHere = { ...here, placeId: input.placeId, learned: input.learned };
  const places = [stayHere, ...input.elsewhere].map((place, index) => {
    // Another place's air is not off by what this one's was, and no year is the mean year.
    const tried = index === 0 && triedHere;
    const { movement = 'wind' } = place;
    const comingSdPct = comingAirSdPct(place.air, place.days ?? null, boardDays);
    const untried = airOfBoard(place);
    const untriedSdPct = Math.hypot(untried.sd, comingSdPct);
    const offsets = possible.map(({ theta, air }) =>
      tried ? theta[AIR]! + air * comingSdPct : untried.offset + air * untriedSdPct,
    );
    const freer = index === 0 ? 0 : surfaceElsewhere(input, place.learned);
    // What moving air does here is learned by reading here.
    const paceLogSd = tried ? aheadLogSd : Math.hypot(aheadLogSd, movements[movement].paceLogSd);
    const stays = [{ ...place, movement, fromMs: nowMs }];
    const ahead = courseOf(model, stays, nowMs, untilMs, aheadMs, depths);
    const runs = possible.map(({ theta, pace }, k) => {
      const [diffusivity = 0, surface = 0, ...others] = theta;
      const faster = paceLogSd * pace;
      const there = [diffusivity + faster, surface + faster + freer, ...others].with(AIR, offsets[k]!);
      return seriesOf(ahead(there, profiles[k]!));
    });
    return placeForecast(input.endUse, place, aheadMs, possible, runs, offsets, fit.modelErrorPct);
  });

  const past = bandOf(possible, pastRuns.map(seriesOf), pastMs);
  const today = nowOf(input, model.grid, possible, profiles, shell);
  const rate = logMoments(possible, 0);
  return {
    ok: true,
    value: {
      information: fit.information,
      now: today,
      past,
      places,
      nextProbe: nextProbe(input, today.probabilityReady, places, rate.sd),
      residuals: fit.residuals,
      diffusivityFactor: logQuantiles(rate),
      surfaceFactor: logQuantiles(logMoments(possible, 1)),
    },
  };
}

/** How far a board's air may be from that of its place's months, before a reading of it there. */
const airOfBoard = ({ air, learned }: Pick<ForecastInput, 'learned'> & Pick<Stay, 'air'>): Learned =>
  learned?.air ? ofBoard(learned.air, AIR_SPREADS) : { offset: 0, sd: airSdPct(air) };

/** What is learned of a place, with what sets a board there apart. */
const ofBoard = ({ offset, sd }: Learned, { betweenBoards }: Spreads): Learned => ({
  offset,
  sd: Math.hypot(sd, betweenBoards),
});

/** Whether it met the same all its life, but for less than a day: the fit has one value of each unknown for all. */
function isSame({ board: { stays } }: Pick<ForecastInput, 'board'>, of: (stay: Stay) => unknown): boolean {
  const lasting = stays.filter(({ fromMs }, i) => (stays[i + 1]?.fromMs ?? Infinity) - fromMs >= DAY_MS);
  return new Set(lasting.map((stay) => JSON.stringify(of(stay)))).size === 1;
}
const isOfOneAir = (input: Pick<ForecastInput, 'board'>): boolean => isSame(input, ({ air }) => air);
const isOfOneMovement = (input: Pick<ForecastInput, 'board'>): boolean =>
  isSame(input, ({ air, movement = 'wind' }) => [air, movement]);

/** With what others teach of its place, where it was all its life. */
function withLearned(prior: Gaussian, input: Pick<ForecastInput, 'board' | 'learned'>): Gaussian {
  const { board, learned } = input;
  const { mean, covariance } = prior;
  const known: (Learned | null)[] = mean.map(() => null);
  if (learned?.air && isOfOneAir(input)) known[AIR] = airOfBoard({ air: board.stays.at(-1)!.air, learned });
  if (learned?.surface && isOfOneMovement(input)) known[SURFACE] = ofBoard(learned.surface, SURFACE_SPREADS);
  return {
    mean: mean.map((value, i) => value + (known[i]?.offset ?? 0)),
    covariance: covariance.map((row, i) => (known[i] ? row.with(i, known[i].sd ** 2) : row)),
  };
}

/** How much more freely its faces would dry elsewhere than where it is, by what others teach; a logarithm. */
const surfaceElsewhere = (
  input: Pick<ForecastInput, 'board' | 'learned'>,
  there: ForecastInput['learned'],
): number =>
  isOfOneMovement(input) ? (there?.surface?.offset ?? 0) - (input.learned?.surface?.offset ?? 0) : 0;

/**
 * A reading further than this from the EMC of its month is of a board that dries, or of another fault than the air's, % MC.
 * Boards lag behind the seasons, and meters and months are off. Common practice, no source.
 */
const TELLS_OF_EMC_PCT = 4;

/**
 * Whether one of its readings tells of the EMC where it is: its depth is known, and the board is near equilibrium there.
 * In a board that still dries, its pace and its EMC cannot be told apart without assuming one of them.
 *
 * @param offsetPct  how far its readings put that EMC from that of the months, % MC
 */
function tellsOfAir({ board, readings, nowMs }: Life, offsetPct: number): boolean {
  const stay = board.stays.findLast(({ fromMs }) => fromMs <= nowMs)!;
  const { monthlyEmcPct } = emcOfYear(stay.air, offsetPct);
  return readings
    .filter(isReadIn(stay))
    .some(
      ({ atMs, mcPct, isDepthUnknown = false }) =>
        !isDepthUnknown && Math.abs(mcPct - monthlyEmcPct[new Date(atMs).getUTCMonth()]!) <= TELLS_OF_EMC_PCT,
    );
}

/** What a board's readings tell of the place where it is; null where they tell nothing. */
export type ToldOfPlace = Record<keyof LearnedOfPlace, Told | null>;

/** @param information  what its own fit learned */
export function toldOfPlaceBy(input: Life, information: Information): ToldOfPlace {
  if (!isAirTried(input)) return { air: null, surface: null };
  const before = dryingPrior(input.board);
  const after = posterior(before, information);
  const told = (at: number, spreads: Spreads): Told | null => {
    if (after === null) return null;
    const known = 1 / after.covariance[at]![at]!;
    const precision = known - 1 / before.covariance[at]![at]!;
    if (precision <= 0) return null;
    const offset = ((after.mean[at]! - before.mean[at]!) * known) / precision;
    return toldOf(offset, 1 / Math.sqrt(precision), spreads);
  };
  return {
    air: tellsOfAir(input, after?.mean[AIR] ?? 0) ? told(AIR, AIR_SPREADS) : null,
    surface: isOfOneMovement(input) ? told(SURFACE, SURFACE_SPREADS) : null,
  };
}

type Moments = { mean: number; sd: number };

function logMoments(possible: readonly Possibility[], parameter: number): Moments {
  const mean = possible.reduce((sum, { theta, weight }) => sum + weight * theta[parameter]!, 0);
  const variance = possible.reduce(
    (sum, { theta, weight }) => sum + weight * (theta[parameter]! - mean) ** 2,
    0,
  );
  return { mean, sd: Math.sqrt(variance) };
}

const logQuantiles = ({ mean, sd }: Moments): Quantiles => ({
  low: Math.exp(mean - Z_90 * sd),
  median: Math.exp(mean),
  high: Math.exp(mean + Z_90 * sd),
});

/** The first of so many at which something holds, that goes on holding; null where it never does. */
function firstWhere(count: number, holds: (at: number) => boolean): number | null {
  if (!holds(count - 1)) return null;
  let [before, at] = [-1, count - 1];
  while (at - before > 1) {
    const middle = Math.floor((before + at) / 2);
    if (holds(middle)) at = middle;
    else before = middle;
  }
  return at;
}

function placeForecast(
  endUse: ForecastInput['endUse'],
  place: { placeId: number; air: MonthlyAir },
  atMs: readonly number[],
  possible: readonly Possibility[],
  runs: readonly Series[],
  offsets: readonly number[],
  modelPct: number,
): PlaceForecast {
  const year = emcOfYear(place.air);
  const closest = runs.map(({ average, shell, core }) => {
    let least = Number.POSITIVE_INFINITY;
    const sofar = new Float64Array(atMs.length);
    for (let i = 0; i < sofar.length; i++) {
      least = Math.min(least, shortfall(endUse, average[i]!, shell[i]!, core[i]!));
      sofar[i] = least;
    }
    return sofar;
  });
  // What the model gets wrong is spread out here, not taken point by point: a share of few points would go in jumps.
  const errorPct = errorShare(endUse.maxPct) * modelPct;
  const chanceBy = (i: number): number =>
    possible.reduce((sum, { weight }, k) => sum + weight * normalCdf(-closest[k]![i]! / errorPct), 0);
  const chanceOn = (use: ForecastInput['endUse'], i: number): number =>
    possible.reduce((sum, { weight }, k) => {
      const { average, shell, core } = runs[k]!;
      return sum + weight * normalCdf(-shortfall(use, average[i]!, shell[i]!, core[i]!) / errorPct);
    }, 0);
  const band = bandOf(possible, runs, atMs);
  // A board that dries on past its range has come there all the same.
  const isFromBelow = band.average[0]!.median < endUse.minPct;
  const side = isFromBelow
    ? { ...endUse, maxPct: Number.POSITIVE_INFINITY }
    : { ...endUse, minPct: Number.NEGATIVE_INFINITY };
  const comesAt = (probability: number): number | null =>
    firstWhere(atMs.length, (i) => chanceBy(i) >= probability);
  const hasStayedOn = (i: number): boolean => chanceOn(side, i) >= 0.5;
  const dayOf = (at: number | null): number | null => (at === null ? null : atMs[at]!);
  const [early, middle, late] = [comesAt(0.1), comesAt(0.5), comesAt(0.9)];
  const likely = middle === null ? -1 : atMs.findIndex((_, i) => i >= middle && hasStayedOn(i));
  const reach = {
    earlyMs: dayOf(early),
    likelyMs: dayOf(likely < 0 ? null : likely),
    lateMs: dayOf(late !== null && likely >= 0 && late >= likely && hasStayedOn(late) ? late : null),
  };
  const { plain } = quantilesOver(possible);
  const floorPct = plain(offsets.map((offset) => year.driestEmcPct + offset));
  return {
    placeId: place.placeId,
    reach,
    floorPct,
    floorMonth: year.driestMonth,
    never: reach.earlyMs === null && floorPct.low > endUse.maxPct,
    best: bestOf(
      band,
      band.atMs.map((ms) => chanceOn(endUse, Math.round((ms - atMs[0]!) / DAY_MS))),
    ),
    band,
    coreAhead: coreAheadSteps(atMs.length).map((at): CoreAhead => {
      const { low, median, high } = plain(runs.map(({ core, shell }) => core[at]! - shell[at]!));
      return { atMs: atMs[at]!, differencePct: median, sdPct: (high - low) / (2 * Z_90) };
    }),
  };
}

/** Time around the best chance in which it is hardly worse, as a share of it. Common practice, no source. */
const NEARLY_BEST = 0.8;

function bestOf({ atMs, average }: Band, chances: readonly number[]): PlaceForecast['best'] {
  const peak = chances.indexOf(Math.max(...chances));
  const isGood = (i: number): boolean => (chances[i] ?? 0) > NEARLY_BEST * chances[peak]!;
  let [from, to] = [peak, peak];
  while (isGood(from - 1)) from -= 1;
  while (isGood(to + 1)) to += 1;
  return { fromMs: atMs[from]!, toMs: atMs[to]!, averagePct: average[peak]!.median };
}

function nowOf(
  input: ForecastInput,
  grid: DryingGrid,
  possible: readonly Possibility[],
  profiles: readonly Float64Array[],
  shell: number,
): Forecast['now'] {
  const { withError } = quantilesOver(possible);
  const over = (value: (profile: Float64Array) => number): Quantiles => withError(profiles.map(value));
  const shellPct = (profile: Float64Array): number =>
    Math.min(atDepthOf(grid, profile, shell), atDepthOf(grid, profile, 1 - shell));
  return {
    average: over((profile) => averageOf(grid, profile)),
    shell: over(shellPct),
    core: over((profile) => atDepthOf(grid, profile, 0.5)),
    faceAPct: over((profile) => atDepthOf(grid, profile, shell)).median,
    faceBPct: over((profile) => atDepthOf(grid, profile, 1 - shell)).median,
    // What the model gets wrong is spread out here, not taken point by point: a share of few points would go in jumps.
    probabilityReady: possible.reduce((sum, { weight }, k) => {
      const p = profiles[k]!;
      const short = shortfall(input.endUse, averageOf(grid, p), shellPct(p), atDepthOf(grid, p, 0.5));
      return sum + weight * normalCdf(-short / (errorShare(input.endUse.maxPct) * modelErrorPct));
    }, 0),
    profile: Array.from({ length: 21 }, (_, i) => ({
      depthFraction: i / 20,
      pct: over((profile) => atDepthOf(grid, profile, i / 20)),
    })),
  };
}

/** A second round some weeks on tells a board's own rate; common practice, no source. */
const learningDays = 30;
/** So soon after readings that left it open, the next would find nearly the same; common practice, no source. */
const undecidedDays = 7;
/** Below this the board's rate is known well enough that more readings would not move the dates much. */
const knownRateSd = 0.3;

/** Whether it is in air that moves as no reading of it has shown yet, so that its pace there is most of the doubt. */
function isUntriedAir({ board, readings, nowMs }: ForecastInput): boolean {
  const here = board.stays.findLast((stay) => stay.fromMs <= nowMs)!;
  return movements[here.movement ?? 'wind'].paceLogSd > knownRateSd && !readings.some(isReadIn(here));
}

type Life = Pick<ForecastInput, 'board' | 'readings' | 'nowMs'>;

/** Whether its readings tell of the air where it is. */
const isAirTried = ({ board, readings, nowMs }: Life): boolean =>
  readings.some(isReadIn(board.stays.findLast((stay) => stay.fromMs <= nowMs)!));

/** Whether a reading tells of the air of a stay: it takes a day in it. */
const isReadIn =
  ({ fromMs }: Pick<Stay, 'fromMs'>) =>
  ({ atMs }: Pick<FitReading, 'atMs'>): boolean =>
    atMs - fromMs >= DAY_MS;

function nextProbe(
  input: ForecastInput,
  probabilityReady: number,
  places: readonly PlaceForecast[],
  rateSd: number,
): Forecast['nextProbe'] {
  const { nowMs } = input;
  const probe = (atMs: number | null, why: Message) => ({ atMs, why });
  if (input.readings.length === 0) return probe(nowMs, message('forecast.probe.first'));
  const lastMs = Math.max(...input.readings.map((reading) => reading.atMs));
  if (probabilityReady >= 0.9) {
    return nowMs - lastMs < DAY_MS
      ? probe(null, message('forecast.probe.known-ready'))
      : probe(nowMs, message('forecast.probe.check-ready'));
  }
  if (probabilityReady >= 0.1) {
    const againMs = lastMs + undecidedDays * DAY_MS;
    return againMs > nowMs
      ? probe(againMs, message('forecast.probe.undecided'))
      : probe(nowMs, message('forecast.probe.decides'));
  }
  const here = places[0]!;
  const { earlyMs } = here.reach;
  // First, for where it cannot get ready its rate does not matter.
  if (earlyMs === null) {
    if (here.never) return probe(null, message('forecast.probe.never'));
    const untilOn = new Date(here.band.atMs.at(-1)!).toISOString();
    return probe(null, message('forecast.probe.after-moving', { untilOn }));
  }
  if (isUntriedAir(input)) {
    const { fromMs } = input.board.stays.findLast((stay) => stay.fromMs <= nowMs)!;
    return probe(Math.max(nowMs, fromMs + undecidedDays * DAY_MS), message('forecast.probe.tries-air'));
  }
  const learnMs = Math.max(nowMs, lastMs + learningDays * DAY_MS);
  if (rateSd > knownRateSd && learnMs < earlyMs) return probe(learnMs, message('forecast.probe.learns-rate'));
  return probe(Math.max(earlyMs, nowMs), message('forecast.probe.not-sooner'));
}
