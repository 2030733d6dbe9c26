import type { LatestFinding } from '../../shared-core/contract/yard.ts';
import { readAtUnknown } from '../../shared-core/probing/readings/told-depths.ts';
import type { Say } from '../../shared-core/words/words.ts';

/** How the average in a list is known, where it is not read; null where it is. */
export function averageNote(found: LatestFinding, say: Say): string | null {
  const { averagePct, averageIs, shellPct, isQuestionable } = found;
  if (isQuestionable)
    return say(averageIs === 'estimated' ? 'stacks.estimated-questionable' : 'board.questionable');
  const mcPct = readAtUnknown(found);
  if (averagePct === null && mcPct !== null) return say('stacks.mc-depth-unknown', { mcPct });
  if (mcPct !== null)
    return say(averageIs === 'estimated' ? 'stacks.estimated-depth-unknown' : 'stacks.depth-unknown');
  if (averagePct === null) return shellPct === null ? null : say('stacks.shell-alone', { shellPct });
  return averageIs === 'estimated' ? say('stacks.estimated') : null;
}
