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
  for (const id of boardIds) {
    orRefuse(yard.boards.get(id), 'board');
    yard.moves.add({ boardId: id, placeId, since });
  }
}
