import { type DepthWeights, weigh } from './at-depth.ts';
import { BoardFace, type MetAir } from './board-face.ts';
import { columns } from './columns.ts';
import { type CubicInStep, cubicOf } from './cubic-in-step.ts';
import type { DryingGrid } from './drying-grid.ts';
import type { DryingPace } from './drying-run.ts';
import type { LawTable, Tables } from './law-tables.ts';
import { look, lookAll, valueIn } from './mc-table.ts';
import { ros3pl } from './rosenbrock.ts';

const { gamma } = ros3pl;
const [alpha2, alpha3] = [ros3pl.alpha[1], ros3pl.alpha[2]];
const [gamma1, gamma2, gamma3] = ros3pl.gammaOf;
const [m1, m2, , m4] = ros3pl.m;
const [e1, e2, e3, e4] = ros3pl.error;
const [c21] = ros3pl.c2.map((c) => gamma * c) as [number];
const [c31, c32] = ros3pl.c3.map((c) => gamma * c) as [number, number];
const [c41, c42, c43] = ros3pl.c4.map((c) => gamma * c) as [number, number, number];

/**
 * The equations of a board, one for each cell, and its steps in time (`rosenbrock.ts`). It serves one run after another.
 *
 * A stage takes two passes over the cells: up, where each cell's gain goes straight into the elimination, and back down,
 * where each solved cell goes straight to where the next stage is taken. Apart, these took a tenth more time (measured).
 */
export class Stepper {
  private readonly grid: DryingGrid;
  /** Of the computed cells together, m. */
  private readonly computedM: number;
  private faceFactors: readonly [number, number] = [0, 0];
  private tables!: Tables;
  /** Of each cell, 1/m. */
  private readonly perWidth: Float64Array;
  /** From each cell to the next, m/s over the diffusivity that was integrated; 0 from the last. */
  private readonly conductance: Float64Array;
  private readonly faceA: BoardFace;
  private readonly faceB: BoardFace;
  private table!: LawTable;
  /** Of the table: conductances hold it. */
  private rise = 1;
  /** As last met. */
  private readonly air: MetAir = { emcPct: Number.NaN, potential: { value: 0, slope: 0 } };
  /** Of each cell, as last worked out. */
  private readonly integral: Float64Array;
  private readonly integralSlope: Float64Array;
  /** Factors of 1 - scale J. */
  private readonly perPivot: Float64Array;
  private readonly lower: Float64Array;
  private readonly upper: Float64Array;
  /** Solutions of the four stages. */
  private readonly u1: Float64Array;
  private readonly u2: Float64Array;
  private readonly u3: Float64Array;
  private readonly u4: Float64Array;
  /** % MC of each cell at the end of a step. */
  endPct: Float64Array;
  /** What flowed out of the board in it, and for each stage, % MC · m. */
  outM = 0;
  private out1 = 0;
  private out2 = 0;
  private out3 = 0;
  private out4 = 0;

  constructor(grid: DryingGrid, tolerancePct: number) {
    const n = grid.widthM.length;
    this.grid = grid;
    this.computedM = grid.widthM.reduce((sum, width) => sum + width, 0);
    const column = columns(12, n);
    this.perWidth = column();
    this.conductance = column();
    this.integral = column();
    this.integralSlope = column();
    this.perPivot = column();
    this.lower = column();
    this.upper = column();
    this.u1 = column();
    this.u2 = column();
    this.u3 = column();
    this.u4 = column();
    this.endPct = column();
    for (let i = 0; i < n; i++) this.perWidth[i] = 1 / grid.widthM[i]!;
    this.faceA = new BoardFace(tolerancePct);
    this.faceB = new BoardFace(tolerancePct);
  }

  /** Another run begins, at this temperature. */
  begin({ tables, diffusivityFactor, faceFactors }: DryingPace, tempC: number): void {
    const { widthM, centerM } = this.grid;
    const end = widthM.length - 1;
    this.tables = tables;
    this.faceFactors = faceFactors;
    for (let i = 0; i < end; i++) this.conductance[i] = diffusivityFactor / (centerM[i + 1]! - centerM[i]!);
    this.faceA.begin(diffusivityFactor / (widthM[0]! / 2));
    this.faceB.begin(diffusivityFactor / (widthM[end]! / 2));
    this.rise = 1;
    this.bringTo(tempC);
  }

