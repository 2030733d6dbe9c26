import { MM_PER_INCH } from '../measures.ts';

/** Sizes and places as a printer can make them: whole dots, or any. All in mm. */
export interface Dots {
  /** The largest that is not above it. */
  down(mm: number): number;
  /** The smallest that is not below it. */
  up(mm: number): number;
}

/** What is a whole number of dots but for the last bit is that number. */
const NEARLY = 1e-6;

/** @param perInch  null: any size can be made */
export function dotsOf(perInch: number | null): Dots {
  if (perInch === null) return { down: (mm) => mm, up: (mm) => mm };
  const dotMm = MM_PER_INCH / perInch;
  return {
    down: (mm) => Math.floor(mm / dotMm + NEARLY) * dotMm,
    up: (mm) => Math.ceil(mm / dotMm - NEARLY) * dotMm,
  };
}
