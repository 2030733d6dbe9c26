import type { RoundFinding } from '../../../shared-core/contract/round.ts';
import { isAnyAboveScale } from '../../../shared-core/probing/calls/above-scale.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import type { Found } from '../../../shared-core/probing/calls/call-here.ts';
import { areDepthsUnknown } from '../../../shared-core/probing/readings/depth-read.ts';
import type { AverageIs, Estimate } from '../../../shared-core/probing/readings/estimate.ts';
import { isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import { openSpot, readingsBySpot } from '../../../shared-core/probing/readings/open-spot.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import type { BoardToPlan } from '../../../shared-core/probing/readings/spots.ts';

/** What lists show of an assessment; null where nothing was read but slips. */
export function findingOf(
  roundId: number,
  board: BoardToPlan,
  { readings, estimate, reliable, call, reasons, spotsRead }: Assessment,
): RoundFinding | null {
  const at = readings.findLast(({ excluded }) => !isSlip(excluded))?.takenAt;
  if (at === undefined) return null;
  const spotPcts = readingsBySpot(board, readings).map((reading) => reading?.corrected.mcPct ?? null);
  const shown = reliable ?? estimate;
  const averageIs = averageIsOf(shown, reliable, readings);
  const isShown = shown !== null && averageIs !== 'unknown';
  const isUsed = ({ counts, excluded }: JudgedReading) => (reliable === null ? excluded === null : counts);
  const isLikely = isShown && averageIs !== 'above';
  return {
    roundId,
    at,
    averagePct: isShown ? shown.averagePct : null,
    averageIs,
    ...(averageIs === 'read' && reliable?.whyAverage && { whyAverage: reliable.whyAverage }),
    lowPct: isLikely && reliable ? reliable.likelyInterval.minPct : null,
    highPct: isLikely && reliable ? reliable.likelyInterval.maxPct : null,
    shellPct: shown?.shellPct ?? null,
    corePct: shown?.corePct ?? null,
    ...(areDepthsUnknown(readings.filter(isUsed)) && { isDepthUnknown: true as const }),
    isQuestionable: shown !== null && reliable === null,
    call,
    spotsRead,
    reason: reasons[0],
    openSpot: openSpot(board, readings),
    filledSpots: spotPcts.filter((pct) => pct !== null).length,
    spotPcts,
  };
}

function averageIsOf(
  shown: Estimate | null,
  reliable: Estimate | null,
  readings: readonly JudgedReading[],
): AverageIs {
  // A shell that is questionable itself tells nothing of the inside.
  if (shown === null || (reliable === null && shown.averageIs === 'estimated')) return 'unknown';
  return shown.averageIs !== 'unknown' && isAnyAboveScale(readings) ? 'above' : shown.averageIs;
}

/** What the readings of a round amount to, before the place has its say; null where nothing was read but slips. */
export function foundOf({
  readings,
  estimate,
  reliable,
  call,
  reasons,
  spotsRead,
}: Assessment): Found | null {
  const at = readings.findLast(({ excluded }) => !isSlip(excluded))?.takenAt;
  if (at === undefined) return null;
  const shown = reliable ?? estimate;
  return {
    call,
    reasons,
    at,
    averagePct: shown?.averagePct ?? null,
    averageIs: averageIsOf(shown, reliable, readings),
    corePct: shown?.corePct ?? null,
    isQuestionable: shown !== null && reliable === null,
    spotsRead,
  };
}