  /** From now on the board has this temperature. */
  bringTo(tempC: number): void {
    const { faceFactors, faceA, faceB, conductance } = this;
    const table = this.tables.at(tempC);
    const change = table.rise / this.rise;
    if (change !== 1) {
      for (let i = 0; i < conductance.length; i++) conductance[i] = change * conductance[i]!;
      faceA.conductance *= change;
      faceB.conductance *= change;
      this.rise = table.rise;
    }
    faceA.emission = table.emission * faceFactors[0];
    // The middle of a board that is alike on both sides lets nothing through.
    faceB.emission = this.grid.half ? 0 : table.emission * faceFactors[1];
    this.table = table;
  }

  /** Brings both faces to where the cells next to them, and the air, have these % MC. */
  private meetAir(y: Float64Array, emcPct: number): void {
    const { table, air, faceA, faceB } = this;
    air.emcPct = emcPct;
    look(table.potential, emcPct, air.potential);
    if (faceA.emission !== 0) faceA.meet(table, air, y, 0);
    if (faceB.emission !== 0) faceB.meet(table, air, y, y.length - 1);
  }

  /** The rate of change of each cell, % MC/s. */
  rates(y: Float64Array, emcPct: number, into: Float64Array): void {
    const { table, faceA, faceB, perWidth, conductance } = this;
    const end = y.length - 1;
    this.meetAir(y, emcPct);
    let inflow = -faceA.rate;
    let here = valueIn(table.integral, y[0]!);
    for (let i = 0; i <= end; i++) {
      const next = i < end ? valueIn(table.integral, y[i + 1]!) : here;
      const out = i < end ? conductance[i]! * (here - next) : faceB.rate;
      into[i] = perWidth[i]! * (inflow - out);
      inflow = out;
      here = next;
    }
  }

  /**
   * Goes from `y` on for a time `h`, while EMC runs straight. The stages are written out, for a forecast takes some 5,000
   * steps.
   *
   * @returns its error, root mean square over the computed thickness, % MC; infinite where a cell would dry to less than
   *          nothing, but for rounding
   */
  take(y: Float64Array, emcPct: number, emcPerS: number, h: number): number {
    const { table, faceA, faceB, perWidth, conductance, integral, integralSlope } = this;
    const { perPivot, lower, upper, u1, u2, u3, u4, endPct } = this;
    const end = y.length - 1;
    const scale = gamma * h;

    // First stage. The matrix is factored on the way up (Thomas algorithm; it is diagonally dominant).
    lookAll(table.integral, y, integral, integralSlope);
    this.meetAir(y, emcPct);
    const perCellA = faceA.ratePerCell;
    const perCellB = faceB.ratePerCell;
    const laterA = h * faceA.ratePerEmc * emcPerS;
    const laterB = h * faceB.ratePerEmc * emcPerS;
    let rateA = faceA.rate + gamma1 * laterA;
    let rateB = faceB.rate + gamma1 * laterB;
    let inflow = -rateA;
    let here = integral[0]!;
    let before = 0;
    // Of the flow over a cell's near side, by the cell before it and by itself; of that over its far side, likewise.
    let nearBefore = 0;
    let nearSelf = perCellA;
    let aboveBefore = 0;
    let pivot = 1;
    for (let i = 0; i <= end; i++) {
      const scaled = scale * perWidth[i]!;
      let out = rateB;
      let farSelf = perCellB;
      let farNext = 0;
      if (i < end) {
        const g = conductance[i]!;
        const next = integral[i + 1]!;
        out = g * (here - next);
        farSelf = g * integralSlope[i]!;
        farNext = g * integralSlope[i + 1]!;
        here = next;
      }
      const below = scaled * nearBefore;
      // Only one division waits for the one before it.
      pivot = 1 + scaled * (nearSelf + farSelf) - (below * aboveBefore) / pivot;
      const per = 1 / pivot;
      perPivot[i] = per;
      const low = below * per;
      lower[i] = low;
      aboveBefore = scaled * farNext;
      upper[i] = aboveBefore * per;
      nearBefore = farSelf;
      nearSelf = farNext;
      before = scaled * (inflow - out) * per + low * before;
      u1[i] = before;
      inflow = out;
    }
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u1[i]! + upper[i]! * before;
      u1[i] = before;
      const pct = y[i]! + ros3pl.a21 * before;
      endPct[i] = pct;
      integral[i] = valueIn(table.integral, pct);
    }
    const out1 = scale * (rateA + perCellA * u1[0]! + rateB + perCellB * u1[end]!);

