import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type AppContext, orRefuse } from '../context.ts';

/**
 * Records that boards stand at a place from an instant on. Earlier moves stay: they are the boards' climate history.
 * @throws Refusal for a day to come, or a place or board that is not there
 */
export function moveBoards(context: AppContext, boardIds: number[], placeId: number, since: string): void {
  const yard = context.yard();
  orRefuse(yard.places.get(placeId), 'place');
  if (since > context.now()) {
    throw new Refusal(
      'That day is still to come. Nothing was moved. Give the day on which the boards were moved.',
    );
  }
  yard.transaction(() => {
    for (const id of boardIds) {
      orRefuse(yard.boards.get(id), 'board');
      yard.boards.addMove(id, placeId, since);
    }
  });
}
