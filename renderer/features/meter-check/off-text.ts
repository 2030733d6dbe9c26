import type { ReadingUnit } from '../../../shared-core/wood/moisture/corrected.ts';
import { useWords } from '../../words.ts';

/** Shows how far off a meter is: points, or a share of the ohms, with its sign. */
export function useOffText(unit: ReadingUnit): (off: number) => string {
  const { formats } = useWords();
  return unit === 'pct' ? formats.signedPoints : (share) => formats.signedPercent(100 * share);
}
