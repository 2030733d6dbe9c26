import { MOST_FOR_BUYER } from '../../../shared-core/contract/report.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import type { Route } from '../../stores/navigation.ts';

/** The sheet for a buyer of boards, and the words that lead to it: of so many as one sheet has. */
export function forBuyer(boards: readonly { id: number }[], say: Say): { route: Route; words: string } {
  const [id = 0, ...more] = boards.slice(0, MOST_FOR_BUYER).map((board) => board.id);
  return {
    route: { name: 'report', kind: 'buyer', id, more },
    words:
      boards.length > MOST_FOR_BUYER
        ? say('report.for-buyer-of-first', { boards: MOST_FOR_BUYER })
        : say('report.for-buyer'),
  };
}