    // Second stage.
    this.meetAir(endPct, emcPct + emcPerS * alpha2 * h);
    rateA = faceA.rate + gamma2 * laterA;
    rateB = faceB.rate + gamma2 * laterB;
    inflow = -rateA;
    here = integral[0]!;
    before = 0;
    for (let i = 0; i <= end; i++) {
      let out = rateB;
      if (i < end) {
        const next = integral[i + 1]!;
        out = conductance[i]! * (here - next);
        here = next;
      }
      before = (scale * perWidth[i]! * (inflow - out) + c21 * u1[i]!) * perPivot[i]! + lower[i]! * before;
      u2[i] = before;
      inflow = out;
    }
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u2[i]! + upper[i]! * before;
      u2[i] = before;
      const pct = y[i]! + m1 * u1[i]! + m2 * before;
      endPct[i] = pct;
      integral[i] = valueIn(table.integral, pct);
    }
    const out2 = scale * (rateA + perCellA * u2[0]! + rateB + perCellB * u2[end]!) + c21 * out1;

    // Third stage; the fourth is taken at the same place.
    this.meetAir(endPct, emcPct + emcPerS * alpha3 * h);
    rateA = faceA.rate + gamma3 * laterA;
    rateB = faceB.rate + gamma3 * laterB;
    inflow = -faceA.rate;
    here = integral[0]!;
    before = 0;
    for (let i = 0; i <= end; i++) {
      let out = faceB.rate;
      if (i < end) {
        const next = integral[i + 1]!;
        out = conductance[i]! * (here - next);
        here = next;
      }
      let gain = scale * perWidth[i]! * (inflow - out);
      u4[i] = gain;
      if (i === 0) gain -= scale * perWidth[0]! * gamma3 * laterA;
      if (i === end) gain -= scale * perWidth[end]! * gamma3 * laterB;
      before = (gain + c31 * u1[i]! + c32 * u2[i]!) * perPivot[i]! + lower[i]! * before;
      u3[i] = before;
      inflow = out;
    }
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u3[i]! + upper[i]! * before;
      u3[i] = before;
      u4[i] = u4[i]! + c41 * u1[i]! + c42 * u2[i]! + c43 * before;
    }
    const out3 = scale * (rateA + perCellA * u3[0]! + rateB + perCellB * u3[end]!) + c31 * out1 + c32 * out2;

    // Fourth stage: gamma4 is 0.
    before = 0;
    for (let i = 0; i <= end; i++) {
      before = u4[i]! * perPivot[i]! + lower[i]! * before;
      u4[i] = before;
    }
    const { widthM } = this.grid;
    let squares = 0;
    let driestPct = 0;
    before = 0;
    for (let i = end; i >= 0; i--) {
      before = u4[i]! + upper[i]! * before;
      u4[i] = before;
      const pct = endPct[i]! + m4 * before;
      endPct[i] = pct;
      if (pct < driestPct) driestPct = pct;
      const error = e1 * u1[i]! + e2 * u2[i]! + e3 * u3[i]! + e4 * before;
      squares += widthM[i]! * error * error;
    }
    const out4 =
      scale * (faceA.rate + perCellA * u4[0]! + faceB.rate + perCellB * u4[end]!) +
      c41 * out1 +
      c42 * out2 +
      c43 * out3;
    this.out1 = out1;
    this.out2 = out2;
    this.out3 = out3;
    this.out4 = out4;
    this.outM = m1 * out1 + m2 * out2 + m4 * out4;
    return driestPct < -1e-9 ? Number.POSITIVE_INFINITY : Math.sqrt(squares / this.computedM);
  }

  /** The board's average over the step, out of what it was at its begin. */
  average(beginPct: number): CubicInStep {
    const { computedM, out1, out2, out3, out4 } = this;
    return cubicOf(beginPct, -out1 / computedM, -out2 / computedM, -out3 / computedM, -out4 / computedM);
  }

  /** Moisture content at a depth over the step that began at `y`. */
  atDepth(y: Float64Array, w: DepthWeights): CubicInStep {
    return cubicOf(weigh(y, w), weigh(this.u1, w), weigh(this.u2, w), weigh(this.u3, w), weigh(this.u4, w));
  }
}
