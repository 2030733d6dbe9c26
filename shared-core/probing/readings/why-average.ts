import { mean } from '../../wood/maths/mean.ts';
import { isShownAbove, shownPoints } from '../../wood/moisture/shown-points.ts';
import { type Message, message } from '../../words/message.ts';

/** An average nearer to the mean of its readings than this needs no sentence, points of MC. Common practice, no source. */
const LEAST_APART_POINTS = 0.2;

/**
 * Why an average is at an end of its readings, or beyond it, as both are shown. It is the average of the whole thickness;
 * the pins read wood that is wetter or drier than that by the profile (`profile-posterior.ts`).
 *
 * @param mcPcts         of the readings that it is made of, % MC, at least one
 * @param differencePct  core less shell by the profile, points of MC
 * @returns              null where it is between its readings, or close to their mean
 */
export function whyAverage(
  averagePct: number,
  mcPcts: readonly number[],
  differencePct: number,
): Message | null {
  const meanPct = mean(mcPcts);
  if (Math.abs(shownPoints(averagePct, meanPct)) < LEAST_APART_POINTS) return null;
  const isLow = averagePct < meanPct;
  const endPct = isLow ? Math.min(...mcPcts) : Math.max(...mcPcts);
  const isAtEnd = shownPoints(averagePct, endPct) === 0;
  const isBeyond = isLow ? isShownAbove(endPct, averagePct) : isShownAbove(averagePct, endPct);
  if (!isAtEnd && !isBeyond) return null;
  return message('board.why-average', {
    where: isAtEnd ? (isLow ? 'lowest' : 'highest') : isLow ? 'below' : 'above',
    // Below what was read in a board that dries: the pins were in wetter wood than its faces.
    part: isLow === differencePct > 0 ? 'faces' : 'core',
    how: isLow ? 'drier' : 'wetter',
  });
}
