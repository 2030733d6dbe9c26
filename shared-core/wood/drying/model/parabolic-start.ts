import { averageOf, type DryingGrid } from './drying-grid.ts';

/** How far a parabola is from its faces to its average at a depth, as a part of the thickness; beyond that above 1. */
const towardAverage = (u: number): number => 6 * u * (1 - u);

const LEAST_SURE = 0.6;

/** Of a parabola through the thickness, its faces over its average, where it has `ratio` of the average at a depth. */
export function faceRatio(ratio: number, depthFraction: number): number {
  // The parabola is its average at 0.211 of the thickness: near that, no face follows from it.
  const part = Math.min(LEAST_SURE, towardAverage(depthFraction));
  return (ratio - part) / (1 - part);
}

/** A parabola through the thickness with this average, its faces at `shellRatio` times the average. */
export function parabolicStart(grid: DryingGrid, averagePct: number, shellRatio: number): Float64Array {
  // Mean over the thickness of 4 u (1 - u) is 2/3, so the middle is half as far above as the faces are below.
  const profile = Float64Array.from(grid.centerM, (x) => {
    const u = x / grid.thicknessM;
    return averagePct * (shellRatio + (1 - shellRatio) * towardAverage(u));
  });
  const mean = averageOf(grid, profile);
  return profile.map((value) => (value * averagePct) / mean);
}
