import type { Species } from './species.ts';

/** Letters and digits only, lower case, without accents: "Douglas-fir" and "douglas fir" are the same words. */
function words(text: string): string[] {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/['’]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** How well a name answers: 0 the same words, 1 they are among its words, 2 they begin its words, 3 it contains them. */
function match(typed: string[], name: string): 0 | 1 | 2 | 3 | null {
  const nameWords = words(name);
  if (nameWords.join(' ') === typed.join(' ')) return 0;
  if (typed.every((word) => nameWords.includes(word))) return 1;
  if (typed.every((word) => nameWords.some((nameWord) => nameWord.startsWith(word)))) return 2;
  return nameWords.join('').includes(typed.join('')) ? 3 : null;
}

/** Rank of a match among all: the species' name goes before a sawyer's word for it, and mere letters come last. */
const RANKS = {
  name: [0, 1, 2, 8],
  alias: [3, 4, 5, 9],
  botanical: [1, 4, 6, 10],
  group: [6, 7, 7, 11],
} as const;

/**
 * Species that a person may mean by what they typed: common name, alias (a sawyer's word), botanical name or group.
 * Best match first, equal matches in alphabetical order. An empty query finds all.
 *
 * @example findSpecies('linden', builtInSpecies)[0].name // 'American basswood'
 */
export function findSpecies(query: string, allSpecies: readonly Species[]): Species[] {
  const typed = words(query);
  const ranked = allSpecies.map((species) => {
    const names: [keyof typeof RANKS, string][] = [
      ['name', species.name],
      ...species.aliases.map((alias): ['alias', string] => ['alias', alias]),
      ['botanical', species.botanicalName ?? ''],
      ['group', species.group],
    ];
    const ranks = names.map(([kind, name]) => {
      const quality = match(typed, name);
      return quality === null ? Infinity : RANKS[kind][quality];
    });
    return { species, rank: typed.length === 0 ? 0 : Math.min(...ranks) };
  });
  return ranked
    .filter(({ rank }) => rank < Infinity)
    .sort((a, b) => a.rank - b.rank || a.species.name.localeCompare(b.species.name, 'en'))
    .map(({ species }) => species);
}
