import { setImmediate } from 'node:timers/promises';
import type { AppContext } from '../context.ts';
import type { Assessing } from '../judging/assessing.ts';
import { createBacklog } from '../judging/backlog.ts';
import type { Aims } from './aims.ts';
import { nextBoard } from './next-board.ts';
import type { OpenRounds } from './open-rounds.ts';

/**
 * While a person goes to a board, works out what it and the one after it can be expected to have, so that saving its first
 * reading does not wait for the drying model.
 */
export function createPriorsAhead(
  context: AppContext,
  aims: Aims,
  openRounds: OpenRounds,
  assessing: Assessing,
) {
  const rounds = createBacklog(context, async (roundId, yieldIfDue) => {
    // What moved the aim is answered first.
    await setImmediate();
    const boards = openRounds.find(roundId)?.boards ?? [];
    for (const [, { boardId }] of aims.inRound(roundId)) {
      for (const each of [boardId, nextBoard(boards, boardId)?.boardId]) {
        if (!(await yieldIfDue())) return [];
        const board = boards.find((one) => one.boardId === each);
        if (board && !board.isRead) assessing.expect(board.boardId, roundId);
      }
    }
    return [];
  });
  aims.changed.follow((window) => {
    const aim = aims.of(window);
    if (aim !== null) rounds.add([aim.roundId]);
  });
  return { leave: rounds.leave };
}
