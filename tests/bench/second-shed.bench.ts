/**
 * What rounds in one shed tell of boards there and in another, on boards whose truth is known because we drew it. Run it with
 *
 *     npx node tests/bench/second-shed.bench.ts [yards, 600] [seed, 1]
 *
 * A yard has two sheds of one kind. What sets sheds apart is drawn as the hierarchy has it (`learned-at-places.ts`): their EMC,
 * and how freely boards dry in their moving air. Ten boards in the first were read at shell and core in three rounds, with a
 * meter's error and the scatter of spots. Another board was sawn, and read once, the day after. What it will hold 28 days
 * later is forecast with what the first shed taught, and without: in that shed, and in the second, where nothing was read.
 */
import { DAY_MS } from '../../shared-core/time.ts';
import { AIR_SPREADS, placeSdPct } from '../../shared-core/wood/climate/learned-air.ts';
import {
  type Evidence,
  learnedAt,
  type Spreads,
  type Told,
} from '../../shared-core/wood/climate/learned-at-places.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import {
  type ForecastInput,
  forecastBoard,
  type LearnedOfPlace,
  toldOfPlaceBy,
} from '../../shared-core/wood/drying/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  dryingParameters,
  dryingPrior,
  type FitReading,
  fitHistory,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import { PLACE_SURFACE_LOG_SD, SURFACE_SPREADS } from '../../shared-core/wood/drying/learned-surface.ts';
import { median } from '../../shared-core/wood/maths/robust.ts';
import { spotScatterPct } from '../../shared-core/wood/moisture/spot-scatter.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import { worked } from '../unit/worked.ts';
import { figure } from './figure.ts';
import { type Random, randomFrom } from './rounds-with-faults.ts';

const yards = Number(process.argv[2] ?? 600);
const random = randomFrom(Number(process.argv[3] ?? 1));

const AT = { surface: dryingParameters.indexOf('logSurface'), air: dryingParameters.indexOf('emcOffsetPct') };
const BOARDS = 10;
const READ_ON = [14, 35, 70];
const METER_SD_PCT = 0.85;
const FIRST_READ_ON = 1;
const AHEAD_DAYS = 28;
/** As wide as without. */
const GOAL = { width: [0.85, 0.95] };
const AIR: MonthlyAir = [3, 4, 8, 12, 17, 21, 23, 22, 18, 13, 8, 4].map((tempC) => ({ tempC, rh: 0.7 }));
const sawnMs = Date.UTC(2025, 3, 1);
const species = builtInSpecies.filter(({ basicSpecificGravity }) => basicSpecificGravity !== null);

const pick = <T>(from: Random, list: readonly T[]): T => list[Math.floor(from.uniform() * list.length)]!;

/** Of the first shed and the second. */
function offsets(sd: number, { kindShare }: Spreads): [number, number] {
  const kind = Math.sqrt(kindShare) * sd * random.normal();
  const own = () => Math.sqrt(1 - kindShare) * sd * random.normal();
  return [kind + own(), kind + own()];
}

function sawnBoard(): DryingBoard {
  const wood = pick(random, species);
  return {
    thicknessMm: pick(random, [28, 34, 54]),
    basicSpecificGravity: wood.basicSpecificGravity,
    dryingClass: dryingClassOf(wood),
    start: { atMs: sawnMs, mcPct: null, logSd: 0.3, shellRatio: 1 },
    stays: [{ fromMs: sawnMs, air: AIR, movement: 'open-shed' }],
  };
}

/** How it truly dries, in a shed that is off by so much. */
function truthOf(board: DryingBoard, shed: { surface: number; air: number }): number[] {
  const { mean, covariance } = dryingPrior(board);
  const drawn = mean.map((value, i) => value + Math.sqrt(covariance[i]![i]!) * random.normal());
  return drawn
    .with(AT.surface, mean[AT.surface]! + shed.surface + SURFACE_SPREADS.betweenBoards * random.normal())
    .with(AT.air, shed.air + AIR_SPREADS.betweenBoards * random.normal());
}

function readingsOf(board: DryingBoard, truth: number[], on: readonly number[]): FitReading[] {
  const at = on.map((day) => sawnMs + day * DAY_MS);
  const depths = [0.12, 0.5];
  const { depthPct } = runBoard(boardModel(board), truth, board.stays, sawnMs, at.at(-1)!, null, at, depths);
  const meter = METER_SD_PCT * random.normal();
  return at.flatMap((atMs, k) =>
    depths.map((depthFraction, d): FitReading => {
      const mcPct = depthPct[d]![k]!;
      // A pin meter tells wet wood less and less well.
      const wet = 1 + 0.5 * Math.max(0, mcPct - 28) * 0.2;
      const read = mcPct + meter * wet + spotScatterPct(mcPct) * random.normal();
      return { atMs, depthFraction, mcPct: Math.max(0, read), standardUncertaintyPct: METER_SD_PCT };
    }),
  );
}

