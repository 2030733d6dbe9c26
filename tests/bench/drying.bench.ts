/**
 * The drying model's solver against general-purpose ODE solvers on the same grid and the same equations.
 *
 *     node_modules/.bin/node tests/bench/drying.bench.ts
 *
 * - odex (npm): Hairer and Wanner's extrapolation code ODEX. It is for problems that are not stiff; no solver
 *   for stiff ones could be had from the npm registry that this project reaches.
 * - SciPy's BDF, Radau and LSODA (Debian's python3-scipy), which are for stiff problems, with a banded Jacobian. Run only
 *   where python3 has SciPy. Its equations are evaluated in Python, so its wall time says little; what counts is the
 *   last column: its evaluations of the equations at this project's speed, and nothing at all for its own algebra. No
 *   port to JavaScript could be faster than that.
 *
 * Error: greatest difference of the average, shell and core from a run of odex at 1e-9, over 20 instants, % MC.
 */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import {
  type AirSegment,
  atDepthOf,
  averageOf,
  dryingGrid,
  dryingRates,
  LawTables,
  simulateDrying,
  woodDryingLaw,
} from '../../shared-core/wood/drying-model.ts';
import { type ForecastInput, forecastBoard } from '../../shared-core/wood/forecast.ts';

/** What is used of odex; its own types are sources that do not pass this project's strict checks. */
type OdexSolver = {
  absoluteTolerance: number;
  relativeTolerance: number;
  maxSteps: number;
  initialStepSize: number;
  nEval: number;
  nStep: number;
  solve: (
    rates: (at: number, y: number[]) => number[],
    from: number,
    y0: number[],
    to: number,
  ) => { y: number[]; outcome: number; nEval: number; nStep: number };
};
const odex = createRequire(import.meta.url)('odex') as { Solver: new (n: number) => OdexSolver };

const dayS = 86_400;
const cells = 40;
const grid = dryingGrid(28, true, cells);
const tables = new LawTables(woodDryingLaw(0.56));
/** Green oak: spring to autumn in a shed, then a heated room. */
const segments: AirSegment[] = [
  { durationS: 60 * dayS, emcStartPct: 14, emcEndPct: 13, tempC: 12 },
  { durationS: 60 * dayS, emcStartPct: 13, emcEndPct: 14, tempC: 20 },
  { durationS: 80 * dayS, emcStartPct: 8, emcEndPct: 7, tempC: 20 },
];
const run = {
  grid,
  tables,
  startPct: new Float64Array(cells).fill(60),
  segments,
  diffusivityFactor: 0.4,
  faceFactors: [0.2, 0.2] as const,
  observeS: Array.from({ length: 20 }, (_, i) => (i + 1) * 10 * dayS),
  depthFractions: [0.1, 0.5],
};
const ratesOf = dryingRates({ ...run, tolerancePct: 1 });

/** The changes of air, where the other solvers stop, with the instants to look at between them. */
let begun = 0;
const stretches = segments.map((segment) => {
  const from = begun;
  begun += segment.durationS;
  const to = begun;
  return { from, to, segment, at: run.observeS.filter((s) => s > from && s <= to) };
});

type Observed = number[][];
const look = (profile: ArrayLike<number>): number[] => [
  averageOf(grid, profile),
  ...run.depthFractions.map((depth) => atDepthOf(grid, profile, depth)),
];

function byOdex(tolerance: number): { seen: Observed; evaluations: number; steps: number } {
  let y = Array.from(run.startPct);
  let evaluations = 0;
  let steps = 0;
  const buffer = new Float64Array(cells);
  const seen = stretches.flatMap(({ from, segment, at: instants }) => {
    const slope = (segment.emcEndPct - segment.emcStartPct) / segment.durationS;
    // Stopping at each instant costs odex nothing that counts: its steps are far shorter, for stability.
    return instants.map((to, i) => {
      const solver = new odex.Solver(cells);
      solver.absoluteTolerance = tolerance;
      solver.relativeTolerance = tolerance / 100;
      solver.maxSteps = 1e7;
      solver.initialStepSize = 100;
      const solved = solver.solve(
        (at, state) => {
          buffer.set(state);
          return Array.from(ratesOf(buffer, segment.tempC, segment.emcStartPct + slope * (at - from)));
        },
        i === 0 ? from : instants[i - 1]!,
        y,
        to,
      );
      if (solved.outcome !== 0) throw new Error(`odex gave up with outcome ${solved.outcome}.`);
      y = solved.y;
      evaluations += solved.nEval;
      steps += solved.nStep;
      return look(y);
    });
  });
  return { seen, evaluations, steps };
}

function byUs(tolerancePct: number): { seen: Observed; steps: number } {
  const solved = simulateDrying({ ...run, tolerancePct });
  return {
    seen: run.observeS.map((_, at) => [solved.averagePct[at]!, ...solved.depthPct.map((row) => row[at]!)]),
    steps: solved.steps,
  };
}

