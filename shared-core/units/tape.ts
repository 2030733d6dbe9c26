import { MM_PER_INCH } from '../measures.ts';

/** A tape measure's finest usual mark (common practice, no source). */
const PARTS = 16;
export const LEAST_TAPE_MM = MM_PER_INCH / PARTS;

/**
 * A length in inches to the nearest mark of a tape: "1", "1 1/16", "3/4".
 *
 * @param whole  writes the whole inches, where a region has its own marks for thousands
 */
export function tapeInches(mm: number, whole: (inches: number) => string = String): string {
  const parts = Math.round(mm / LEAST_TAPE_MM);
  const inches = Math.floor(parts / PARTS);
  let numerator = parts % PARTS;
  let denominator = PARTS;
  while (numerator > 0 && numerator % 2 === 0) {
    numerator /= 2;
    denominator /= 2;
  }
  if (numerator === 0) return whole(inches);
  return inches === 0 ? `${numerator}/${denominator}` : `${whole(inches)} ${numerator}/${denominator}`;
}
