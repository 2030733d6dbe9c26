/**
 * Moisture moving through the thickness of a board and out of its two faces.
 *
 *     dM/dt = d/dx ( D(M, T) dM/dx ),   at a face   outflow = E (g(M at the face) - g(EMC))
 *
 * Finite volumes on a grid that is finer towards the faces. The flux between two cells is the difference of the
 * integral of D (Kirchhoff), so a D that varies twentyfold over the thickness costs no accuracy. In time TR-BDF2
 * with its embedded third-order estimate (M. E. Hosea and L. F. Shampine, Applied Numerical Mathematics 20, 1996;
 * from memory): L-stable, second order, both implicit stages with the same tridiagonal matrix. The flux at the
 * faces is taken from the same linear equations as the new state, so mass balances to rounding however loosely
 * Newton's method is stopped.
 */
import { surfaceEmission, surfaceHumidity, transverseDiffusivityM2S } from './diffusivity.ts';

/** A stretch of time in one air: EMC runs straight from start to end, temperature is its mean. */
export type AirSegment = {
  durationS: number;
  emcStartPct: number;
  emcEndPct: number;
  tempC: number;
};

/** What the wood and its faces do at one temperature; functions of % MC. */
export type DryingLaw = {
  /** Diffusivity, m²/s. */
  diffusivityM2S: (mcPct: number, tempC: number) => number;
  /** What drives moisture off a face: increasing with % MC, and at the EMC equal to that of the air. */
  surfacePotential: (mcPct: number, tempC: number) => number;
  /** Rate off a freely exposed face, % MC · m/s per unit of potential. */
  emission: (tempC: number) => number;
};

/** The law of a wood of this basic specific gravity, from `diffusivity.ts`. */
export function woodDryingLaw(basicSpecificGravity: number): DryingLaw {
  return {
    diffusivityM2S: (mcPct, tempC) => transverseDiffusivityM2S(mcPct, tempC, basicSpecificGravity),
    surfacePotential: surfaceHumidity,
    emission: (tempC) => surfaceEmission(tempC, basicSpecificGravity),
  };
}

/** Cubic pieces of the integral of D and of the surface potential, over % MC from 0 to `topPct`. */
type LawTable = {
  emission: number;
  /** Four coefficients a piece, lowest power first, in the fraction of a piece. */
  integral: Float64Array;
  potential: Float64Array;
};

const pieces = 120;
const pieceMcPct = 0.5;

/** Hermite cubics through values and slopes at the nodes. */
function hermitePieces(values: Float64Array, slopes: Float64Array): Float64Array {
  const cubic = new Float64Array(4 * pieces);
  for (let j = 0; j < pieces; j++) {
    const [v0, v1] = [values[j]!, values[j + 1]!];
    const [s0, s1] = [slopes[j]! * pieceMcPct, slopes[j + 1]! * pieceMcPct];
    cubic.set([v0, s0, 3 * (v1 - v0) - 2 * s0 - s1, 2 * (v0 - v1) + s0 + s1], 4 * j);
  }
  return cubic;
}

function tabulate(law: DryingLaw, tempC: number): LawTable {
  const d = new Float64Array(pieces + 1);
  const integral = new Float64Array(pieces + 1);
  const potential = new Float64Array(pieces + 1);
  const potentialSlope = new Float64Array(pieces + 1);
  const small = 1e-3;
  for (let j = 0; j <= pieces; j++) {
    const mc = j * pieceMcPct;
    d[j] = law.diffusivityM2S(mc, tempC);
    if (j > 0) {
      const middle = law.diffusivityM2S(mc - pieceMcPct / 2, tempC);
      integral[j] = integral[j - 1]! + (pieceMcPct / 6) * (d[j - 1]! + 4 * middle + d[j]!);
    }
    potential[j] = law.surfacePotential(mc, tempC);
    potentialSlope[j] =
      (law.surfacePotential(mc + small, tempC) - law.surfacePotential(Math.max(0, mc - small), tempC)) /
      (small + Math.min(mc, small));
  }
  return {
    emission: law.emission(tempC),
    integral: hermitePieces(integral, d),
    potential: hermitePieces(potential, potentialSlope),
  };
}

