import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Spot } from '../../../shared-core/probing/readings/reading.ts';

/** What is left, of the MC that the last round found, when the simulated meter goes over the boards again. */
const LEFT_SINCE_LAST_ROUND = 0.88;

/**
 * What the simulated meter shows at a spot of a board, %: somewhat drier than the board's latest finding, or, for a
 * board never probed, somewhere between 11 and 19 with a wetter core. The same for the same spot every time. Invented values,
 * for trying the app out without a meter.
 */
export function simulatedTruth(board: BoardRow, spot: Spot): number {
  const scatter = (fraction(`${board.code} ${spot.depth} ${spot.fromEndMm}`) - 0.5) * 0.8;
  const { shellPct, corePct } = board.latest ?? { shellPct: null, corePct: null };
  const shell = shellPct === null ? 11 + 6 * fraction(board.code) : shellPct * LEFT_SINCE_LAST_ROUND;
  const core =
    corePct === null ? shell + 0.5 + 1.5 * fraction(`${board.code} core`) : corePct * LEFT_SINCE_LAST_ROUND;
  // Of a parabola, the average lies two thirds of the way from its ends to its middle.
  const truth = { shell, average: shell + (2 / 3) * (core - shell), core };
  return Math.max(5, truth[spot.depth] + scatter);
}

/** A number from 0 to 1 that depends on the text alone (FNV-1a, 32 bit). */
function fraction(text: string): number {
  let hash = 0x811c9dc5;
  for (const letter of text) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  return (hash >>> 0) / 2 ** 32;
}
