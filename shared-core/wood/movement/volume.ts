import { MM_PER_FOOT, MM_PER_INCH } from '../../measures.ts';
import { mostWaterPct } from '../moisture/most-water.ts';
import type { Species } from '../species/species.ts';
import { isShrinkage, shrunkPct } from './shrinkage.ts';

/** A board's size, mm. */
export interface BoardSize {
  thicknessMm: number;
  widthMm: number;
  lengthMm: number;
}

/** A board's size as far as it is known, mm. */
export interface SizesOfBoard {
  thicknessMm: number;
  widthMm: number | null;
  lengthMm: number | null;
}

/** A size cut to the inch or the foot in mm is still that inch or foot. */
const ROUNDING = 1e-6;

function requireSize({ thicknessMm, widthMm, lengthMm }: BoardSize): void {
  if (!(thicknessMm > 0 && widthMm > 0 && lengthMm > 0)) {
    throw new RangeError('Thickness, width and length must be above 0 mm.');
  }
}

/** Volume of a board as it is, m³. */
export function volumeM3(size: BoardSize): number {
  requireSize(size);
  return (size.thicknessMm * size.widthMm * size.lengthMm) / 1e9;
}

/**
 * Surface measure of a hardwood board in whole square feet, as it is tallied: width in inches as it is, times length
 * in feet with the odd inches dropped, over 12, to the nearest whole. A half is rounded to the even foot here; in a
 * tally by hand, halves go up and down by turns.
 *
 * @throws RangeError where a size is not above 0
 * Source: rules of the National Hardwood Lumber Association for measuring rough lumber (from memory).
 * @example surfaceMeasureFt2({ thicknessMm: 25.4, widthMm: 165.1, lengthMm: 2438.4 }) // 6.5 in x 8 ft: 4.33 -> 4
 */
export function surfaceMeasureFt2(size: BoardSize): number {
  requireSize(size);
  const exact = ((size.widthMm / MM_PER_INCH) * Math.floor(size.lengthMm / MM_PER_FOOT + ROUNDING)) / 12;
  const down = Math.floor(exact);
  const over = exact - down;
  if (Math.abs(over - 0.5) < ROUNDING) return down % 2 === 0 ? down : down + 1;
  return over > 0.5 ? down + 1 : down;
}

/**
 * Board feet of a hardwood board by the trade's rounding: surface measure times thickness in quarter inches, dropped to
 * the quarter; thinner than one inch counts as one inch.
 *
 * @throws RangeError where a size is not above 0
 * Source: as `surfaceMeasureFt2` (from memory).
 * @example boardFeetTallied({ thicknessMm: 50.8, widthMm: 203.2, lengthMm: 3048 }) // 8/4, 8 in, 10 ft: 14
 */
export function boardFeetTallied(size: BoardSize): number {
  const quarters = Math.floor((4 * size.thicknessMm) / MM_PER_INCH + ROUNDING);
  return surfaceMeasureFt2(size) * (Math.max(4, quarters) / 4);
}

/** Board feet of a board whose sizes may not all be known; null where they are not. */
export const boardFeetIfMeasured = ({ thicknessMm, widthMm, lengthMm }: SizesOfBoard): number | null =>
  widthMm === null || lengthMm === null ? null : boardFeetTallied({ thicknessMm, widthMm, lengthMm });

/**
 * Cubic meters by the trade's rounding: width dropped to the whole centimeter, length to 0.1 m, the product rounded to
 * 0.001 m³.
 *
 * @throws RangeError where a size is not above 0
 * Source: common practice in the European hardwood trade, no source.
 * @example cubicMetersTallied({ thicknessMm: 52, widthMm: 318, lengthMm: 3070 }) // 52 mm x 31 cm x 3.0 m: 0.048
 */
export function cubicMetersTallied(size: BoardSize): number {
  requireSize(size);
  const widthM = Math.floor(size.widthMm / 10 + ROUNDING) / 100;
  const lengthM = Math.floor(size.lengthMm / 100 + ROUNDING) / 10;
  return Math.round(1000 * (size.thicknessMm / 1000) * widthM * lengthM) / 1000;
}

/**
 * Volume that wood has lost from green to a moisture content, % of the green volume. Where the species' own is not
 * known, it is estimated from its specific gravity: 26.5 Gb from green to oven-dry.
 *
 * Source: Wood Handbook, chapter 4: Gx = Gb / (1 - 0.265 a Gb) with a = (30 - x) / 30 (from memory).
 */
function volumeShrunkPct(basicSpecificGravity: number, volumetricPct: number | null, mcPct: number): number {
  return shrunkPct(isShrinkage(volumetricPct) ? volumetricPct : 26.5 * basicSpecificGravity, mcPct);
}

/**
 * Density of wood with its water, kg/m³, of the volume that it has at that moisture content.
 *
 * @param species  needs its basic specific gravity; its volumetric shrinkage is used where known
 * @param mcPct    0 to the most that this species can hold
 * @returns        null where the specific gravity of the species is not known
 * @throws        RangeError for a moisture content outside the range above
 * Source: Wood Handbook, chapter 4: density = 1000 Gx (1 + x / 100), Gx = Gb / (1 - Sx / 100).
 */
export function densityKgM3(
  species: Pick<Species, 'basicSpecificGravity' | 'volumetricPct'>,
  mcPct: number,
): number | null {
  const gravity = species.basicSpecificGravity;
  if (gravity === null) return null;
  if (!(mcPct >= 0 && mcPct <= mostWaterPct(gravity))) {
    throw new RangeError(
      `This species holds 0 to ${mostWaterPct(gravity).toFixed(0)} % water, not ${mcPct} %.`,
    );
  }
  const shrunk = volumeShrunkPct(gravity, species.volumetricPct, mcPct);
  return (1000 * gravity * (1 + mcPct / 100)) / (1 - shrunk / 100);
}

/**
 * Mass of a board now, and of the same board when it has come to a target.
 *
 * @param size       as measured at `nowPct`
 * @returns          kg; null where the specific gravity of the species is not known
 * @throws           RangeError for sizes not above 0 or moisture contents that this species cannot have
 * Source: as `densityKgM3`; the oven-dry mass stays, the water goes.
 */
export function boardMassKg(
  size: BoardSize,
  species: Pick<Species, 'basicSpecificGravity' | 'volumetricPct'>,
  nowPct: number,
  targetPct: number,
): { nowKg: number; targetKg: number } | null {
  const density = densityKgM3(species, nowPct);
  // Asked for its range check: a target that the species cannot hold is refused as well.
  if (density === null || densityKgM3(species, targetPct) === null) return null;
  const nowKg = density * volumeM3(size);
  return { nowKg, targetKg: (nowKg * (100 + targetPct)) / (100 + nowPct) };
}