/** Value and slope of a table at a moisture content; straight on beyond its ends. */
const looked = { value: 0, slope: 0 };
function look(cubic: Float64Array, mcPct: number): void {
  const scaled = mcPct / pieceMcPct;
  const j = scaled <= 0 ? 0 : scaled >= pieces ? pieces - 1 : Math.floor(scaled);
  const inside = scaled - j;
  const s = Math.min(1, Math.max(0, inside));
  const at = 4 * j;
  const c1 = cubic[at + 1]!;
  const c2 = cubic[at + 2]!;
  const c3 = cubic[at + 3]!;
  const slope = c1 + s * (2 * c2 + 3 * s * c3);
  looked.value = cubic[at]! + s * (c1 + s * (c2 + s * c3)) + (inside - s) * slope;
  looked.slope = slope / pieceMcPct;
}

/** Keeps one table a temperature; share it between runs of the same wood, whatever their factors. */
export class LawTables {
  private readonly law: DryingLaw;
  private readonly byTemp = new Map<number, LawTable>();

  constructor(law: DryingLaw) {
    this.law = law;
  }

  at(tempC: number): LawTable {
    let table = this.byTemp.get(tempC);
    if (table === undefined) {
      table = tabulate(this.law, tempC);
      this.byTemp.set(tempC, table);
    }
    return table;
  }
}

/** Cells through the thickness, from face A to face B, or from face A to the middle where both sides are alike. */
export type DryingGrid = {
  thicknessM: number;
  /** Only the half next to face A is computed; the other is its mirror image. */
  half: boolean;
  widthM: Float64Array;
  /** Depth of each cell's centre below face A, m. */
  centreM: Float64Array;
};

/**
 * A grid whose cells shrink smoothly to a fifth of the mean width at an open face.
 *
 * @param thicknessMm  0.5 to 1000
 * @param half         whether the two faces are alike in everything
 * @param cells        4 to 2000, in the computed part
 */
export function dryingGrid(thicknessMm: number, half: boolean, cells: number): DryingGrid {
  if (!(thicknessMm >= 0.5 && thicknessMm <= 1000)) {
    throw new RangeError(`Thickness ${thicknessMm} mm is outside 0.5 to 1000 mm.`);
  }
  if (!(Number.isInteger(cells) && cells >= 4 && cells <= 2000)) {
    throw new RangeError(`${cells} cells: the model takes 4 to 2000.`);
  }
  const thicknessM = thicknessMm / 1000;
  const grading = 0.8;
  const edge = (i: number): number => {
    const whole = half ? i / cells / 2 : i / cells;
    return thicknessM * (whole - (grading / (2 * Math.PI)) * Math.sin(2 * Math.PI * whole));
  };
  const widthM = Float64Array.from({ length: cells }, (_, i) => edge(i + 1) - edge(i));
  const centreM = Float64Array.from({ length: cells }, (_, i) => (edge(i + 1) + edge(i)) / 2);
  return { thicknessM, half, widthM, centreM };
}

/** The average over the thickness, % MC. */
export function averageOf(grid: DryingGrid, profilePct: ArrayLike<number>): number {
  let sum = 0;
  let width = 0;
  for (let i = 0; i < grid.widthM.length; i++) {
    sum += grid.widthM[i]! * profilePct[i]!;
    width += grid.widthM[i]!;
  }
  return sum / width;
}

/** Three cells and their weights: the parabola through them, read at one depth. */
type DepthWeights = { first: number; w0: number; w1: number; w2: number };

