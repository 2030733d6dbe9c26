/** The sources of what comes with the program, in German: titles and authors as published, all else translated. */
import { expect, test } from 'vitest';
import { figureOf, sentencesOf, sourceShown } from '../../../shared-core/methods/source-pieces.ts';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { german } from '../../../shared-core/words/de/index.ts';
import { sources } from '../../../shared-core/words/de/sources.ts';
import { hasEnglish } from './english-left.ts';
import {
  withDecimalPoint,
  withForeignMarks,
  withLooseUnit,
  withoutUmlauts,
  withStraySpace,
} from './german-slips.ts';
import { asPublished, withoutTitles } from './published-titles.ts';

const all = [...builtInSpecies, ...resistanceCurves.values(), ...builtInEndUses].map(({ source }) => source);
const pieces = all.flatMap((source) => sentencesOf(source).flatMap((each) => each.split('; ').map(figureOf)));
const named = (name: string): string => german[`name:${name}`] ?? name;
const inGerman = (source: string): string => sourceShown(source, named, german['methods.from-memory']);

test('every piece of every source is in German, and nothing else', () => {
  expect(Object.keys(sources).sort()).toEqual([...new Set(pieces)].map((each) => `name:${each}`).sort());
});

test.each(Object.entries(sources))('%s', (code, text) => {
  const own = withoutTitles(text);
  expect(text).not.toBe(code.slice('name:'.length));
  expect(hasEnglish(own)).toBe(false);
  expect(own).not.toMatch(/\b(Table|vol\.|Shrinkage|Specific gravity|Resistance curve|memory|common)\b/);
  for (const slip of [withoutUmlauts, withForeignMarks, withLooseUnit, withStraySpace])
    expect(slip(text)).toBe(false);
  // "Tabelle 4.14" is the name of a table.
  expect(withDecimalPoint(own.replace(/Tabelle [\dA]+\.[\dA.]+/, ''))).toBe(false);
  for (const title of asPublished) expect(text.includes(title), title).toBe(code.includes(title));
  const numbers = (of: string) => of.replaceAll(/(\d),(?=\d)/g, '$1.').match(/\d+(\.\d+)*/g) ?? [];
  expect(numbers(text).sort()).toEqual(numbers(code).sort());
});

test('a species that a source names is called as everywhere', () => {
  for (const [code, text] of Object.entries(sources)) {
    const [, listed] = /: means of (.*)$/.exec(code) ?? [];
    for (const name of listed?.split(', ') ?? [])
      expect(text.replaceAll(/ \((\w+)\)/g, ', $1')).toContain(named(name));
  }
});

test('a source keeps its order, its marks and its periods', () => {
  expect(inGerman('The table was not seen; 20 °C is from memory.')).toBe(
    'Die Tabelle lag nicht vor; 20\u00a0°C aus dem Gedächtnis.',
  );
  expect(
    inGerman('Shrinkage: R. Wagenführ, Holzatlas (from memory). Specific gravity: common trade figure.'),
  ).toBe('Schwindung: R. Wagenführ, Holzatlas (aus dem Gedächtnis). Raumdichte: im Handel übliche Zahl.');
});

test('a person’s own source stays as it was typed', () => {
  const own = 'My own checks (from memory). Shed; barn. Mr. B. Miller told me.';
  expect(inGerman(own)).toBe(own);
});
