import type { RoundState } from '../../../shared-core/contract/round.ts';
import { probedOf, type Saved } from '../../stores/round.ts';
import { isQuestionable } from './questionable.ts';

/**
 * The reading, by its id, with which this window filled the last open spot of the board aimed at; null where a spot is
 * open or a questionable reading asks for attention.
 */
export function doneBy(round: RoundState, saved: Saved | null): number | null {
  const probed = probedOf(round);
  if (saved === null || probed === null || saved.board.boardId !== probed.boardId) return null;
  const readings = probed.assessment?.readings ?? [];
  const isSound = readings.every((reading) => reading.excluded !== null || !isQuestionable(reading));
  const isFilled = round.aim?.spotIndex === null && probed.finding?.openSpot === null;
  return isFilled && isSound ? saved.reading.id : null;
}
