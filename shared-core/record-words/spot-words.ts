import type { ReadBefore } from '../contract/origin.ts';
import type { Board } from '../contract/yard.ts';
import { alongBoard } from '../probing/readings/along-board.ts';
import { depthRead, isAlongUnknown, isDepthUnknown } from '../probing/readings/depth-read.ts';
import type { JudgedReading } from '../probing/readings/reading.ts';
import { message } from '../words/message.ts';
import type { Words } from '../words/words.ts';

/**
 * What a reading tells and where on the board it was: "Core, 2 ft from the left end, on a fresh crosscut". Where nobody
 * knows that, it says so: "Spot and depth unknown".
 * @param board       what it is a reading of now
 * @param readings    of its wood, this one among them
 * @param readBefore  what the board was cut from: a spot is on what it was read on, whose ends were others
 */
export function spotWords(
  reading: JudgedReading,
  board: Pick<Board, 'thicknessMm' | 'lengthMm'>,
  readings: readonly JudgedReading[],
  readBefore: readonly ReadBefore[],
  { say }: Words,
): string {
  const { face } = reading.spot;
  const { boardId } = reading;
  const before = readBefore.find((each) => each.boardId === boardId);
  const on = { ...board, lengthMm: before ? before.lengthMm : board.lengthMm };
  const along = isAlongUnknown(reading)
    ? message('spot.unknown')
    : alongBoard(reading, on, before ? readings.filter((each) => each.boardId === boardId) : readings);
  const parts = [
    ...(isDepthUnknown(reading)
      ? [say('spot.all-unknown')]
      : [say(`board.${depthRead(reading, board.thicknessMm)}`), along && say(along)]),
    face !== 'face' && say(`board.spot-${face}`),
    before && say('spot.on-board', { boardCode: before.code }),
  ];
  return parts.filter(Boolean).join(', ');
}
