import { type Message, message } from '../../words/message.ts';
import { correctedByEachIn } from '../readings/corrected-reading.ts';
import { type CountedReading, estimateBoard } from '../readings/estimate.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import type { KnownOfBoard } from '../readings/profile-posterior.ts';
import type { JudgedReading } from '../readings/reading.ts';
import type { Call } from './assessment.ts';
import { decide } from './decide.ts';

type JudgedAndCounted = CountedReading & { reading: JudgedReading };

/**
 * Below freezing the published corrections for temperature differ by points. Where by one a board is ready and by another it
 * is not, a milder day tells which.
 *
 * @param called   by the corrections in use
 * @param counted  what that call rests on
 * @returns why it is to be probed again; null where the cold does not turn the call
 */
export function turnedByCold(
  called: Call | null,
  counted: readonly JudgedAndCounted[],
  evidence: BoardEvidence,
  known: KnownOfBoard,
): Message | null {
  if (called === null || called === 'probe-again' || !counted.some(isCold)) return null;
  const byEach = counted.map(({ reading }) => correctedByEachIn(reading, evidence));
  const boards = byEach[0]!.map(
    (_, at) =>
      estimateBoard(
        counted.map((each, index) => ({ ...each, mcPct: byEach[index]![at]! })),
        known,
      )!,
  );
  const isReady = boards.map((board) => decide(board, evidence).call === 'ready');
  if (isReady.every((each) => each === (called === 'ready'))) return null;
  const averages = boards.map(({ estimate }) => estimate.averagePct);
  return message('call.cold', { differencePoints: Math.max(...averages) - Math.min(...averages) });
}

const isCold = ({ reading }: JudgedAndCounted): boolean =>
  reading.corrected.warnings.includes('below-freezing');
