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
export function nextStep({
  board,
  spotIndex,
  pinsAt,
  isLast,
  secondsLeft,
}: {
  board: RoundBoard;
  /** Null where all are read. */
  spotIndex: number | null;
  /** The spot that the pins which are in were saved at. */
  pinsAt: number | null;
  isLast: boolean;
  /** Until the next board comes by itself; null where it does not. */
  secondsLeft: number | null;
}): Message {
  const { plan } = planSpots(board);
  const saved = pinsAt === null ? undefined : plan[pinsAt];
  if (saved) return message('next-step.pull-pins', { spot: spotName(saved) });
  const planned = spotIndex === null ? undefined : plan[spotIndex];
  if (planned) return message('next-step.spot', { spot: spotName(planned), pins: pinsOf(planned) });
  const next =
    secondsLeft === null
      ? message(isLast ? 'next-step.finish' : 'next-step.next-board')
      : message('next-step.by-itself', { seconds: secondsLeft });
  return board.finding
    ? message('next-step.board-done', { callName: message(`call.${board.finding.call}`), next })
    : next;
}
