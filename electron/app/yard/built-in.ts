import { createHash } from 'node:crypto';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import type { Yard } from '../../store/yard.ts';

/** Of the built-in entries that a yard was last given. */
const KEY = 'built-in-sum';

/**
 * Gives a yard the built-in species and uses of this program.
 * @returns how many of them were not as the same entries were given before: the disk changed them
 */
export function bringBuiltInUpToDate(yard: Yard): number {
  const sum = createHash('sha256')
    .update(JSON.stringify([builtInSpecies, builtInEndUses]))
    .digest('hex');
  const isKnown = yard.settings.get(KEY) === sum;
  const changed = yard.species.bringUpToDate(builtInSpecies) + yard.endUses.bringUpToDate(builtInEndUses);
  if (!isKnown) yard.settings.put(KEY, sum);
  return isKnown ? changed : 0;
}