function depthWeights(grid: DryingGrid, depthFraction: number): DepthWeights {
  if (!(depthFraction >= 0 && depthFraction <= 1)) {
    throw new RangeError(`Depth ${depthFraction} is outside 0 to 1 of the thickness.`);
  }
  const fraction = grid.half ? Math.min(depthFraction, 1 - depthFraction) : depthFraction;
  const x = fraction * grid.thicknessM;
  const centre = grid.centreM;
  let first = 0;
  while (first < centre.length - 3 && (centre[first + 1]! + centre[first + 2]!) / 2 < x) first++;
  const [x0, x1, x2] = [centre[first]!, centre[first + 1]!, centre[first + 2]!];
  return {
    first,
    w0: ((x - x1) * (x - x2)) / ((x0 - x1) * (x0 - x2)),
    w1: ((x - x0) * (x - x2)) / ((x1 - x0) * (x1 - x2)),
    w2: ((x - x0) * (x - x1)) / ((x2 - x0) * (x2 - x1)),
  };
}

const weigh = (y: ArrayLike<number>, w: DepthWeights): number =>
  w.w0 * y[w.first]! + w.w1 * y[w.first + 1]! + w.w2 * y[w.first + 2]!;

/** Moisture content at a depth, % MC; the depth is a fraction of the thickness, from face A. */
export function atDepthOf(grid: DryingGrid, profilePct: ArrayLike<number>, depthFraction: number): number {
  return weigh(profilePct, depthWeights(grid, depthFraction));
}

export type DryingRun = {
  grid: DryingGrid;
  tables: LawTables;
  /** % MC of each cell. */
  startPct: ArrayLike<number>;
  segments: readonly AirSegment[];
  /** Multiplies the law's diffusivity; above 0. */
  diffusivityFactor: number;
  /** Multiplies the law's emission at face A and at face B; 0 is sealed. */
  faceFactors: readonly [number, number];
  /** Added to every EMC, % MC. */
  emcOffsetPct?: number;
  /** Error allowed in one step, root mean square over the thickness, % MC. */
  tolerancePct: number;
  /** Where to look: seconds from the start, rising, none beyond the end; and depths from face A as fractions. */
  observeS: ArrayLike<number>;
  depthFractions: readonly number[];
};

export type DryingResult = {
  averagePct: Float64Array;
  /** One row a depth. */
  depthPct: Float64Array[];
  finalPct: Float64Array;
  /** Moisture that went out through the faces, as % MC of the board's average. */
  lostPct: number;
  steps: number;
};

/** Outflow at one face and its slope with the first cell's moisture; % MC · m/s. */
const outflow = { rate: 0, slope: 0, surfacePct: 0 };

/**
 * The moisture content of the very face is where outflow to the air equals flow from the first cell. Both are
 * monotone in it, and it lies between the first cell and the air, so Newton within that bracket always arrives.
 */
function faceOutflow(
  table: LawTable,
  emission: number,
  diffusivityFactor: number,
  halfWidthM: number,
  cellPct: number,
  emcPct: number,
  guessPct: number,
): void {
  if (emission === 0) {
    outflow.rate = 0;
    outflow.slope = 0;
    outflow.surfacePct = cellPct;
    return;
  }
  look(table.potential, emcPct);
  const air = looked.value;
  look(table.integral, cellPct);
  const inner = looked.value;
  const innerSlope = looked.slope;
  const conductance = diffusivityFactor / halfWidthM;
  let low = Math.min(cellPct, emcPct);
  let high = Math.max(cellPct, emcPct);
  let face = guessPct > low && guessPct < high ? guessPct : (low + high) / 2;
  let rate = 0;
  let rateSlope = 0;
  let total = 1;
  for (let iteration = 0; iteration < 60; iteration++) {
    look(table.potential, face);
    rate = emission * (looked.value - air);
    rateSlope = emission * looked.slope;
    look(table.integral, face);
    const excess = rate - conductance * (inner - looked.value);
    total = rateSlope + conductance * looked.slope;
    if (excess > 0) high = face;
    else low = face;
    const newton = face - excess / total;
    // At an end of the bracket it has arrived.
    const next = newton >= low && newton <= high ? newton : (low + high) / 2;
    const change = Math.abs(next - face);
    rate += rateSlope * (next - face);
    face = next;
    // What is left goes with the square of the change.
    if (change < 1e-6) break;
  }
  outflow.rate = rate;
  outflow.slope = (rateSlope * conductance * innerSlope) / total;
  outflow.surfacePct = face;
}

