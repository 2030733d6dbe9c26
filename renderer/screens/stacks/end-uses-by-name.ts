import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';

/** Uses to choose from, each with its range. */
export function usesByName(endUses: readonly EndUse[]): { value: string; label: string }[] {
  return endUses.map((endUse) => ({
    value: endUse.id,
    label: `${endUse.name} (${endUse.minPct} to ${endUse.maxPct} %)`,
  }));
}
