import { type DepthWeights, weigh } from './at-depth.ts';
import { columns } from './columns.ts';
import type { CubicInStep } from './cubic-in-step.ts';
import { averageOf, type DryingGrid } from './drying-grid.ts';
import type { Stepper } from './stepper.ts';

/** Records a run at the times and depths that were asked for. */
export class RunRecord {
  private readonly grid: DryingGrid;
  private readonly observeS: Float64Array;
  private readonly depths: readonly DepthWeights[];
  private seen = 0;
  readonly averagePct: Float64Array;
  readonly depthPct: Float64Array[];

  constructor(grid: DryingGrid, observeS: Float64Array, depths: readonly DepthWeights[]) {
    this.grid = grid;
    this.observeS = observeS;
    this.depths = depths;
    const column = columns(1 + depths.length, observeS.length);
    this.averagePct = column();
    this.depthPct = depths.map(column);
  }

  /** Takes the instants up to one, in a step that began at `y`, and an average of `beginPct`. */
  inStep(
    stepper: Stepper,
    y: Float64Array,
    beginPct: number,
    beganS: number,
    h: number,
    untilS: number,
  ): void {
    const { observeS, depths, seen } = this;
    let end = seen;
    while (end < observeS.length && observeS[end]! <= untilS) end++;
    if (end === seen) return;
    this.seen = end;
    this.fill(this.averagePct, stepper.average(beginPct), seen, end, beganS, h);
    for (let row = 0; row < depths.length; row++) {
      this.fill(this.depthPct[row]!, stepper.atDepth(y, depths[row]!), seen, end, beganS, h);
    }
  }

  private fill(
    into: Float64Array,
    { p0, p1, p2, p3 }: CubicInStep,
    from: number,
    end: number,
    beganS: number,
    h: number,
  ): void {
    const { observeS } = this;
    const perH = 1 / h;
    for (let i = from; i < end; i++) {
      const s = (observeS[i]! - beganS) * perH;
      into[i] = p0 + s * (p1 + s * (p2 + s * p3));
    }
  }

  /** Takes the instants up to one, at which the profile is `y`. */
  still(y: Float64Array, untilS: number): void {
    const { grid, observeS, depths } = this;
    for (; this.seen < observeS.length && observeS[this.seen]! <= untilS; this.seen++) {
      this.averagePct[this.seen] = averageOf(grid, y);
      for (let row = 0; row < depths.length; row++) {
        this.depthPct[row]![this.seen] = weigh(y, depths[row]!);
      }
    }
  }
}