/** Everything one right-hand side needs, and what it leaves behind. */
type Rates = {
  dydt: Float64Array;
  /** Tridiagonal Jacobian. */
  below: Float64Array;
  on: Float64Array;
  above: Float64Array;
  /** Of each cell, 1/m, and between it and the next, m/s over the law's diffusivity. */
  perWidth: Float64Array;
  conductance: Float64Array;
  /** Factors of 1 - scale J. */
  perPivot: Float64Array;
  lower: Float64Array;
  upper: Float64Array;
  rateA: number;
  slopeA: number;
  rateB: number;
  slopeB: number;
  guessA: number;
  guessB: number;
};

const newRates = (run: DryingRun): Rates => {
  const { widthM, centreM } = run.grid;
  const n = widthM.length;
  return {
    dydt: new Float64Array(n),
    below: new Float64Array(n),
    on: new Float64Array(n),
    above: new Float64Array(n),
    perWidth: widthM.map((width) => 1 / width),
    // Nothing beyond the last cell: its outflow is the face's.
    conductance: centreM.map((x, i) => (i < n - 1 ? run.diffusivityFactor / (centreM[i + 1]! - x) : 0)),
    perPivot: new Float64Array(n),
    lower: new Float64Array(n),
    upper: new Float64Array(n),
    rateA: 0,
    slopeA: 0,
    rateB: 0,
    slopeB: 0,
    guessA: Number.NaN,
    guessB: Number.NaN,
  };
};

function fillRates(run: DryingRun, table: LawTable, y: Float64Array, emcPct: number, rates: Rates): void {
  const { widthM } = run.grid;
  const n = widthM.length;
  const { dydt, below, on, above, perWidth, conductance } = rates;
  const factor = run.diffusivityFactor;
  const emissionA = table.emission * run.faceFactors[0];
  faceOutflow(table, emissionA, factor, widthM[0]! / 2, y[0]!, emcPct, rates.guessA);
  rates.rateA = outflow.rate;
  rates.slopeA = outflow.slope;
  rates.guessA = outflow.surfacePct;
  // The middle of a board that is alike on both sides lets nothing through.
  const emissionB = run.grid.half ? 0 : table.emission * run.faceFactors[1];
  faceOutflow(table, emissionB, factor, widthM[n - 1]! / 2, y[n - 1]!, emcPct, rates.guessB);
  rates.rateB = outflow.rate;
  rates.slopeB = outflow.slope;
  rates.guessB = outflow.surfacePct;

  const cubic = table.integral;
  let inflow = -rates.rateA;
  let inflowSlopeHere = -rates.slopeA;
  let inflowSlopeBefore = 0;
  let integralHere = 0;
  let slopeHere = 0;
  for (let next = 0; next <= n; next++) {
    let integralNext = 0;
    let slopeNext = 0;
    if (next < n) {
      // `look`, written out: half of all time is spent in these lines.
      const scaled = y[next]! / pieceMcPct;
      const j = scaled <= 0 ? 0 : scaled >= pieces ? pieces - 1 : Math.floor(scaled);
      const inside = scaled - j;
      const u = Math.min(1, Math.max(0, inside));
      const at = 4 * j;
      const c1 = cubic[at + 1]!;
      const c2 = cubic[at + 2]!;
      const c3 = cubic[at + 3]!;
      slopeNext = c1 + u * (2 * c2 + 3 * u * c3);
      integralNext = cubic[at]! + u * (c1 + u * (c2 + u * c3)) + (inside - u) * slopeNext;
      slopeNext /= pieceMcPct;
    }
    if (next > 0) {
      const i = next - 1;
      const g = conductance[i]!;
      const out = next < n ? g * (integralHere - integralNext) : rates.rateB;
      const outSlopeHere = next < n ? g * slopeHere : rates.slopeB;
      const outSlopeNext = -g * slopeNext;
      const per = perWidth[i]!;
      dydt[i] = (inflow - out) * per;
      below[i] = inflowSlopeBefore * per;
      on[i] = (inflowSlopeHere - outSlopeHere) * per;
      above[i] = -outSlopeNext * per;
      inflow = out;
      inflowSlopeBefore = outSlopeHere;
      inflowSlopeHere = outSlopeNext;
    }
    integralHere = integralNext;
    slopeHere = slopeNext;
  }
}

