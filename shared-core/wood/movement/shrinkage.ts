import { FIBER_SATURATION_PCT } from '../moisture/fiber-saturation.ts';

/** Whether a shrinkage from green to oven-dry is known, and one that these formulas hold for: above 0 and below 50 %. */
export const isShrinkage = (greenToDryPct: number | null): greenToDryPct is number =>
  greenToDryPct !== null && greenToDryPct > 0 && greenToDryPct < 50;

function requireShrinkage(greenToDryPct: number): void {
  if (!isShrinkage(greenToDryPct)) {
    throw new RangeError(
      `Shrinkage from green to oven-dry must be above 0 and below 50 %, not ${greenToDryPct}.`,
    );
  }
}

function requireMc(...mcs: number[]): void {
  for (const mcPct of mcs) {
    if (!(mcPct >= 0 && mcPct <= 400))
      throw new RangeError(`Moisture content must be 0 to 400 %, not ${mcPct}.`);
  }
}

/**
 * Shrinkage from green to a moisture content, % of the green size.
 *
 * @param greenToDryPct   shrinkage from green to oven-dry in that direction, % (Table 4-3)
 * @param mcPct           0 to 400; from 30 on wood is green and has not shrunk
 * @throws                RangeError outside the ranges above
 * Source: Wood Handbook, eq. 4-9: S (1 - x / 30).
 * @example shrunkPct(8.6, 12) // 5.16
 */
export function shrunkPct(greenToDryPct: number, mcPct: number): number {
  requireShrinkage(greenToDryPct);
  requireMc(mcPct);
  return greenToDryPct * (1 - Math.min(mcPct, FIBER_SATURATION_PCT) / FIBER_SATURATION_PCT);
}

/**
 * Change of a size between two moisture contents, from the species' shrinkage: less than zero when it shrinks.
 *
 * @param sizeMm          size at `fromPct`, above 0
 * @param fromPct, toPct  0 to 400; what is above 30 counts as 30, where wood begins to move
 * @param greenToDryPct   as in `shrunkPct`
 * @throws                RangeError outside the ranges above
 * Source: Wood Handbook, chapter 13: D (M2 - M1) / (3000 / S - 30 + M1), for 0 to 30 %.
 * @example sizeChangeMm(232, 8, 11, 3.7) // 0.88, black cherry, quartersawn
 */
export function sizeChangeMm(sizeMm: number, fromPct: number, toPct: number, greenToDryPct: number): number {
  if (!(sizeMm > 0)) throw new RangeError(`A size must be above 0 mm, not ${sizeMm}.`);
  requireShrinkage(greenToDryPct);
  requireMc(fromPct, toPct);
  const [from, to] = [Math.min(fromPct, FIBER_SATURATION_PCT), Math.min(toPct, FIBER_SATURATION_PCT)];
  return (
    (sizeMm * (to - from)) / ((100 * FIBER_SATURATION_PCT) / greenToDryPct - FIBER_SATURATION_PCT + from)
  );
}

/**
 * Change of a size between two moisture contents, from the species' dimensional change coefficient.
 *
 * @param sizeMm          size at `fromPct`, above 0
 * @param fromPct, toPct  6 to 14, the range that the coefficients hold for
 * @param coefficient     change per % MC as a fraction of the size (Table 13-5), 0 to 0.02
 * @throws                RangeError outside the ranges above
 * Source: Wood Handbook, chapter 13: D C (M2 - M1), 6 to 14 %.
 * @example sizeChangeByCoefficientMm(232, 8, 11, 0.00126) // 0.88, black cherry, quartersawn
 */
export function sizeChangeByCoefficientMm(
  sizeMm: number,
  fromPct: number,
  toPct: number,
  coefficient: number,
): number {
  if (!(sizeMm > 0)) throw new RangeError(`A size must be above 0 mm, not ${sizeMm}.`);
  if (!(coefficient >= 0 && coefficient <= 0.02)) {
    throw new RangeError(`The change coefficient must be 0 to 0.02, not ${coefficient}.`);
  }
  for (const mcPct of [fromPct, toPct]) {
    if (!(mcPct >= 6 && mcPct <= 14)) {
      throw new RangeError(`Change coefficients hold from 6 to 14 % MC, not at ${mcPct} %.`);
    }
  }
  return sizeMm * coefficient * (toPct - fromPct);
}

