import { Refusal } from '../../../shared-core/contract/answer.ts';
import { isMovedAway } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { QueryContext } from '../context.ts';

/** @throws Refusal, with the board that it is on now, of a reading that a person moved: a window may be behind */
export function checkIsHere(
  { yard }: QueryContext,
  { id, excluded }: Pick<Reading, 'id' | 'excluded'>,
): void {
  if (isMovedAway(excluded))
    throw new Refusal(message('refusal.reading-moved', { boardCode: yard().readings.boardNow(id) }));
}
