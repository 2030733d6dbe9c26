import { AVERAGE_AT, AVERAGE_FROM } from './plan-basis.ts';
import type { Depth, Reading } from './reading.ts';

/** A core reading must come from at least this part of the thickness: 91 % of the way from face to center value. */
const LEAST_OF_CORE = 0.35;
/** Of an average, short pins may read as little, as a part of the thickness. Common practice, no source. */
const LEAST_OF_AVERAGE = 0.12;

/** Whether pins that were there tell what a spot of that depth is for, by their depth as a part of the thickness. */
export const tells: Record<Depth, (share: number) => boolean> = {
  shell: (share) => share <= AVERAGE_AT,
  average: (share) => share >= LEAST_OF_AVERAGE && share < LEAST_OF_CORE,
  core: (share) => share >= LEAST_OF_CORE,
};

/**
 * What a reading tells: what its spot is for or, where the pins are known to have been at another depth, that one.
 *
 * @param thicknessMm board thickness, mm, above 0
 */
export function depthRead(
  { spot: { depth, depthMm, face }, depthFrom }: Pick<Reading, 'spot' | 'depthFrom'>,
  thicknessMm: number,
): Depth {
  // A fresh crosscut is read in its middle, whatever its depth below the face.
  if (depthFrom === 'plan' || depthMm === null || depthMm > thicknessMm || face === 'fresh-cut') return depth;
  const share = Math.min(depthMm, thicknessMm - depthMm) / thicknessMm;
  if (tells[depth](share)) return depth;
  return tells.core(share) ? 'core' : share >= AVERAGE_FROM ? 'average' : 'shell';
}

/** Whether nobody knows how deep a reading was, so it is neither of the shell nor of the core. */
export const isDepthUnknown = ({ spot }: Pick<Reading, 'spot'>): boolean => spot.depthMm === null;
/** The same of all of some readings. */
export const areDepthsUnknown = (readings: readonly Pick<Reading, 'spot'>[]): boolean =>
  readings.length > 0 && readings.every(isDepthUnknown);
/** Whether nobody knows where along the board a reading was. Where the depth is unknown, the place was given by nobody either. */
export const isAlongUnknown = (reading: Pick<Reading, 'spot'>): boolean =>
  reading.spot.isAlongUnknown === true || isDepthUnknown(reading);

/** Pins deeper than this part of the thickness are near the other face, or through it: no such depth is meant. Common practice, no source. */
const DEEPEST_SHARE = 0.9;
export const reachesOtherFace = (depthMm: number, thicknessMm: number): boolean =>
  depthMm > DEEPEST_SHARE * thicknessMm;