/** Angle of the growth rings to the board's face, as it is sawn, degrees. */
export const RING_ANGLE_DEG = { flat: 0, rift: 45, quarter: 90 } as const;
export type Sawing = keyof typeof RING_ANGLE_DEG;

/**
 * Shrinkage (or change coefficient) across the face and through the thickness, for rings at any angle to the face.
 *
 * @param radial, tangential   both in the same measure
 * @param ringAngleDeg         0 (flat-sawn) to 90 (quarter-sawn)
 * @throws                     RangeError for an angle outside 0 to 90
 * Source: the normal strain of a small deformation in turned axes (any textbook of mechanics):
 * T cos² + R sin² across the face. Where the rings stand askew the section shears into a lozenge as well.
 * @example acrossBoard(4, 8, 45) // { width: 6, thickness: 6 }
 */
export function acrossBoard(
  radial: number,
  tangential: number,
  ringAngleDeg: number,
): { width: number; thickness: number } {
  if (!(ringAngleDeg >= 0 && ringAngleDeg <= 90)) {
    throw new RangeError(`The rings' angle to the face must be 0 to 90 degrees, not ${ringAngleDeg}.`);
  }
  const alongRings = Math.cos((ringAngleDeg * Math.PI) / 180) ** 2;
  return {
    width: tangential * alongRings + radial * (1 - alongRings),
    thickness: radial * alongRings + tangential * (1 - alongRings),
  };
}

/** Where a board came from in the log: what bends it. */
export interface BoardInLog {
  widthMm: number;
  /** From the pith to the face nearer to it: the radius of the rings at the middle of a flat-sawn board. */
  pithDistanceMm: number;
  /** Sideways from over the pith to the board's middle; 0 for a board sawn straight over it. */
  offCenterMm: number;
}

/**
 * Cup of an unrestrained board that dries evenly, from the difference of tangential and radial shrinkage and the
 * curvature of its rings. Positive: the face away from the pith (the bark side) becomes hollow, as it does in drying.
 *
 * Rings that shrink by t around and r along the radius stay rings: a point at radius R and angle A goes to
 * R (1 - r) and A (1 - t) / (1 - r), without stress anywhere. The face turned to the pith is carried along, and its
 * bow is measured from the chord between its edges. For a board over the pith it is near
 * (t - r) width² / (4 pithDistance).
 *
 * What weight, stickers and neighbors hold flat is not counted, nor what one-sided drying adds.
 *
 * @param fromPct, toPct   0 to 400; above 30 nothing moves
 * @throws                 RangeError for sizes not above 0, or shrinkage and MC outside the ranges of `shrunkPct`
 * Source: geometry, from the handbook's shrinkages; the deformation is checked in the tests.
 */
export function cupMm(
  board: BoardInLog,
  shrinkage: { radialPct: number; tangentialPct: number },
  fromPct: number,
  toPct: number,
): number {
  const { widthMm, pithDistanceMm, offCenterMm } = board;
  if (!(widthMm > 0 && pithDistanceMm > 0 && Number.isFinite(offCenterMm))) {
    throw new RangeError('The width and the distance from the pith must be above 0 mm.');
  }
  const stretch = (greenToDryPct: number) => 1 + sizeChangeMm(1, fromPct, toPct, greenToDryPct);
  const radial = stretch(shrinkage.radialPct);
  const around = stretch(shrinkage.tangentialPct) / radial;
  const moved = (fromMiddleMm: number) => {
    const across = offCenterMm + fromMiddleMm;
    const radius = radial * Math.hypot(across, pithDistanceMm);
    const angle = around * Math.atan2(across, pithDistanceMm);
    return { across: radius * Math.sin(angle), up: radius * Math.cos(angle) };
  };
  const [left, middle, right] = [moved(-widthMm / 2), moved(0), moved(widthMm / 2)];
  const chord = { across: right.across - left.across, up: right.up - left.up };
  const length = Math.hypot(chord.across, chord.up);
  // Distance of the middle below the chord of the edges.
  return ((left.up - middle.up) * chord.across - (left.across - middle.across) * chord.up) / length;
}