const reference = byOdex(1e-9).seen;
const errorOf = (seen: Observed): number =>
  Math.max(...seen.flatMap((row, at) => row.map((value, i) => Math.abs(value - reference[at]![i]!))));

/** Least of several runs after three to warm up, ms: what else the machine does can only add. */
function timed(work: () => unknown, repeats: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < repeats + 3; i++) {
    const begin = performance.now();
    work();
    if (i >= 3) least = Math.min(least, performance.now() - begin);
  }
  return least;
}

const evaluationMs =
  timed(() => {
    const y = Float64Array.from(run.startPct, (mc, i) => mc - 30 * Math.exp(-i / 8));
    for (let i = 0; i < 10_000; i++) ratesOf(y, 20, 13);
  }, 7) / 10_000;

type Row = {
  solver: string;
  tolerance: number;
  error: number;
  ms: number;
  evaluations: number;
  note: string;
};
const rows: Row[] = [];
for (const tolerance of [0.3, 0.1, 0.03, 0.01, 1e-3, 1e-4, 1e-5]) {
  const { seen, steps } = byUs(tolerance);
  const ms = timed(() => byUs(tolerance), 25);
  rows.push({ solver: 'Pintally', tolerance, error: errorOf(seen), ms, evaluations: steps, note: 'steps' });
}
for (const tolerance of [1, 0.1, 0.01]) {
  const { seen, evaluations } = byOdex(tolerance);
  rows.push({
    solver: 'odex',
    tolerance,
    error: errorOf(seen),
    ms: timed(() => byOdex(tolerance), 1),
    evaluations,
    note: '',
  });
}

/** The same equations in Python: tables go over as numbers. */
const python = `
import json, sys, time
import numpy as np
from scipy.integrate import solve_ivp
p = json.load(sys.stdin)
w, c = np.array(p['width']), np.array(p['centre'])
n, factor, gap = len(w), p['factor'], np.diff(c)
def look(cubic, mc):
    s = np.asarray(mc) / p['piece']
    j = np.clip(np.floor(s), 0, len(cubic) - 1).astype(int)
    u = s - j
    k = np.clip(u, 0, 1)
    c0, c1, c2, c3 = cubic[j].T
    slope = c1 + k * (2 * c2 + 3 * k * c3)
    return c0 + k * (c1 + k * (c2 + k * c3)) + (u - k) * slope, slope / p['piece']
def solve(method, tol):
    y, seen, nfev = np.array(p['start']), [], 0
    begin = time.perf_counter()
    for s in p['stretches']:
        integral, potential = (np.array(s[k]).reshape(-1, 4) for k in ('integral', 'potential'))
        def rates(t, y):
            nonlocal nfev
            nfev += 1
            emc = s['emc'] + s['slope'] * (t - s['from'])
            air = look(potential, emc)[0]
            phi = look(integral, y)[0]
            g = factor / (w[0] / 2)
            low, high = min(y[0], emc), max(y[0], emc)
            face = (low + high) / 2
            for _ in range(60):
                pv, ps = look(potential, face)
                iv, d = look(integral, face)
                excess = s['emission'] * (pv - air) - g * (phi[0] - iv)
                if excess > 0: high = face
                else: low = face
                nxt = face - excess / (s['emission'] * ps + g * d)
                if not low < nxt < high: nxt = (low + high) / 2
                if abs(nxt - face) < 1e-9: break
                face = nxt
            flow = np.concatenate(([-s['emission'] * (look(potential, face)[0] - air)], factor * (phi[:-1] - phi[1:]) / gap, [0]))
            return (flow[:-1] - flow[1:]) / w
        more = dict(lband=1, uband=1) if method == 'LSODA' else dict(jac_sparsity=np.eye(n) + np.eye(n, k=1) + np.eye(n, k=-1))
        r = solve_ivp(rates, (s['from'], s['to']), y, method=method, t_eval=s['at'], atol=tol, rtol=max(tol / 100, 1e-12), first_step=100, **more)
        if not r.success: raise SystemExit(r.message)
        y = r.y[:, -1]
        seen.extend(r.y.T.tolist())
    return seen, nfev, 1000 * (time.perf_counter() - begin)
out = []
for method in ('BDF', 'Radau', 'LSODA'):
    for tol in p['tolerances']:
        seen, nfev, ms = solve(method, tol)
        out.append(dict(method=method, tol=tol, seen=seen, nfev=nfev, ms=ms))
json.dump(out, sys.stdout)
`;
const stiff = spawnSync('/usr/bin/python3', ['-c', python], {
  input: JSON.stringify({
    width: [...grid.widthM],
    centre: [...grid.centreM],
    factor: run.diffusivityFactor,
    piece: 0.5,
    start: [...run.startPct],
    tolerances: [1, 0.1, 0.01, 1e-3, 1e-4],
    stretches: stretches.map(({ from, to, at, segment }) => {
      const table = tables.at(segment.tempC);
      return {
        from,
        to,
        at,
        emc: segment.emcStartPct,
        slope: (segment.emcEndPct - segment.emcStartPct) / segment.durationS,
        emission: table.emission * run.faceFactors[0],
        integral: [...table.integral],
        potential: [...table.potential],
      };
    }),
  }),
  encoding: 'utf8',
  maxBuffer: 1e8,
});
if (stiff.status === 0) {
  type Stiff = { method: string; tol: number; seen: number[][]; nfev: number; ms: number };
  for (const { method, tol, seen, nfev, ms } of JSON.parse(stiff.stdout) as Stiff[]) {
    rows.push({
      solver: `SciPy ${method}`,
      tolerance: tol,
      error: errorOf(seen.map(look)),
      ms,
      evaluations: nfev,
      note: `at least ${(nfev * evaluationMs).toFixed(2)} ms in JavaScript`,
    });
  }
} else {
  console.log(`SciPy left out: ${stiff.stderr.trim().split('\n').at(-1) ?? 'no python3'}`);
}

