/** Cells through the thickness, from face A to face B, or from face A to the middle where both sides are alike. */
export type DryingGrid = {
  thicknessM: number;
  /** Only the half next to face A is computed; the other is its mirror image. */
  half: boolean;
  widthM: Float64Array;
  /** Depth of each cell's center below face A, m. */
  centerM: Float64Array;
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
  const centerM = Float64Array.from({ length: cells }, (_, i) => (edge(i + 1) + edge(i)) / 2);
  return { thicknessM, half, widthM, centerM };
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
