import { Z_90 } from '../../wood/maths/gaussian.ts';
import type { PctRange } from '../../words/message.ts';

/** Where a reading's true value likely is (8 chances in 10), % MC, from its standard uncertainty. */
export const likelyInterval = (mcPct: number, standardUncertaintyPct: number): PctRange => ({
  minPct: Math.max(0, mcPct - Z_90 * standardUncertaintyPct),
  maxPct: mcPct + Z_90 * standardUncertaintyPct,
});
