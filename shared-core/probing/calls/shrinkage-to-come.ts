import { sizeChanges } from '../../wood/movement/size-changes.ts';
import { type Message, message } from '../../words/message.ts';
import type { BoardEvidence } from '../readings/evidence.ts';
import { targetOfUsePct } from './target-of-end-use.ts';

/** Nearer to its target than this nobody sees a board move, % MC. Common practice, no source. */
const LEAST_PCT = 0.5;
/** Nor is less than half a sixteenth of an inch seen across it, mm. */
const LEAST_MM = 0.8;

/**
 * How far a board above the middle of its target will still shrink across its width; a flat-sawn one where nobody knows
 * how it was sawn, which shrinks most. Null where it will not, or the species' shrinkage is not known.
 */
export function shrinkageToCome(
  averagePct: number,
  { board, species, endUse }: Pick<BoardEvidence, 'board' | 'species' | 'endUse'>,
): Message | null {
  const dryPct = targetOfUsePct(endUse);
  if (averagePct < dryPct + LEAST_PCT) return null;
  const { thicknessMm, widthMm = null, sawing = 'unknown' } = board;
  const sides = {
    thicknessMm,
    widthMm: widthMm ?? 100,
    sawing: sawing === 'unknown' ? 'flat' : sawing,
  } as const;
  const width = sizeChanges(sides, species, averagePct, dryPct).find(({ side }) => side === 'width')!;
  const changeMm = width.byRouteMm.shrinkage ?? width.byRouteMm.coefficient;
  if (changeMm === null) return null;
  if (widthMm !== null && -changeMm < LEAST_MM) return null;
  return widthMm === null
    ? message('call.will-shrink-share', { shrinkPct: -changeMm, dryPct })
    : message('call.will-shrink', { shrinkMm: -changeMm, dryPct });
}
