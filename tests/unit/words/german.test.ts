/** Every German sentence against its English one. What they mean, a person compares. */
import { readdirSync } from 'node:fs';
import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { describe, expect, test } from 'vitest';
import { hasEnglish } from './english-left.ts';
import {
  withDecimalPoint,
  withForeignMarks,
  withLooseUnit,
  withoutUmlauts,
  withStraySpace,
} from './german-slips.ts';

const folder = (language: 'en' | 'de') => new URL(`../../../shared-core/words/${language}/`, import.meta.url);
const files = readdirSync(folder('de')).filter(
  (file) => !['index.ts', 'names.ts', 'built-in-notes.ts', 'sources.ts'].includes(file),
);

interface Pair {
  code: string;
  english: string;
  german: string;
}
const pairs: Pair[] = [];
for (const file of files) {
  const of = async (language: 'en' | 'de') =>
    Object.assign({}, ...Object.values(await import(new URL(file, folder(language)).href))) as Record<
      string,
      string
    >;
  const [english, german] = [await of('en'), await of('de')];
  for (const code of Object.keys(english))
    pairs.push({ code, english: english[code]!, german: german[code]! });
}

interface Asked {
  /** Facts shown, or counted by. */
  facts: Set<string>;
  /** The words that choose, with their branches. */
  choices: Map<string, string>;
  /** The branches of each plural. */
  plurals: string[][];
  /** What is written, without facts. */
  text: string;
}

function asked(icu: string): Asked {
  const found: Asked = { facts: new Set(), choices: new Map(), plurals: [], text: '' };
  const walk = (elements: MessageFormatElement[]): void => {
    for (const element of elements) {
      if (element.type === TYPE.literal) found.text += element.value;
      else if (element.type === TYPE.argument || element.type === TYPE.plural) found.facts.add(element.value);
      // So that what stands before and behind a fact is never taken for one text.
      if (element.type !== TYPE.literal) found.text += '\u0001';
      if (element.type === TYPE.plural) found.plurals.push(Object.keys(element.options));
      if (element.type === TYPE.select)
        found.choices.set(element.value, Object.keys(element.options).sort().join());
      if (element.type === TYPE.plural || element.type === TYPE.select) {
        for (const option of Object.values(element.options)) {
          walk(option.value);
          found.text += '\u0001';
        }
      }
    }
  };
  walk(parse(icu, { ignoreTag: true }));
  return found;
}

/** Those pairs of which something is wrong, to be read in a failed test. */
const wrong = (isWrong: (pair: Pair, english: Asked, german: Asked) => boolean): string[] =>
  pairs
    .filter((pair) => isWrong(pair, asked(pair.english), asked(pair.german)))
    .map(({ code, english, german }) => `${code}\n  ${english}\n  ${german}`);

/** Titles and sections of publications stay as they are printed there. */
const isOfSources = (code: string): boolean => code.endsWith('.source');

describe('a German sentence', () => {
  test('has the facts of the English one', () => {
    expect(
      wrong((_pair, english, german) => [...english.facts].sort().join() !== [...german.facts].sort().join()),
    ).toEqual([]);
  });

  test('chooses by the same words, between the same branches', () => {
    expect(
      wrong(
        (_pair, english, german) =>
          JSON.stringify([...english.choices].sort()) !== JSON.stringify([...german.choices].sort()),
      ),
    ).toEqual([]);
  });

  // CLDR: German has the plurals of English, one and other. It also tells one from others where English does not need
  // to: "1 weiteres", "2 weitere" for "more".
  test('has the branches of each plural', () => {
    const sorted = ({ plurals }: Asked): string[][] => plurals.map((branches) => branches.sort());
    expect(
      wrong((_pair, english, german) =>
        sorted(german).some(
          (branches) =>
            !sorted(english).some((those) =>
              [those, [...those, 'one'].sort()].some((each) => `${each}` === `${branches}`),
            ),
        ),
      ),
    ).toEqual([]);
  });

  // A plural of more branches than one asks for a number; a fact that English only shows may be a text.
  test('counts only by what English counts by', () => {
    const counted = (icu: string): string[] =>
      [...icu.matchAll(/\{(\w+), plural,/g)].map(([, name]) => name!);
    expect(
      wrong(({ english, german }) => counted(german).some((name) => !counted(english).includes(name))),
    ).toEqual([]);
  });

  test('ends as the English one does', () => {
    const ending = (icu: string): string => /[.?:…]?$/u.exec(icu)![0];
    expect(wrong(({ english, german }) => ending(english) !== ending(german))).toEqual([]);
  });

  test('has no English word left', () => {
    // A command as it is typed.
    expect(
      wrong(
        ({ code }, _english, { text }) => !isOfSources(code) && code !== 'export.usage' && hasEnglish(text),
      ),
    ).toEqual([]);
  });

  test('has proper umlauts and ß', () => {
    expect(wrong(({ german }) => withoutUmlauts(german))).toEqual([]);
  });

  test('has German quotation marks, dashes and dots', () => {
    expect(wrong(({ german }) => withForeignMarks(german))).toEqual([]);
  });

  test('has a decimal comma', () => {
    // One is of a point typed for a comma.
    expect(
      wrong(
        ({ code }, _english, { text }) =>
          !isOfSources(code) && code !== 'import.decimal-point' && withDecimalPoint(text),
      ),
    ).toEqual([]);
  });

  test('keeps a number and its unit on one line', () => {
    expect(wrong((_pair, _english, { text }) => withLooseUnit(text))).toEqual([]);
  });

  test('has no spaces too many', () => {
    expect(wrong(({ german }) => withStraySpace(german))).toEqual([]);
  });
});