/**
 * The rates of change of all cells, % MC/s: the same equations for another solver (`tests/bench/drying.bench.ts`).
 * The returned array is the same at every call.
 */
export function dryingRates(
  run: DryingRun,
): (profilePct: Float64Array, tempC: number, emcPct: number) => Float64Array {
  const rates = newRates(run);
  return (profilePct, tempC, emcPct) => {
    fillRates(run, run.tables.at(tempC), profilePct, emcPct, rates);
    return rates.dydt;
  };
}

/** Factors 1 - scale J for the rates' Jacobian (Thomas algorithm; the matrix is diagonally dominant). */
function factorShifted(rates: Rates, scale: number): void {
  const { below, on, above, perPivot, lower, upper } = rates;
  const n = on.length;
  let pivot = 1 - scale * on[0]!;
  perPivot[0] = 1 / pivot;
  for (let i = 1; i < n; i++) {
    // Only one division waits for the one before it.
    pivot = 1 - scale * on[i]! - (scale * below[i]! * (scale * above[i - 1]!)) / pivot;
    const per = 1 / pivot;
    perPivot[i] = per;
    lower[i] = scale * below[i]! * per;
    upper[i - 1] = scale * above[i - 1]! * perPivot[i - 1]!;
  }
}

/** Solves (1 - scale J) x = x with the last factors, in place. */
function solveShifted(rates: Rates, x: Float64Array): void {
  const { perPivot, lower, upper } = rates;
  const n = x.length;
  let before = x[0]! * perPivot[0]!;
  x[0] = before;
  for (let i = 1; i < n; i++) {
    before = x[i]! * perPivot[i]! + lower[i]! * before;
    x[i] = before;
  }
  for (let i = n - 2; i >= 0; i--) {
    before = x[i]! + upper[i]! * before;
    x[i] = before;
  }
}

const gamma = 2 - Math.SQRT2;
const diagonal = gamma / 2;
const weight = Math.SQRT2 / 4;
/** Embedded third-order weights less the method's own. */
const error1 = (1 - weight) / 3 - weight;
const error2 = (3 * weight + 1) / 3 - weight;
const error3 = diagonal / 3 - diagonal;

/**
 * Runs a board through a sequence of airs.
 *
 * @throws RangeError for values that no board has, or when no step length meets the tolerance
 */
