import type { RoundFinding } from '../../../shared-core/contract/round.ts';
import type { Assessment } from '../../../shared-core/probing/calls/assessment.ts';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';

/** What lists show of an assessment; null where nothing was read. */
export function findingOf(
  roundId: number,
  board: { thicknessMm: number; lengthMm: number | null },
  { readings, estimate, call, reasons }: Assessment,
): RoundFinding | null {
  const at = readings.at(-1)?.takenAt;
  if (at === undefined) return null;
  const { plan } = planSpots(board);
  const spotPcts = plan.map(
    (_, spot) => readings.findLast((each) => each.counts && each.spotIndex === spot)?.corrected.mcPct ?? null,
  );
  return {
    roundId,
    at,
    averagePct: estimate?.averagePct ?? null,
    lowPct: estimate?.likelyInterval.minPct ?? null,
    highPct: estimate?.likelyInterval.maxPct ?? null,
    shellPct: estimate?.shellPct ?? null,
    corePct: estimate?.corePct ?? null,
    call,
    reason: reasons[0],
    openSpot: openSpot(plan.length, readings),
    filledSpots: spotPcts.filter((pct) => pct !== null).length,
    spotPcts,
  };
}
