import type { EndUse } from '../../wood/species/end-use.ts';

/** What wood for a use is dried to, % MC: the middle of its range, or its upper limit where any drier will do. */
export function targetOfUsePct({ minPct, maxPct }: Pick<EndUse, 'minPct' | 'maxPct'>): number {
  return minPct === 0 ? maxPct : (minPct + maxPct) / 2;
}
