import type { DryingGrid } from './drying-grid.ts';

/** Three cells and their weights: the parabola through them, read at one depth. */
export type DepthWeights = { first: number; w0: number; w1: number; w2: number };

/** @param depthFraction  0 to 1 of the thickness, from face A */
export function depthWeights(grid: DryingGrid, depthFraction: number): DepthWeights {
  if (!(depthFraction >= 0 && depthFraction <= 1)) {
    throw new RangeError(`Depth ${depthFraction} is outside 0 to 1 of the thickness.`);
  }
  const fraction = grid.half ? Math.min(depthFraction, 1 - depthFraction) : depthFraction;
  const x = fraction * grid.thicknessM;
  const center = grid.centerM;
  let first = 0;
  while (first < center.length - 3 && (center[first + 1]! + center[first + 2]!) / 2 < x) first++;
  const [x0, x1, x2] = [center[first]!, center[first + 1]!, center[first + 2]!];
  return {
    first,
    w0: ((x - x1) * (x - x2)) / ((x0 - x1) * (x0 - x2)),
    w1: ((x - x0) * (x - x2)) / ((x1 - x0) * (x1 - x2)),
    w2: ((x - x0) * (x - x1)) / ((x2 - x0) * (x2 - x1)),
  };
}

export const weigh = (y: ArrayLike<number>, w: DepthWeights): number =>
  w.w0 * y[w.first]! + w.w1 * y[w.first + 1]! + w.w2 * y[w.first + 2]!;

/**
 * Moisture content at a depth, % MC.
 *
 * @param depthFraction  0 to 1 of the thickness, from face A
 */
export function atDepthOf(grid: DryingGrid, profilePct: ArrayLike<number>, depthFraction: number): number {
  return weigh(profilePct, depthWeights(grid, depthFraction));
}