export function simulateDrying(run: DryingRun): DryingResult {
  checkRun(run);
  const { grid, observeS } = run;
  const n = grid.widthM.length;
  const depths = run.depthFractions.map((fraction) => depthWeights(grid, fraction));
  const averagePct = new Float64Array(observeS.length);
  const depthPct = depths.map(() => new Float64Array(observeS.length));
  let y = Float64Array.from(run.startPct);
  const y2 = new Float64Array(n);
  let y3 = new Float64Array(n);
  let k1 = new Float64Array(n);
  const k2 = new Float64Array(n);
  let k3 = new Float64Array(n);
  const delta = new Float64Array(n);
  const base = new Float64Array(n);
  const rates = newRates(run);
  // Newton leaves the square of its last correction over the % MC that it takes to bend the law, some 10.
  const newtonTolerance = Math.sqrt(run.tolerancePct);
  const computedM = grid.half ? grid.thicknessM / 2 : grid.thicknessM;
  /** Of each cell in the average. */
  const share = grid.widthM.map((width) => width / computedM);
  let lost = 0;
  let steps = 0;
  let observed = 0;
  let clock = 0;
  let step = 0;
  let lastEmc = Number.NaN;

  /** Solves x = base + scale f(x) by Newton; returns the outflow that belongs to it, or NaN where it fails. */
  const solveStage = (table: LawTable, emcPct: number, scale: number, x: Float64Array): number => {
    for (let iteration = 0; iteration < 10; iteration++) {
      fillRates(run, table, x, emcPct, rates);
      for (let i = 0; i < n; i++) delta[i] = base[i]! + scale * rates.dydt[i]! - x[i]!;
      factorShifted(rates, scale);
      solveShifted(rates, delta);
      let largest = 0;
      for (let i = 0; i < n; i++) {
        x[i] = x[i]! + delta[i]!;
        const size = Math.abs(delta[i]!);
        // NaN must not pass for converged.
        if (!(size <= largest)) largest = size;
      }
      if (largest < newtonTolerance) {
        return rates.rateA + rates.slopeA * delta[0]! + rates.rateB + rates.slopeB * delta[n - 1]!;
      }
      if (!(largest < 1e4)) return Number.NaN;
    }
    return Number.NaN;
  };

  const observe = (untilS: number, length: number): void => {
    while (observed < observeS.length && observeS[observed]! <= untilS) {
      // Cubic Hermite between the ends of the step.
      const s = length === 0 ? 1 : 1 - (untilS - observeS[observed]!) / length;
      const a = (1 + 2 * s) * (1 - s) ** 2;
      const b = s * (1 - s) ** 2 * length;
      const c = s * s * (3 - 2 * s);
      const d = s * s * (s - 1) * length;
      let sum = 0;
      for (let i = 0; i < n; i++) {
        sum += share[i]! * (a * y[i]! + b * k1[i]! + c * y3[i]! + d * k3[i]!);
      }
      averagePct[observed] = sum;
      for (const [row, w] of depths.entries()) {
        depthPct[row]![observed] = a * weigh(y, w) + b * weigh(k1, w) + c * weigh(y3, w) + d * weigh(k3, w);
      }
      observed++;
    }
  };

  y3.set(y);
  observe(0, 0);

  for (const segment of run.segments) {
    if (segment.durationS === 0) continue;
    const table = run.tables.at(segment.tempC);
    const offset = run.emcOffsetPct ?? 0;
    const emcAt = (inside: number): number =>
      Math.max(
        0.1,
        offset +
          segment.emcStartPct +
          ((segment.emcEndPct - segment.emcStartPct) * inside) / segment.durationS,
      );
    fillRates(run, table, y, emcAt(0), rates);
    k1.set(rates.dydt);
    let rate1 = rates.rateA + rates.rateB;
    let inside = 0;
    if (!(Math.abs(emcAt(0) - lastEmc) < 0.05)) {
      // New air: start with a step in which the fastest cell changes by about the square root of the tolerance.
      let fastest = 1e-12;
      for (let i = 0; i < n; i++) fastest = Math.max(fastest, Math.abs(k1[i]!));
      const careful = (0.3 * Math.sqrt(run.tolerancePct)) / fastest;
      step = step === 0 ? careful : Math.min(step, careful);
    }
    while (inside < segment.durationS) {
      const left = segment.durationS - inside;
      // Two even steps rather than a full one and a sliver.
      const h = step >= left ? left : Math.min(step, left / 2);
      const scale = diagonal * h;
      for (let i = 0; i < n; i++) {
        base[i] = y[i]! + scale * k1[i]!;
        y2[i] = base[i]! + scale * k1[i]!;
      }
      const rate2 = solveStage(table, emcAt(inside + gamma * h), scale, y2);
      let failed = Number.isNaN(rate2);
      let rate3 = 0;
      let size = 0;
      if (!failed) {
        for (let i = 0; i < n; i++) {
          k2[i] = (y2[i]! - base[i]!) / scale;
          base[i] = y[i]! + h * weight * (k1[i]! + k2[i]!);
          // First guess: the two rates that are known, straight on.
          y3[i] = y[i]! + h * (k1[i]! + (k2[i]! - k1[i]!) / (2 * gamma));
        }
        rate3 = solveStage(table, emcAt(inside + h), scale, y3);
        failed = Number.isNaN(rate3);
      }
      if (!failed) {
        for (let i = 0; i < n; i++) {
          k3[i] = (y3[i]! - base[i]!) / scale;
          delta[i] = h * (error1 * k1[i]! + error2 * k2[i]! + error3 * k3[i]!);
        }
        // Damped as the method damps, else stiff cells would be taken for errors.
        solveShifted(rates, delta);
        for (let i = 0; i < n; i++) size += share[i]! * delta[i]! * delta[i]!;
        size = Math.sqrt(size) / run.tolerancePct;
      }
      if (failed || !(size <= 1)) {
        step = failed || !Number.isFinite(size) ? h / 4 : h * Math.max(0.2, 0.9 * size ** (-1 / 3));
        if (step < 1e-6)
          throw new RangeError('The drying model found no step length that meets its tolerance.');
        continue;
      }
      steps++;
      inside = h === left ? segment.durationS : inside + h;
      lost += h * (weight * (rate1 + rate2) + diagonal * rate3);
      observe(clock + inside, h);
      [y, y3] = [y3, y];
      [k1, k3] = [k3, k1];
      rate1 = rate3;
      step = h * Math.min(5, 0.9 * Math.max(size, 1e-6) ** (-1 / 3));
    }
    clock += segment.durationS;
    lastEmc = emcAt(segment.durationS);
  }
  // Rounding may leave the last instant a hair beyond the end.
  y3.set(y);
  k3.fill(0);
  observe(Number.POSITIVE_INFINITY, 0);
  return { averagePct, depthPct, finalPct: y, lostPct: lost / computedM, steps };
}