console.log(
  `One board, 200 days, ${cells} cells. One evaluation of the equations: ${(1000 * evaluationMs).toFixed(2)} µs.\n`,
);
console.log('solver        tolerance  error % MC     time ms  evaluations');
for (const row of rows) {
  console.log(
    `${row.solver.padEnd(12)} ${row.tolerance.toExponential(0).padStart(10)}  ${row.error.toExponential(1).padStart(10)} ${row.ms.toFixed(2).padStart(11)} ${String(row.evaluations).padStart(12)}  ${row.note}`,
  );
}

/** Time that a solver takes for an error, on the straight line between its runs in logarithms; its cheapest below. */
function timeFor(solver: string, error: number, cost: (row: Row) => number): number | null {
  const own = rows.filter((row) => row.solver === solver).sort((a, b) => b.error - a.error);
  if (own.length === 0 || own.at(-1)!.error > error) return null;
  const after = own.findIndex((row) => row.error <= error);
  if (after === 0) return cost(own[0]!);
  const [a, b] = [own[after - 1]!, own[after]!];
  const share = Math.log(error / a.error) / Math.log(b.error / a.error);
  return cost(a) * (cost(b) / cost(a)) ** share;
}

console.log('\nTimes our time at equal error (SciPy: least possible in JavaScript, see above):');
for (const error of [0.1, 0.03, 0.01, 1e-3]) {
  const ours = timeFor('Pintally', error, (row) => row.ms);
  const others = ['odex', 'SciPy BDF', 'SciPy Radau', 'SciPy LSODA'].map((solver) => {
    const theirs = timeFor(solver, error, (row) =>
      solver === 'odex' ? row.ms : row.evaluations * evaluationMs,
    );
    return `${solver} ${ours === null || theirs === null ? '-' : (theirs / ours).toFixed(1)}`;
  });
  console.log(`  ${error} % MC (ours ${ours?.toFixed(2) ?? '-'} ms): ${others.join(', ')}`);
}

// What a person waits for: a board with four rounds of readings, its own place and two others, a year ahead.
const sawn = Date.UTC(2025, 3, 10);
const shed = [0, 1, 5, 10, 15, 19, 21, 20, 16, 11, 5, 1].map((tempC) => ({ tempC, rh: 0.68 }));
const input: ForecastInput = {
  nowMs: sawn + 120 * 86_400_000,
  board: {
    thicknessMm: 28,
    basicSpecificGravity: 0.56,
    faces: ['open', 'open'],
    start: { atMs: sawn, mcPct: null, logSd: 0.3, shellRatio: 1 },
    stays: [{ fromMs: sawn, air: shed }],
  },
  readings: [30, 60, 90, 119].flatMap((day, i) =>
    [0.1, 0.5].map((depthFraction, row) => ({
      atMs: sawn + day * 86_400_000,
      depthFraction,
      mcPct: [
        [22, 48],
        [18, 32],
        [15.5, 22],
        [14.5, 18],
      ][i]![row]!,
      standardUncertaintyPct: 1,
    })),
  ),
  siblings: [],
  use: { minPct: 6, maxPct: 9, maxShellCorePct: 2 },
  elsewhere: [20, 16].map((tempC, i) => ({ placeId: i + 2, air: shed.map(() => ({ tempC, rh: 0.42 })) })),
  placeId: 1,
  horizonDays: 365,
};
console.log(
  `\nForecast of one board at three places: ${timed(() => forecastBoard(input), 15).toFixed(1)} ms, like faces; ` +
    `${timed(() => forecastBoard({ ...input, board: { ...input.board, faces: ['open', 'bark'] } }), 15).toFixed(1)} ms, unlike faces.`,
);
