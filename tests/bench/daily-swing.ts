/**
 * How far the moisture of a thin stick swings in a day outdoors: the one record with its own air. 131 days of hours of a
 * pine stick, 13 mm round, in British Columbia (D. van der Kamp and others, Agricultural and Forest Meteorology 236, 2017;
 * `data/fuel-stick-hours.csv`, license beside it).
 *
 * The model has no rain and no sun: only days count that had no rain, nor the two before. A round stick dries as fast as a
 * sheet of the same face for its volume, half as thick. That is run with the middle of the prior of pines, its faces as in a
 * stack, and free, as the stick's are.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { emcPct } from '../../shared-core/wood/climate/emc.ts';
import { boardModel, priorPace } from '../../shared-core/wood/drying/history-fit.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import { parabolicStart } from '../../shared-core/wood/drying/model/parabolic-start.ts';
import { geometricMean } from './drying-days.ts';

const hours = readFileSync(join(import.meta.dirname, 'data/fuel-stick-hours.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [tempC = Number.NaN, rhPct = Number.NaN, rainMm = 0, mcPct = 0] = line.split(',').map(Number);
    return { tempC, rhPct, rainMm, mcPct };
  });

const DRY_HOURS = 72;
/** Begins of days without rain in them and in the two before, and with a reading each hour. */
const dryDays = Array.from({ length: Math.floor(hours.length / 24) }, (_, day) => 24 * day).filter(
  (begin) =>
    begin + 24 >= DRY_HOURS &&
    hours.slice(begin + 24 - DRY_HOURS, begin + 24).every(({ rainMm }) => rainMm === 0) &&
    hours.slice(begin, begin + 24).every(({ mcPct }) => mcPct > 0),
);

function modelPct(thicknessMm: number, surface: number): Float64Array {
  const { grid, tables, thicknessFactor } = boardModel({
    thicknessMm,
    basicSpecificGravity: 0.38,
    start: { atMs: 0, mcPct: null, logSd: 0.1, shellRatio: 1 },
    stays: [],
  });
  return simulateDrying({
    grid,
    tables: tables.with(priorPace.exponent.mean),
    startPct: parabolicStart(grid, hours[0]!.mcPct, 1),
    segments: hours.map(({ tempC, rhPct }) => {
      const emc = emcPct(tempC, Math.min(0.99, rhPct / 100));
      return { durationS: 3600, emcStartPct: emc, emcEndPct: emc, tempC: Math.round(2 * tempC) / 2 };
    }),
    diffusivityFactor: thicknessFactor * priorPace.diffusivity.medians.pine,
    faceFactors: [surface, surface],
    tolerancePct: 0.05,
    observeS: hours.map((_, hour) => 3600 * hour),
    depthFractions: [],
  }).averagePct;
}

const swings = (pct: ArrayLike<number>): number[] =>
  dryDays.map((begin) => {
    const day = Array.from({ length: 24 }, (_, hour) => pct[begin + hour]!);
    return Math.max(...day) - Math.min(...day);
  });

/**
 * The model's swing of a day over the observed one, geometric mean.
 *
 * @param surface  factor on a free face
 */
export function dailySwing(thicknessMm: number, surface: number): { days: number; ratio: number } {
  const observed = swings(hours.map(({ mcPct }) => mcPct));
  const model = swings(modelPct(thicknessMm, surface));
  return { days: dryDays.length, ratio: geometricMean(model.map((swing, day) => swing / observed[day]!)) };
}
