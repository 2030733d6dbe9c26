import type { Species } from './species.ts';

/** A text that is compared as words: its words, them in a row, and their letters alone. */
interface Text {
  words: string[];
  row: string;
  letters: string;
}

/** Letters and digits only, lower case, without accents: "Douglas-fir" and "douglas fir" are the same words. */
function textOf(text: string): Text {
  const words = text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replaceAll('ß', 'ss')
    .replace(/['’]/g, '')
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
  return { words, row: words.join(' '), letters: words.join('') };
}

/** Whether a name is the same words. */
const isWhole = (typed: Text, name: Text): boolean => name.row === typed.row;

/**
 * How well a name answers: 0 the same words, 1 it begins with them, 2 they are among its words, 3 they begin its words, 4 it
 * contains them.
 */
function match(typed: Text, name: Text): 0 | 1 | 2 | 3 | 4 | null {
  if (isWhole(typed, name)) return 0;
  if (name.row.startsWith(`${typed.row} `)) return 1;
  if (typed.words.every((word) => name.words.includes(word))) return 2;
  if (typed.words.every((word) => name.words.some((nameWord) => nameWord.startsWith(word)))) return 3;
  return name.letters.includes(typed.letters) ? 4 : null;
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

/** A species with each of its names in words; its own name is one more that a person may type where another is shown. */
interface Called {
  species: Species;
  shown: string;
  names: { kind: keyof typeof RANKS; text: Text }[];
}

/** Names do not change with what is typed: splitting them is nearly all of the time that a key takes. */
const calledBefore = new WeakMap<Named, WeakMap<Species, Called>>();

function calledIn(species: Species, named: Named): Called {
  const before = calledBefore.get(named) ?? new WeakMap<Species, Called>();
  calledBefore.set(named, before);
  const called = before.get(species) ?? splitNames(species, named);
  before.set(species, called);
  return called;
}

function splitNames(species: Species, named: Named): Called {
  const shown = named(species.name);
  const names: [keyof typeof RANKS, string][] = [
    ['name', shown],
    ...[...species.aliases, species.name].map((alias): ['alias', string] => ['alias', alias]),
    ['botanical', species.botanicalName ?? ''],
    ['group', named(species.group)],
  ];
  return { species, shown, names: names.map(([kind, name]) => ({ kind, text: textOf(name) })) };
}

/**
 * Species that a person may mean by what they typed: common name, alias (a sawyer's word), botanical name or group.
 * Best match first; of equal matches what is sawn most, then in alphabetical order. An empty query finds all, by name.
 *
 * @example findSpecies('linden', builtInSpecies)[0].name // 'American basswood'
 */
export function findSpecies(query: string, allSpecies: readonly Species[], named: Named = asItIs): Species[] {
  const typed = textOf(query);
  const isAll = query.trim() === '';
  if (typed.row === '' && !isAll) return [];
  return allSpecies
    .map((species) => calledIn(species, named))
    .map((called) => ({
      ...called,
      rank: isAll ? 0 : rankOf(typed, called),
      common: isAll ? 0 : commonness(called.species),
    }))
    .filter(({ rank }) => rank < Infinity)
    .sort((a, b) => a.rank - b.rank || a.common - b.common || a.shown.localeCompare(b.shown, 'en'))
    .map(({ species }) => species);
}

/** Whether this is what the trade sells under one name, and not one species: "Red oak (any)". */
const isAny = ({ name }: Species): boolean => name.endsWith('(any)');

const isSoldAs = (typed: Text, name: Text): boolean => name.row === `${typed.row} any`;

const hasName = ({ names }: Called, fits: (name: Text) => boolean): boolean =>
  names.some(({ kind, text }) => kind !== 'group' && fits(text));

/**
 * What a text can only mean, of what `findSpecies` found for it: the species of that very name; else the trade's group that
 * is sold under it, so that "red oak" is no question; else those that have it as another name; else those with a name that
 * begins so; else those with a name whose words begin so. One is a choice, several are a question, and mere letters within
 * a word mean none.
 *
 * @example speciesMeant('cherry', findSpecies('cherry', builtInSpecies)) // [Black cherry]
 */
export function speciesMeant(text: string, found: readonly Species[], named: Named = asItIs): Species[] {
  const typed = textOf(text);
  if (typed.row === '') return [];
  const ways: ((called: Called) => boolean)[] = [
    ({ names }) => names.some(({ kind, text: name }) => kind === 'name' && isWhole(typed, name)),
    (called) => hasName(called, (name) => isSoldAs(typed, name)),
    (called) => isAny(called.species) && hasName(called, (name) => isWhole(typed, name)),
    (called) => hasName(called, (name) => isWhole(typed, name)),
    (called) => hasName(called, (name) => name.row.startsWith(typed.row)),
    (called) => hasName(called, (name) => (match(typed, name) ?? 4) < 4),
  ];
  const all = found.map((species) => calledIn(species, named));
  const meant = ways.map((fits) => all.filter(fits)).find((those) => those.length > 0) ?? [];
  return meant.map(({ species }) => species);
}

/**
 * What a text of another program or hand names beyond doubt: the species of that very name, the trade's group sold under it,
 * else those that have it as another name, else those whose name ends with it: "walnut", but not "WO" or "wormy".
 *
 * @example speciesCalled('chestnut', builtInSpecies) // [American chestnut]
 */
export function speciesCalled(text: string, species: readonly Species[]): Species[] {
  const typed = textOf(text);
  if (typed.row === '') return [];
  const ends = (name: Text): boolean => isWhole(typed, name) || name.row.endsWith(` ${typed.row}`);
  const meant = speciesMeant(text, findSpecies(text, species)).map((each) => calledIn(each, asItIs));
  const whole = meant.filter((each) =>
    hasName(each, (name) => isWhole(typed, name) || isSoldAs(typed, name)),
  );
  const ended = meant.length === 1 ? meant.filter((each) => hasName(each, ends)) : meant;
  return (whole.length > 0 ? whole : ended).map(({ species: each }) => each);
}

/** How many letters may be wrong at most, in a text of at least so many letters. */
const SLIPS = [
  { letters: 6, most: 2 },
  { letters: 4, most: 1 },
];

/**
 * The species whose name is nearest to a text, by the fewest letters added, left out or changed; of equals the one sawn
 * most; null where none is near. Where nothing was found, a person is asked about it: a guess is never chosen for them.
 *
 * @example nearestSpecies('red oke', builtInSpecies).name // 'Red oak (any)'
 */
export function nearestSpecies(
  text: string,
  allSpecies: readonly Species[],
  named: Named = asItIs,
): Species | null {
  const { letters } = textOf(text);
  const most = SLIPS.find((each) => letters.length >= each.letters)?.most ?? 0;
  const near = allSpecies
    .map((species) => calledIn(species, named))
    .map((called) => ({
      species: called.species,
      slips: Math.min(
        ...called.names.map(({ text: name }) =>
          slipsBetween(letters, name.row.endsWith(' any') ? name.letters.slice(0, -3) : name.letters),
        ),
      ),
    }))
    .filter(({ slips }) => slips <= most)
    .sort((a, b) => a.slips - b.slips || commonness(a.species) - commonness(b.species));
  return near[0]?.species ?? null;
}

/** Letters to add, leave out or change to make one of the other (Levenshtein distance). */
function slipsBetween(typed: string, name: string): number {
  let row = Array.from({ length: name.length + 1 }, (_, at) => at);
  for (const [down, letter] of [...typed].entries()) {
    const next = [down + 1];
    for (let at = 0; at < name.length; at++) {
      const changed = row[at]! + (letter === name[at] ? 0 : 1);
      next.push(Math.min(changed, row[at + 1]! + 1, next[at]! + 1));
    }
    row = next;
  }
  return row[name.length]!;
}

function rankOf(typed: Text, { names }: Called): number {
  return Math.min(
    ...names.map(({ kind, text }) => {
      const quality = match(typed, text);
      return quality === null ? Infinity : RANKS[kind][quality];
    }),
  );
}
