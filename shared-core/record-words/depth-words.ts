import type { JudgedReading } from '../probing/readings/reading.ts';
import type { Words } from '../words/words.ts';

/** How deep a reading was, and whether that was only planned. */
export const depthWords = (
  { spot: { depthMm, face }, depthFrom }: Pick<JudgedReading, 'spot' | 'depthFrom'>,
  thicknessMm: number,
  { say }: Words,
): string =>
  depthMm === null
    ? say('depth.unknown')
    : face === 'fresh-split'
      ? say('depth.on-split', { depthMm })
      : face === 'fresh-cut' || face === 'fresh-rip'
        ? say(isMiddle(depthMm, thicknessMm) ? 'depth.middle-of-cut' : 'depth.on-cut', { depthMm })
        : say(depthFrom === 'plan' ? 'depth.planned' : 'depth.known', { depthMm });

/** To a tenth of the thickness: nobody aims closer. */
const isMiddle = (depthMm: number, thicknessMm: number): boolean =>
  Math.abs(2 * depthMm - thicknessMm) <= 0.2 * thicknessMm;
