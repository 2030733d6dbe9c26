/**
 * The same equations on the same grid by a general-purpose integrator: ODEX of E. Hairer and G. Wanner (npm odex),
 * Gragg-Bulirsch-Stoer extrapolation with its own order and step control, run at 1e-9. Moisture-dependent
 * diffusivity, unlike faces and three airs, which no series solves.
 */
import { expect, test } from 'vitest';
import { DAY_S } from '../../shared-core/time.ts';
import { atDepthOf } from '../../shared-core/wood/drying/model/at-depth.ts';
import { averageOf, dryingGrid } from '../../shared-core/wood/drying/model/drying-grid.ts';
import { woodDryingLaw } from '../../shared-core/wood/drying/model/drying-law.ts';
import { simulateDrying } from '../../shared-core/wood/drying/model/drying-model.ts';
import { dryingRates } from '../../shared-core/wood/drying/model/drying-rates.ts';
import type { AirSegment } from '../../shared-core/wood/drying/model/drying-run.ts';
import { LawTables } from '../../shared-core/wood/drying/model/law-tables.ts';
import { odex } from './odex.ts';

test('agrees with ODEX to 0.001 % MC at the end of every air', () => {
  const dayS = DAY_S;
  const cells = 16;
  const grid = dryingGrid(40, false, cells);
  const segments: AirSegment[] = [
    { durationS: 40 * dayS, emcStartPct: 15, emcEndPct: 12, tempC: 10 },
    { durationS: 50 * dayS, emcStartPct: 12, emcEndPct: 16, tempC: 22 },
    { durationS: 30 * dayS, emcStartPct: 6, emcEndPct: 6, tempC: 24 },
  ];
  const run = {
    grid,
    tables: new LawTables(woodDryingLaw(0.45)),
    startPct: new Float64Array(cells).fill(55),
    segments,
    diffusivityFactor: 0.6,
    faceFactors: [0.5, 0.05] as const,
    tolerancePct: 1e-5,
    observeS: [40 * dayS, 90 * dayS, 120 * dayS],
    depthFractions: [0.1, 0.5, 0.9],
  };
  const ours = simulateDrying(run);
  const rates = dryingRates(run);
  const buffer = new Float64Array(cells);
  let y = Array.from(run.startPct);
  for (const [at, { durationS, emcStartPct, emcEndPct, tempC }] of segments.entries()) {
    const solver = new odex.Solver(cells);
    solver.absoluteTolerance = 1e-9;
    solver.relativeTolerance = 1e-11;
    solver.maxSteps = 1e6;
    const solved = solver.solve(
      (s, state) => {
        buffer.set(state);
        return Array.from(rates(buffer, tempC, emcStartPct + ((emcEndPct - emcStartPct) * s) / durationS));
      },
      0,
      y,
      durationS,
    );
    expect(solved.outcome).toBe(0);
    y = solved.y;
    expect(Math.abs(ours.averagePct[at]! - averageOf(grid, y))).toBeLessThan(1e-3);
    for (const [row, depth] of run.depthFractions.entries()) {
      expect(Math.abs(ours.depthPct[row]![at]! - atDepthOf(grid, y, depth))).toBeLessThan(1e-3);
    }
  }
});
