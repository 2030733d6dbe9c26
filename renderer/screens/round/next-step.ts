import type { RoundBoard } from '../../../shared-core/contract/round.ts';
import { callMarks } from '../../../shared-core/labels/call-mark.ts';
import { type PlannedSpot, planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { type DisplayUnits, shortLengthText } from '../../../shared-core/units/length.ts';
import { inUnits } from '../../../shared-core/units/said.ts';

/** "Core, 60 cm from the left end", in the person's units. */
export const spotWords = ({ label }: PlannedSpot, units: DisplayUnits): string => inUnits(label, units);

/** How deep the pins go, in words. */
export function depthWords({ spot }: PlannedSpot, units: DisplayUnits): string {
  const where = spot.depth === 'core' ? 'mid-thickness' : 'just under the face';
  return spot.depthMm === null
    ? `pins to ${where}`
    : `pins to ${shortLengthText(spot.depthMm, units)}, ${where}`;
}

/** What to do next on this board, in one sentence to be read from two metres away. */
export function nextStep(
  board: RoundBoard,
  spotIndex: number | null,
  isLastBoard: boolean,
  units: DisplayUnits,
): string {
  const planned = spotIndex === null ? undefined : planSpots(board).plan[spotIndex];
  if (planned) return `${spotWords(planned, units)}: ${depthWords(planned, units)}.`;
  const then = isLastBoard ? 'Enter finishes the round.' : 'Enter goes to the next board.';
  const { finding } = board;
  return finding ? `All spots read: ${callMarks[finding.call].word.toLowerCase()}. ${then}` : then;
}
