import { Refusal } from '../../../shared-core/contract/answer.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';

/**
 * Records that boards are at a place from an instant on. Earlier moves stay: they are the boards' climate history.
 * @throws Refusal for a future day, or a place or board that is not there
 */
export function moveBoards(context: AppContext, boardIds: number[], placeId: number, since: string): void {
  const yard = context.yard();
  orRefuse(yard.places.get(placeId), 'place');
  if (Date.parse(since) > Date.parse(context.now())) {
    throw new Refusal(message('refusal.move-to-come'));
  }
  // One question for all of 100,000 boards.
  orRefuse(yard.boards.areAllKnown(boardIds) || undefined, 'board');
  for (const boardId of boardIds) yard.moves.add({ boardId, placeId, since });
}
