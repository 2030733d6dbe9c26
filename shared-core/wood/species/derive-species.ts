import { type Species, speciesSchema } from './species.ts';

/** What a person gives of a new species; the rest comes from the one that it is derived from. */
export type SpeciesChanges = Pick<Species, 'name' | 'source'> & Partial<Omit<Species, 'id'>>;

/** An id for a new name that is not taken yet: `elm-wych`, or `elm-wych-2` where that is taken. */
export function newSpeciesId(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 50)
    .replace(/^-+|-+$/g, '');
  // A name in letters other than these still gets an id.
  const base = plain === '' ? 'species' : plain;
  let id = base;
  for (let count = 2; taken.has(id); count++) id = `${base}-${count}`;
  return id;
}

/**
 * A new species with the figures of a similar one wherever the person gives none. Aliases, botanical name and note
 * belong to the other species and are not copied. Nor is its source: `changes.source` tells where the figures come
 * from, so that nobody takes them for published ones.
 *
 * @param taken   ids in use
 * @throws        ZodError where the result is not a species (a figure outside its range, no name)
 */
export function deriveSpecies(from: Species, changes: SpeciesChanges, taken: ReadonlySet<string>): Species {
  return speciesSchema.parse({
    ...from,
    aliases: [],
    botanicalName: null,
    note: '',
    ...changes,
    id: newSpeciesId(changes.name, taken),
  });
}
