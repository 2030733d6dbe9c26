import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import type { Words } from '../../../shared-core/words/words.ts';

/** How deep a reading was, and whether that was only planned. */
export const depthWords = (
  { spot: { depthMm, face }, depthFrom }: Pick<JudgedReading, 'spot' | 'depthFrom'>,
  { say }: Words,
): string =>
  depthMm === null
    ? say('depth.unknown')
    : face === 'fresh-cut' || face === 'fresh-rip' || face === 'fresh-split'
      ? say(face === 'fresh-split' ? 'depth.on-split' : 'depth.on-cut', { depthMm })
      : say(depthFrom === 'plan' ? 'depth.planned' : 'depth.known', { depthMm });
