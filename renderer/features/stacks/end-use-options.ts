import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import type { Say } from '../../../shared-core/words/words.ts';

/** Uses to choose from, each with its target, in the order of what they are called here. */
export function endUseOptions(endUses: readonly EndUse[], say: Say): { value: string; label: string }[] {
  return endUses
    .map(({ id, name, minPct, maxPct }) => ({
      value: id,
      label: say('stacks.use-and-target', { endUseName: name, targetRange: { minPct, maxPct } }),
    }))
    .sort((a, b) => a.label.localeCompare(b.label));
}
