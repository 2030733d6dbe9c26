import type { LawTable } from './law-tables.ts';
import { type Looked, look } from './mc-table.ts';

/** The air that both faces meet. */
export type MetAir = {
  emcPct: number;
  /** Of a face that is at that EMC. */
  potential: Looked;
};

/**
 * A face of the board: how its outflow answered the first cell and the air when it was last worked out.
 *
 * Numbers come from fields and arrays: as arguments each would be boxed.
 */
export class BoardFace {
  /** From the first cell's center to the face, m/s over the diffusivity that was integrated. */
  conductance = Number.NaN;
  /** 0 is sealed. */
  emission = 0;
  private cellPct = Number.NaN;
  private emcPct = Number.NaN;
  /** Moisture content of the very face, and its slopes. */
  private facePct = Number.NaN;
  private facePerCell = Number.NaN;
  private facePerEmc = Number.NaN;
  /** Outflow, % MC · m/s, and its slopes. */
  rate = Number.NaN;
  ratePerCell = Number.NaN;
  ratePerEmc = Number.NaN;
  /** Largest last change of the face's moisture, % MC. */
  private readonly newtonPct: number;
  private readonly looked: Looked = { value: 0, slope: 0 };

  /** @param tolerancePct  of the run */
  constructor(tolerancePct: number) {
    // Its square over the % MC that it takes to bend the law, some 5, is left: a five-hundredth of the tolerance.
    this.newtonPct = 0.1 * Math.sqrt(tolerancePct);
  }

  /** Another run begins: nothing is known of where the face is, and nothing leaves it while it is sealed. */
  begin(conductance: number): void {
    this.conductance = conductance;
    this.facePct = Number.NaN;
    this.rate = 0;
    this.ratePerCell = 0;
    this.ratePerEmc = 0;
  }

  /**
   * Brings the face to where the cell next to it is as in `y`.
   *
   * The moisture content of the very face is where outflow to the air equals flow from the first cell. Both are
   * monotone in it, and it lies between the first cell and the air, so Newton within that bracket always arrives.
   */
  meet(table: LawTable, air: MetAir, y: Float64Array, cell: number): void {
    const { emission, conductance, newtonPct, looked } = this;
    const { emcPct, potential } = air;
    const airPotential = potential.value;
    const airSlope = potential.slope;
    const cellPct = y[cell]!;
    look(table.integral, cellPct, looked);
    const cellIntegral = looked.value;
    const cellSlope = looked.slope;
    let low = Math.min(cellPct, emcPct);
    let high = Math.max(cellPct, emcPct);
    const guess =
      this.facePct + this.facePerCell * (cellPct - this.cellPct) + this.facePerEmc * (emcPct - this.emcPct);
    let pct = guess > low && guess < high ? guess : (low + high) / 2;
    let rate = 0;
    let rateSlope = 0;
    let total = 1;
    for (let iteration = 0; iteration < 60; iteration++) {
      look(table.potential, pct, looked);
      rate = emission * (looked.value - airPotential);
      rateSlope = emission * looked.slope;
      look(table.integral, pct, looked);
      const excess = rate - conductance * (cellIntegral - looked.value);
      total = rateSlope + conductance * looked.slope;
      if (excess > 0) high = pct;
      else low = pct;
      const newton = pct - excess / total;
      // At an end of the bracket it has arrived.
      const next = newton >= low && newton <= high ? newton : (low + high) / 2;
      const change = Math.abs(next - pct);
      rate += rateSlope * (next - pct);
      pct = next;
      // What is left goes with the square of the change.
      if (change < newtonPct) break;
    }
    this.cellPct = cellPct;
    this.emcPct = emcPct;
    this.facePct = pct;
    this.facePerCell = (conductance * cellSlope) / total;
    this.facePerEmc = (emission * airSlope) / total;
    this.rate = rate;
    this.ratePerCell = rateSlope * this.facePerCell;
    this.ratePerEmc = rateSlope * this.facePerEmc - emission * airSlope;
  }
}