/** What ten boards in the first shed tell. */
function lessons(shed: { surface: number; air: number }): Record<keyof LearnedOfPlace, Told[]> {
  const told = Array.from({ length: BOARDS }, () => {
    const board = sawnBoard();
    const readings = readingsOf(board, truthOf(board, shed), READ_ON);
    const fit = fitHistory(boardModel(board), readings, dryingPrior(board));
    if (!fit.ok) return null;
    return toldOfPlaceBy({ board, readings, nowMs: sawnMs + 70 * DAY_MS }, fit.value.information);
  });
  return {
    air: told.flatMap((each) => each?.air ?? []),
    surface: told.flatMap((each) => each?.surface ?? []),
  };
}

/** What the first shed's boards teach of a shed. */
function taughtOf(placeId: number, told: readonly Told[], sd: number, spreads: Spreads) {
  const first: Evidence = {
    placeId: 1,
    precision: told.reduce((sum, { precision }) => sum + precision, 0),
    pull: told.reduce((sum, { precision, offset }) => sum + precision * offset, 0),
  };
  const places = [1, 2].map((placeId) => ({ placeId, kind: 'open-shed', sd }));
  return learnedAt(placeId, places, [first], spreads);
}

type Said = { low: number; median: number; high: number };

/** Of the average after so many days. */
function forecastOf(
  board: DryingBoard,
  readings: FitReading[],
  placeId: number,
  learned: LearnedOfPlace | undefined,
): Said {
  const input: ForecastInput = {
    nowMs: readings[0]!.atMs,
    board,
    readings,
    siblings: [],
    endUse: { minPct: 0, maxPct: 19, maxShellCorePct: 20 },
    elsewhere: [],
    placeId,
    learned,
    horizonDays: AHEAD_DAYS,
  };
  return worked(forecastBoard(input)).places[0]!.band.average.at(-1)!;
}

function trueAverage(board: DryingBoard, truth: number[]): number {
  const atMs = sawnMs + (FIRST_READ_ON + AHEAD_DAYS) * DAY_MS;
  return runBoard(boardModel(board), truth, board.stays, sawnMs, atMs, null, [atMs], []).averagePct[0]!;
}

const WAYS = ['without', 'with EMC alone', 'with both'] as const;
type Tally = { widths: number[]; off: number[]; covered: number };
const SHEDS = ['the same shed', 'the second shed'] as const;
const tallies = SHEDS.map(() => WAYS.map((): Tally => ({ widths: [], off: [], covered: 0 })));

for (let yard = 0; yard < yards; yard++) {
  const surface = offsets(PLACE_SURFACE_LOG_SD, SURFACE_SPREADS);
  const air = offsets(placeSdPct(AIR), AIR_SPREADS);
  const told = lessons({ surface: surface[0], air: air[0] });
  for (const shed of SHEDS.keys()) {
    const board = sawnBoard();
    const dries = truthOf(board, { surface: surface[shed]!, air: air[shed]! });
    const truth = trueAverage(board, dries);
    const readings = readingsOf(board, dries, [FIRST_READ_ON]);
    const ofAir = taughtOf(shed + 1, told.air, placeSdPct(AIR), AIR_SPREADS);
    const ofSurface = taughtOf(shed + 1, told.surface, PLACE_SURFACE_LOG_SD, SURFACE_SPREADS);
    const learned = [undefined, { air: ofAir, surface: null }, { air: ofAir, surface: ofSurface }];
    for (const way of WAYS.keys()) {
      const { low, median: middle, high } = forecastOf(board, readings, shed + 1, learned[way]);
      const tally = tallies[shed]![way]!;
      tally.widths.push(high - low);
      tally.off.push(Math.abs(middle - truth));
      if (low <= truth && truth <= high) tally.covered += 1;
    }
  }
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

console.log(
  `${yards} yards; the average of a board ${AHEAD_DAYS} days after it was sawn, and what the first shed taught`,
);
for (const [shed, name] of SHEDS.entries()) {
  console.log(`\n${name.padEnd(24)} width  off (mean, median)  in the 80 % band`);
  for (const [way, { widths, off, covered }] of tallies[shed]!.entries())
    console.log(
      `${WAYS[way]!.padEnd(24)} ${mean(widths).toFixed(2)}  ${mean(off).toFixed(2)} ${median(off).toFixed(2).padStart(8)} ${(covered / yards).toFixed(2).padStart(12)}`,
    );
  const [without, , both] = tallies[shed] as [Tally, Tally, Tally];
  const [width, off] = [mean(both.widths) / mean(without.widths), mean(both.off) / mean(without.off)];
  const [most, share] = [GOAL.width[shed]!, both.covered / yards];
  const what = `what a shed taught, ${name}`;
  figure({ what: `${what}: as wide as without`, value: width, unit: '', goal: { most } });
  figure({ what: `${what}: as far off as without`, value: off, unit: '', goal: { most: 1 } });
  figure({ what: `${what}: in the 80 % band`, value: share, unit: '', goal: { least: 0.75, most: 0.9 } });
}
