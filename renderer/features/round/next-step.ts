import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { type PlannedSpot, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** "Core, 60 cm from the left end". */
export const spotName = ({ along, spot: { depth } }: PlannedSpot): Message =>
  message('spot.at', { depth, along });

/** How deep the pins go. */
export const pinsOf = ({ spot: { depth, depthMm } }: PlannedSpot): Message =>
  depthMm === null ? message('spot.pins', { depth }) : message('spot.pins-to', { depth, depthMm });

/** What to do next on this board, short enough to be read from two meters away. */
export function nextStep(board: RoundBoard, spotIndex: number | null, isLastBoard: boolean): Message {
  const planned = spotIndex === null ? undefined : planSpots(board).plan[spotIndex];
  if (planned) return message('next-step.spot', { spot: spotName(planned), pins: pinsOf(planned) });
  const next = message(isLastBoard ? 'next-step.finish' : 'next-step.next-board');
  return board.finding
    ? message('next-step.board-done', { callName: message(`call.${board.finding.call}`), next })
    : next;
}
