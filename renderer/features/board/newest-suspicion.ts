import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';

/** The first suspicion by one of these rules in the board's newest round. */
export const newestSuspicion = (
  { latest }: BoardRow,
  readings: readonly JudgedReading[],
  rules: readonly Suspicion['rule'][],
): Suspicion | undefined =>
  readings
    .filter(({ roundId }) => roundId === latest?.roundId)
    .flatMap(({ suspicions }) => suspicions)
    .find(({ rule }) => rules.includes(rule));
