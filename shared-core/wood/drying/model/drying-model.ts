/**
 * Moisture moving through the thickness of a board and out of its two faces.
 *
 *     dM/dt = d/dx ( D(M, T) dM/dx ),   at a face   outflow = E (g(M at the face) - g(EMC))
 *
 * Finite volumes on a grid that is finer toward the faces, second order. The flux between two cells is the difference
 * of the integral of D (Kirchhoff), so a D that varies twentyfold over the thickness costs no accuracy. In time ROS3PL
 * (`rosenbrock.ts`), third order and L-stable, whose four linear systems a step share one tridiagonal matrix. The flux at
 * the faces is taken from the same linear systems as the new state, so mass balances to rounding.
 *
 * In the order of reading:
 * - what the wood does: `drying-law.ts`, looked up in `mc-table.ts` by `law-tables.ts` and `wood-tables.ts`
 * - the board: `drying-grid.ts`, `at-depth.ts`, `parabolic-start.ts`
 * - what is asked and answered: `drying-run.ts`
 * - one step in time: `board-face.ts`, `stepper.ts`, and what is between its ends: `cubic-in-step.ts`
 * - the run along all its airs: here, as `run-record.ts` keeps it
 */
import { depthWeights } from './at-depth.ts';
import { averageOf } from './drying-grid.ts';
import {
  checkCourse,
  checkPace,
  type DryingCourse,
  type DryingPace,
  type DryingResult,
  type DryingRun,
  MOST_MC_PCT,
} from './drying-run.ts';
import { RunRecord } from './run-record.ts';
import { Stepper } from './stepper.ts';

/**
 * Runs a board through a sequence of airs.
 *
 * @throws RangeError for values that no board has, or when no step length meets the tolerance
 */
export const simulateDrying = (run: DryingRun): DryingResult => dryingAlong(run)(run);

/** What `simulateDrying` does, for any number of paces of one board: what is the same in all is worked out once. */
export function dryingAlong(course: DryingCourse): (pace: DryingPace) => DryingResult {
  checkCourse(course);
  const { grid, tolerancePct } = course;
  const n = grid.widthM.length;
  const depths = course.depthFractions.map((fraction) => depthWeights(grid, fraction));
  const observeS = Float64Array.from(course.observeS);
  const computedM = grid.half ? grid.thicknessM / 2 : grid.thicknessM;
  const stepper = new Stepper(grid, tolerancePct);

  return (pace) => {
    checkPace(pace, grid);
    const record = new RunRecord(grid, observeS, depths);
    let y: Float64Array = new Float64Array(pace.startPct);
    stepper.begin(pace, course.segments[0]?.tempC ?? 20);
    const startAveragePct = averageOf(grid, y);
    let lostM = 0;
    let steps = 0;
    let clock = 0;
    let tryS = 0;
    let emcBefore = Number.NaN;

    record.still(y, 0);
    for (const { durationS, tempC, emcStartPct, emcEndPct } of course.segments) {
      if (durationS === 0) continue;
      stepper.bringTo(tempC);
      const offset = pace.emcOffsetPct ?? 0;
      const emcBegin = Math.max(0.1, offset + emcStartPct);
      const emcPerS = (Math.max(0.1, offset + emcEndPct) - emcBegin) / durationS;
      if (!(Math.abs(emcBegin - emcBefore) < 0.05)) {
        // New air: start with a step in which the fastest cell changes by about the cube root of the tolerance.
        const rates = stepper.endPct;
        stepper.rates(y, emcBegin, rates);
        let fastest = 1e-12;
        for (let i = 0; i < n; i++) fastest = Math.max(fastest, Math.abs(rates[i]!));
        const careful = Math.cbrt(tolerancePct) / fastest;
        tryS = tryS === 0 ? careful : Math.min(tryS, careful);
      }
      let inside = 0;
      while (inside < durationS) {
        const left = durationS - inside;
        // Two even steps rather than a full one and a sliver.
        const h = tryS >= left ? left : Math.min(tryS, left / 2);
        const error = stepper.take(y, emcBegin + emcPerS * inside, emcPerS, h) / tolerancePct;
        if (!(error <= 1)) {
          tryS = Number.isFinite(error) ? h * Math.max(0.2, 0.9 * error ** (-1 / 3)) : h / 4;
          if (tryS < 1e-6)
            throw new RangeError('The drying model found no step length that meets its tolerance.');
          continue;
        }
        steps++;
        const began = clock + inside;
        inside = h === left ? durationS : inside + h;
        record.inStep(stepper, y, startAveragePct - lostM / computedM, began, h, clock + inside);
        lostM += stepper.outM;
        const end = stepper.endPct;
        stepper.endPct = y;
        y = end;
        tryS = h * Math.min(8, 0.9 * Math.max(error, 1e-6) ** (-1 / 3));
      }
      clock += durationS;
      emcBefore = emcBegin + emcPerS * durationS;
    }
    // Rounding may leave the last instant a hair beyond the end.
    record.still(y, Number.POSITIVE_INFINITY);
    // Nor may it leave wood that loses no water a hair wetter than the next run may begin.
    const finalPct = y.map((pct) => Math.min(MOST_MC_PCT, pct));
    const { averagePct, depthPct } = record;
    return { averagePct, depthPct, finalPct, lostPct: lostM / computedM, steps };
  };
}
