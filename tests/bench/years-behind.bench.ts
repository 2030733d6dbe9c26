/**
 * How long forecasts take a core, each of a board with two years of history and six rounds behind it, at three places two
 * years ahead. The goal is 5 s for 1,000 boards. Run it with `npx node tests/bench/years-behind.bench.ts [boards, 100]`.
 */
import { DAY_MS } from '../../shared-core/time.ts';
import type { MonthlyAir } from '../../shared-core/wood/climate/monthly-air.ts';
import { type ForecastInput, forecastBoard } from '../../shared-core/wood/drying/forecast.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import { builtInSpecies } from '../../shared-core/wood/species/built-in.ts';
import { dryingClassOf } from '../../shared-core/wood/species/drying-class.ts';
import { worked } from '../unit/worked.ts';
import { figure } from './figure.ts';
import { type Random, randomFrom } from './rounds-with-faults.ts';

const boards = Number(process.argv[2] ?? 100);
const YEARS_MS = 2 * 365 * DAY_MS;
const sawnMs = Date.UTC(2024, 2, 20);

const monthly = (temps: readonly number[], rh: (month: number) => number): MonthlyAir =>
  temps.map((tempC, month) => ({ tempC, rh: rh(month) }));
const SHED = monthly([-8, -5, 1, 8, 14, 20, 22, 21, 16, 10, 2, -5], (m) => 0.7 + 0.004 * Math.abs(6 - m));
const BARN = monthly([3, 4, 7, 10, 14, 17, 19, 19, 16, 12, 7, 4], (m) => 0.72 + 0.02 * Math.abs(6 - m));
const ROOM = monthly(Array<number>(12).fill(20), (m) => 0.36 + 0.02 * Math.abs(6 - Math.abs(6 - m)));
const species = builtInSpecies.filter(({ basicSpecificGravity }) => basicSpecificGravity !== null);

/** Read at shell and core in six rounds, as a board of its species would be, and the meter's error on top. */
function drawn(random: Random): ForecastInput {
  const { basicSpecificGravity, botanicalName } = species[Math.floor(random.uniform() * species.length)]!;
  const board: DryingBoard = {
    thicknessMm: [20, 27, 34, 52][Math.floor(random.uniform() * 4)]!,
    basicSpecificGravity,
    dryingClass: dryingClassOf({ botanicalName }),
    start: { atMs: sawnMs, mcPct: null, logSd: 0.3, shellRatio: 1 },
    stays: [{ fromMs: sawnMs, air: SHED }],
  };
  const { mean, covariance } = dryingPrior(board);
  const theta = mean.map((value, i) => value + 0.5 * Math.sqrt(covariance[i]![i]!) * random.normal());
  const instants = [30, 90, 180, 365, 540, 720].map((day) => sawnMs + day * DAY_MS);
  const depths = [0.15, 0.5];
  const { depthPct } = runBoard(
    boardModel(board),
    theta,
    board.stays,
    sawnMs,
    instants.at(-1)!,
    null,
    instants,
    depths,
  );
  return {
    nowMs: sawnMs + YEARS_MS,
    board,
    readings: instants.flatMap((atMs, at) =>
      depths.map((depthFraction, row) => ({
        atMs,
        depthFraction,
        mcPct: Math.max(4, depthPct[row]![at]! + 0.7 * random.normal()),
        standardUncertaintyPct: 1,
      })),
    ),
    siblings: [],
    endUse: { minPct: 6, maxPct: 9, maxShellCorePct: 2 },
    placeId: 1,
    elsewhere: [BARN, ROOM].map((air, at) => ({ placeId: at + 2, air })),
    horizonDays: 730,
  };
}

const random = randomFrom(1);
const inputs = Array.from({ length: boards }, () => drawn(random));
for (const input of inputs.slice(0, 20)) worked(forecastBoard(input));
// Of the processor, for other work on the machine does not count.
const began = process.cpuUsage();
for (const input of inputs) worked(forecastBoard(input));
const { user, system } = process.cpuUsage(began);
figure({
  what: `${boards} boards with two years behind them forecast at three places, of a core`,
  value: (user + system) / 1e6,
  unit: 's',
  goal: { most: (5 * boards) / 1000 },
  missesBecause:
    'a board takes some 8,000 steps of the drying model of 2 µs each, and 5 s would leave 0.6 µs for each',
});
