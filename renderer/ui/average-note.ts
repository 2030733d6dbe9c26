import type { LatestFinding } from '../../shared-core/contract/yard.ts';
import type { Say } from '../../shared-core/words/words.ts';

/** How the average in a list is known, where it is not read; null where it is. */
export function averageNote(
  { averagePct, averageIs, shellPct, isQuestionable }: LatestFinding,
  say: Say,
): string | null {
  if (isQuestionable)
    return say(averageIs === 'estimated' ? 'stacks.estimated-questionable' : 'board.questionable');
  if (averagePct === null) return shellPct === null ? null : say('stacks.shell-alone', { shellPct });
  return averageIs === 'estimated' ? say('stacks.estimated') : null;
}
