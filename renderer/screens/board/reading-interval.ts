import type { PctRange } from '../../../shared-core/words/message.ts';

/** 90 % point of the standard normal: 8 chances in 10 are between the two of them. */
const Z_90 = 1.2816;

/** Where a reading's true value likely is, % MC, from its standard uncertainty. */
export const likelyInterval = (mcPct: number, standardUncertaintyPct: number): PctRange => ({
  minPct: Math.max(0, mcPct - Z_90 * standardUncertaintyPct),
  maxPct: mcPct + Z_90 * standardUncertaintyPct,
});
