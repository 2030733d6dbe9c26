import { resistanceCurves } from '../wood/moisture/resistance-curves.ts';
import type { EndUse } from '../wood/species/end-use.ts';
import type { Species } from '../wood/species/species.ts';
import { message } from '../words/message.ts';
import { methodNumbers } from './method-numbers.ts';
import { BETWEEN_NAMES, type MethodCell, type MethodPart, partOf } from './method-part.ts';
import { FROM_MEMORY, figureOf, sentencesOf } from './source-pieces.ts';

/** Where the figures of each species come from. */
export const speciesSources = (species: readonly Species[]): MethodPart =>
  partOf('species', message('methods.species.title'), [message('methods.species.what')], null, {
    caption: message('methods.species.caption'),
    heads: [message('methods.species.species'), message('methods.species.source-head')],
    rows: species.filter(({ source }) => source !== '').map(({ name, source }) => [name, source]),
  });

/** What was not checked against a page: generated from the marks of what is in use. */
export const fromMemory = (species: readonly Species[], endUses: readonly EndUse[]): MethodPart =>
  partOf('memory', message('methods.memory.title'), [message('methods.memory.what')], null, {
    caption: message('methods.memory.caption'),
    heads: [message('methods.memory.figure'), message('methods.memory.of')],
    rows: [
      ...memorySentences(species),
      [
        message('methods.memory.curves'),
        namesOf([...resistanceCurves.values()].filter(({ source }) => source.includes('from memory'))),
      ],
      [
        message('methods.memory.uses'),
        namesOf(endUses.filter(({ source }) => source.includes('from memory'))),
      ],
    ],
  });

const namesOf = (of: readonly { name: string }[]): string => of.map(({ name }) => name).join(BETWEEN_NAMES);

/** Each sentence of a source that is marked, with the species that have it. */
function memorySentences(species: readonly Species[]): MethodCell[][] {
  const named = new Map<string, string[]>();
  for (const { name, source } of species) {
    for (const sentence of sentencesOf(source)) {
      if (!sentence.includes(FROM_MEMORY)) continue;
      const figure = figureOf(sentence);
      named.set(figure, [...(named.get(figure) ?? []), name]);
    }
  }
  return [...named].map(([figure, names]) => [figure, names.join(BETWEEN_NAMES)]);
}

/** Every prior and limit, as the program has it. */
export const numbersUsed = (): MethodPart =>
  partOf('numbers', message('methods.numbers.title'), [message('methods.numbers.what')], null, {
    caption: message('methods.numbers.caption'),
    heads: [message('methods.numbers.number'), message('methods.numbers.value')],
    isOfUnlike: true,
    rows: methodNumbers.map(({ means, value }) => [means, value]),
  });
