import { type Species, speciesSchema } from './species.ts';

/** What a person says of a new wood; the rest comes from the wood that it is derived from. */
export type SpeciesChanges = { name: string } & Partial<Omit<Species, 'id' | 'name'>>;

/** An id for a new wood's name that no wood has yet: `elm-wych`, or `elm-wych-2` where that is taken. */
export function newSpeciesId(name: string, taken: ReadonlySet<string>): string {
  const plain = name
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 50)
    .replace(/^-+|-+$/g, '');
  // A name in letters other than these still gets an id.
  const base = plain === '' ? 'wood' : plain;
  let id = base;
  for (let count = 2; taken.has(id); count++) id = `${base}-${count}`;
  return id;
}

/**
 * A new wood from one that is near to it: figures that the person does not give are taken over, and the note says from
 * which wood, so that nobody takes them for published ones. Aliases and the botanical name belong to the other wood
 * and are not taken over.
 *
 * @param taken   ids in use
 * @throws        ZodError where the result is not a wood (a figure outside its range, no name)
 */
export function deriveSpecies(from: Species, changes: SpeciesChanges, taken: ReadonlySet<string>): Species {
  const borrowed = `Derived from ${from.name}: what is not given otherwise is that wood's figure.`;
  return speciesSchema.parse({
    ...from,
    aliases: [],
    botanicalName: null,
    ...changes,
    id: newSpeciesId(changes.name, taken),
    note: changes.note ? `${changes.note} ${borrowed}` : borrowed,
  });
}
