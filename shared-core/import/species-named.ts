import { answerFor, type ImportChoices, nameKey } from '../contract/import.ts';
import { speciesCalled } from '../wood/species/find-species.ts';
import type { Species } from '../wood/species/species.ts';
import type { Rows } from './rows.ts';

/** The ID of the one species that a name can mean; "Maple, hard" is hard maple. Null where it means none, or several, or is an abbreviation. */
export function speciesNamed(name: string, species: readonly Species[]): string | null {
  const turned = name.replace(/^([^,]+),\s*([^,]+)$/, '$2 $1');
  for (const written of new Set([name, turned])) {
    const [meant, ...others] = speciesCalled(written, species);
    if (meant && others.length === 0) return meant.id;
  }
  return null;
}

/** The name of a species by its ID; the ID where it has none. */
export const nameOfSpecies = (speciesId: string, species: readonly Species[]): string =>
  species.find(({ id }) => id === speciesId)?.name ?? speciesId;

/** A name of a species in a table, and what it was taken for. */
export interface SpeciesName {
  name: string;
  rows: number;
  /** Null where nobody knows. */
  speciesId: string | null;
}

/**
 * Finds the ID of the species that a text of a table means, by a person's answer or by its names. Whatever is not simply
 * the species' own name is listed for the person.
 */
export function speciesReader(rows: Rows, { speciesOfNames }: ImportChoices, species: readonly Species[]) {
  const found = new Map<string, SpeciesName>();
  const names = new Map(species.map(({ id, name }) => [id, nameKey(name)]));
  return (text: string): string | null => {
    const key = nameKey(text);
    const known = found.get(key);
    if (known) {
      known.rows++;
      return known.speciesId;
    }
    const byItself = speciesNamed(text, species);
    const answer = answerFor(speciesOfNames, text);
    // A person who took a species out has not chosen another yet.
    const speciesId = (answer ?? byItself) || null;
    const name = { name: text, rows: 1, speciesId };
    found.set(key, name);
    if (answer !== undefined || byItself === null || names.get(byItself) !== key)
      rows.nameSpecies(name, byItself === null);
    return speciesId;
  };
}