function checkRun(run: DryingRun): void {
  const n = run.grid.widthM.length;
  if (run.startPct.length !== n)
    throw new RangeError(`The start has ${run.startPct.length} cells, the grid ${n}.`);
  for (let i = 0; i < n; i++) {
    if (!(run.startPct[i]! >= 0 && run.startPct[i]! <= 1000)) {
      throw new RangeError(`Start moisture content ${run.startPct[i]} % is outside 0 to 1000 %.`);
    }
  }
  if (!(run.diffusivityFactor > 0 && run.diffusivityFactor <= 1e4)) {
    throw new RangeError(`Diffusivity factor ${run.diffusivityFactor} is not between 0 and 10000.`);
  }
  if (!run.faceFactors.every((factor) => factor >= 0 && factor <= 1e9)) {
    throw new RangeError('A face factor is below 0.');
  }
  if (run.grid.half && run.faceFactors[0] !== run.faceFactors[1]) {
    throw new RangeError('Half a board was asked for, but its two faces differ.');
  }
  if (!(run.tolerancePct > 0)) throw new RangeError('The tolerance must be above 0.');
  let total = 0;
  for (const segment of run.segments) {
    if (!(segment.durationS >= 0 && segment.durationS < 1e11)) {
      throw new RangeError(`A stretch of ${segment.durationS} s is not a length of time.`);
    }
    for (const emc of [segment.emcStartPct, segment.emcEndPct]) {
      if (!(emc >= 0 && emc <= 100)) throw new RangeError(`EMC ${emc} % is outside 0 to 100 %.`);
    }
    total += segment.durationS;
  }
  for (let i = 0; i < run.observeS.length; i++) {
    const at = run.observeS[i]!;
    if (!(at >= (i === 0 ? 0 : run.observeS[i - 1]!) && at <= total * (1 + 1e-12))) {
      throw new RangeError(`Time ${at} s to look at is out of order or beyond the end.`);
    }
  }
}

/** A parabola through the thickness with this average, its faces at `shellRatio` times the average. */
export function parabolicStart(grid: DryingGrid, averagePct: number, shellRatio: number): Float64Array {
  // Mean over the thickness of 4 u (1 - u) is 2/3, so the middle stands half as far above as the faces lie below.
  const profile = Float64Array.from(grid.centreM, (x) => {
    const u = x / grid.thicknessM;
    return averagePct * (shellRatio + (1 - shellRatio) * 6 * u * (1 - u));
  });
  const mean = averageOf(grid, profile);
  return profile.map((value) => (value * averagePct) / mean);
}
