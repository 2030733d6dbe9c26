import type { Species } from './species.ts';

/** Letters and digits only, lower case, without accents: "Douglas-fir" and "douglas fir" are the same words. */
function words(text: string): string[] {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replace(/['’]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/**
 * How well a name answers: 0 the same words, 1 it begins with them, 2 they are among its words, 3 they begin its words, 4 it
 * contains them.
 */
function match(typed: string[], name: string): 0 | 1 | 2 | 3 | 4 | null {
  const nameWords = words(name);
  if (nameWords.join(' ') === typed.join(' ')) return 0;
  if (nameWords.slice(0, typed.length).join(' ') === typed.join(' ')) return 1;
  if (typed.every((word) => nameWords.includes(word))) return 2;
  if (typed.every((word) => nameWords.some((nameWord) => nameWord.startsWith(word)))) return 3;
  return nameWords.join('').includes(typed.join('')) ? 4 : null;
}

/** Rank of a match among all: the species' name goes before a sawyer's word for it, and mere letters come last. */
const RANKS = {
  name: [0, 1, 2, 3, 9],
  alias: [4, 5, 5, 6, 10],
  botanical: [1, 5, 5, 7, 11],
  group: [7, 8, 8, 8, 12],
} as const;

/** What is sawn and sold most, most first; of equal matches these come before others. Common practice, no source. */
const COMMON = [
  'oak-red-commercial',
  'oak-white-commercial',
  'oak-northern-red',
  'oak-white',
  'walnut-black',
  'cherry-black',
  'maple-hard-any',
  'maple-soft-any',
  'maple-sugar',
  'maple-red',
  'ash-any',
  'ash-white',
  'yellow-poplar',
  'pine-eastern-white',
  'pine-southern-any',
  'pine-loblolly',
  'douglas-fir-any',
  'douglas-fir-coast',
  'birch-any',
  'birch-yellow',
  'hickory-any',
  'hickory-shagbark',
  'hickory-pecan',
  'beech-american',
  'basswood-american',
  'redcedar-eastern',
  'redcedar-western',
  'elm-american',
  'spruce-sitka',
  'hemlock-eastern',
  'fir-white',
  'locust-black',
  'aspen-quaking',
  'cottonwood-eastern',
];

const commonness = ({ id }: Species): number => {
  const at = COMMON.indexOf(id);
  return at < 0 ? COMMON.length : at;
};

/** The name of a species as it is shown, in the language of the window. */
type Named = (name: string) => string;
const asItIs: Named = (name) => name;

/** A species by its shown name; its own is one more that a person may type. */
const shownAs = (species: Species, named: Named): Species => ({
  ...species,
  name: named(species.name),
  group: named(species.group),
  aliases: [...species.aliases, species.name],
});

/**
 * Species that a person may mean by what they typed: common name, alias (a sawyer's word), botanical name or group.
 * Best match first; of equal matches what is sawn most, then in alphabetical order. An empty query finds all, by name.
 *
 * @example findSpecies('linden', builtInSpecies)[0].name // 'American basswood'
 */
export function findSpecies(query: string, allSpecies: readonly Species[], named: Named = asItIs): Species[] {
  const typed = words(query);
  const isAll = query.trim() === '';
  if (typed.length === 0 && !isAll) return [];
  return allSpecies
    .map((species) => ({ species, shown: shownAs(species, named) }))
    .map(({ species, shown }) => ({
      species,
      name: shown.name,
      rank: isAll ? 0 : rankOf(typed, shown),
      common: isAll ? 0 : commonness(species),
    }))
    .filter(({ rank }) => rank < Infinity)
    .sort((a, b) => a.rank - b.rank || a.common - b.common || a.name.localeCompare(b.name, 'en'))
    .map(({ species }) => species);
}

/** Whether this is what the trade sells under one name, and not one species: "Red oak (any)". */
const isAny = ({ name }: Species): boolean => name.endsWith('(any)');

const isSoldAs = (typed: readonly string[], name: string): boolean => match([...typed, 'any'], name) === 0;

const namesOf = ({ name, aliases, botanicalName }: Species): string[] => [
  name,
  ...aliases,
  botanicalName ?? '',
];

/**
 * What a text can only mean, of what `findSpecies` found for it: the species of that very name; else the trade's group that
 * is sold under it, so that "red oak" is no question; else those that have it as another name; else those with a name that
 * begins so; else those with a name whose words begin so. One is a choice, several are a question, and mere letters within
 * a word mean none.
 *
 * @example speciesMeant('cherry', findSpecies('cherry', builtInSpecies)) // [Black cherry]
 */
export function speciesMeant(text: string, found: readonly Species[], named: Named = asItIs): Species[] {
  const typed = words(text);
  const begins = (name: string): boolean => words(name).join(' ').startsWith(typed.join(' '));
  const hasName = (species: Species, fits: (name: string) => boolean): boolean =>
    namesOf(shownAs(species, named)).some(fits);
  const isWhole = (name: string): boolean => match(typed, name) === 0;
  const ways: ((species: Species) => boolean)[] = [
    ({ name }) => isWhole(named(name)),
    ({ name }) => isSoldAs(typed, name),
    (species) => isAny(species) && hasName(species, isWhole),
    (species) => hasName(species, isWhole),
    (species) => hasName(species, begins),
    (species) => hasName(species, (name) => (match(typed, name) ?? 4) < 4),
  ];
  if (typed.length === 0) return [];
  return ways.map((fits) => found.filter(fits)).find((meant) => meant.length > 0) ?? [];
}

/**
 * What a text of another program or hand names beyond doubt: the species of that very name, the trade's group sold under it,
 * else those that have it as another name, else those whose name ends with it: "walnut", but not "WO" or "wormy".
 *
 * @example speciesCalled('chestnut', builtInSpecies) // [American chestnut]
 */
export function speciesCalled(text: string, species: readonly Species[]): Species[] {
  const typed = words(text);
  if (typed.length === 0) return [];
  const isWhole = (name: string): boolean => match(typed, name) === 0;
  const ends = (name: string): boolean => words(name).slice(-typed.length).join(' ') === typed.join(' ');
  const meant = speciesMeant(text, findSpecies(text, species));
  const whole = meant.filter((each) => namesOf(each).some((name) => isWhole(name) || isSoldAs(typed, name)));
  return whole.length > 0
    ? whole
    : meant.length === 1
      ? meant.filter((each) => namesOf(each).some(ends))
      : meant;
}

function rankOf(typed: string[], species: Species): number {
  const names: [keyof typeof RANKS, string][] = [
    ['name', species.name],
    ...species.aliases.map((alias): ['alias', string] => ['alias', alias]),
    ['botanical', species.botanicalName ?? ''],
    ['group', species.group],
  ];
  return Math.min(
    ...names.map(([kind, name]) => {
      const quality = match(typed, name);
      return quality === null ? Infinity : RANKS[kind][quality];
    }),
  );
}
