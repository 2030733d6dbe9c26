import type { Use } from '../../../shared-core/probing/assessment.ts';

/** Uses to choose from, each with its range. */
export function usesByName(uses: readonly Use[]): { value: string; label: string }[] {
  return uses.map((use) => ({ value: use.id, label: `${use.name} (${use.minPct} to ${use.maxPct} %)` }));
}
