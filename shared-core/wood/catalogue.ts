import { z } from 'zod';
import curveSeeds from '../../seeds/resistance-curves.json' with { type: 'json' };
import useSeeds from '../../seeds/uses.json' with { type: 'json' };
import woodSeeds from '../../seeds/woods.json' with { type: 'json' };
import { type Use, useSchema } from '../probing/assessment.ts';
import { type ResistanceCurve, resistanceCurveSchema } from './resistance.ts';
import { type Wood, woodSchema } from './wood.ts';

/** The resistance curves by id. */
export const resistanceCurves: ReadonlyMap<string, ResistanceCurve> = new Map(
  Object.entries(z.record(z.string(), resistanceCurveSchema).parse(curveSeeds)),
);

/** The woods that come with the app. A user's own stand beside them in the store. */
export const builtInWoods: readonly Wood[] = z.array(woodSchema).parse(woodSeeds);

/** The uses that come with the app, each with its source in its note. */
export const builtInUses: readonly Use[] = z.array(useSchema).parse(useSeeds);

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

/** Place of a match among all: the wood's own name goes before a sawyer's word for it, and mere letters come last. */
const RANKS = {
  name: [0, 1, 2, 8],
  alias: [3, 4, 5, 9],
  botanical: [1, 4, 6, 10],
  group: [6, 7, 7, 11],
} as const;

/**
 * Woods that a person may mean by what they typed: common name, alias (a sawyer's word), botanical name or yard
 * group. Best first; woods that answer equally well in alphabetical order. An empty query finds all.
 *
 * @example findWoods('linden', builtInWoods)[0].name // 'American basswood'
 */
export function findWoods(query: string, woods: readonly Wood[]): Wood[] {
  const typed = words(query);
  const ranked = woods.map((wood) => {
    const names: [keyof typeof RANKS, string][] = [
      ['name', wood.name],
      ...wood.aliases.map((alias): ['alias', string] => ['alias', alias]),
      ['botanical', wood.botanicalName ?? ''],
      ['group', wood.group],
    ];
    const ranks = names.map(([kind, name]) => {
      const quality = match(typed, name);
      return quality === null ? Infinity : RANKS[kind][quality];
    });
    return { wood, rank: typed.length === 0 ? 0 : Math.min(...ranks) };
  });
  return ranked
    .filter(({ rank }) => rank < Infinity)
    .sort((a, b) => a.rank - b.rank || a.wood.name.localeCompare(b.wood.name, 'en'))
    .map(({ wood }) => wood);
}
