import type { Board } from '../contract/yard.ts';
import { alongBoard } from '../probing/readings/along-board.ts';
import { depthRead } from '../probing/readings/depth-read.ts';
import type { JudgedReading } from '../probing/readings/reading.ts';
import type { Words } from '../words/words.ts';

/**
 * What a reading tells and where on the board it was: "Core, 2 ft from the left end, on a fresh crosscut".
 * @param readings  of the board, this one among them
 */
export function spotWords(
  reading: JudgedReading,
  board: Pick<Board, 'thicknessMm' | 'lengthMm'>,
  readings: readonly JudgedReading[],
  { say }: Words,
): string {
  const { face } = reading.spot;
  const along = alongBoard(reading, board, readings);
  const parts = [
    say(`board.${depthRead(reading, board.thicknessMm)}`),
    along && say(along),
    face !== 'face' && say(`board.spot-${face}`),
  ];
  return parts.filter(Boolean).join(', ');
}
