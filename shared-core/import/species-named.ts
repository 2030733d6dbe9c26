import { speciesCalled } from '../wood/species/find-species.ts';
import type { Species } from '../wood/species/species.ts';

/** The ID of the one species that a name can mean; "Maple, hard" is hard maple. Null where it means none, or several, or is an abbreviation. */
export function speciesNamed(name: string, species: readonly Species[]): string | null {
  const turned = name.replace(/^([^,]+),\s*([^,]+)$/, '$2 $1');
  for (const written of new Set([name, turned])) {
    const [meant, ...others] = speciesCalled(written, species);
    if (meant && others.length === 0) return meant.id;
  }
  return null;
}
