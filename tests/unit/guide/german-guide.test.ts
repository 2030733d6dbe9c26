/** Each German chapter against its English one. Whether it says the same, and well, a person reads. */
import { describe, expect, test } from 'vitest';
import { type Block, textsOf } from '../../../shared-core/guide/chapter.ts';
import { german } from '../../../shared-core/words/de/index.ts';
import { type Code, english } from '../../../shared-core/words/en/index.ts';
import { hasEnglish } from '../words/english-left.ts';
import {
  withDecimalPoint,
  withForeignMarks,
  withLooseUnit,
  withoutUmlauts,
  withStraySpace,
} from '../words/german-slips.ts';
import { chaptersIn, headingsOf, linksOf, namesOf, picturesOf, type ReadChapter, says } from './chapters.ts';

const originals = chaptersIn('en');
const translations = chaptersIn('de');
const pairs = originals.map((original, at) => ({ id: original.id, original, german: translations[at]! }));
const codes = Object.keys(english) as Code[];

/** The kind of a block, and how much it holds. */
function shapeOf(block: Block): string {
  switch (block.kind) {
    case 'list':
      return `${block.isNumbered ? 'steps' : 'list'} of ${block.items.length}`;
    case 'table':
      return `table of ${block.rows.length} by ${block.heads.length}`;
    default:
      return block.kind;
  }
}

/** Where the links of a chapter lead, a heading by its place among those of its chapter. */
const targetsOf = (chapter: ReadChapter, chapters: readonly ReadChapter[]): string[] =>
  linksOf(chapter).map(({ chapter: to, heading }) => {
    const target = chapters.find(({ id }) => id === (to ?? chapter.id))!;
    return heading === null ? target.id : `${target.id}, heading ${headingsOf(target).indexOf(heading)}`;
  });

const textsIn = ({ title, blocks }: ReadChapter): string[] => [title, ...blocks.flatMap(textsOf)];

/** Every number of a chapter, the least first: German puts some in another order. */
const numbersIn = (chapter: ReadChapter, decimal: RegExp): number[] =>
  textsIn(chapter)
    .flatMap((text) => text.match(/\d+(?:[.,]\d+)?/g) ?? [])
    .map((number) => Number(number.replace(decimal, '.')))
    .sort((a, b) => a - b);

describe.each(pairs)('the German chapter $id', ({ original, german: chapter }) => {
  test('has the headings, lists, tables and cautions of the English one', () => {
    expect(chapter.blocks.map(shapeOf)).toEqual(original.blocks.map(shapeOf));
  });

  test('has its links and pictures', () => {
    expect(targetsOf(chapter, translations)).toEqual(targetsOf(original, originals));
    expect(picturesOf(chapter)).toEqual(picturesOf(original));
  });

  test('has its numbers', () => {
    expect(numbersIn(chapter, /,/)).toEqual(numbersIn(original, /\./));
  });

  test('names the same on screen, in the same order, by its German name', () => {
    const names = namesOf(original).map((name, at) => [name, namesOf(chapter)[at] ?? 'nothing'] as const);
    const others = names.filter(
      ([name, inGerman]) => !codes.some((code) => says(english[code], name) && says(german[code], inGerman)),
    );
    expect(others).toEqual([]);
    expect(namesOf(chapter)).toHaveLength(names.length);
  });

  test('is in proper German', () => {
    const withoutTyped = chapter.markdown.replaceAll(/`[^`]*`/g, '…');
    const texts = textsIn(chapter);
    expect(texts.filter(hasEnglish)).toEqual([]);
    expect(texts.filter(withoutUmlauts)).toEqual([]);
    expect(texts.filter(withForeignMarks)).toEqual([]);
    expect(texts.filter(withDecimalPoint)).toEqual([]);
    expect(texts.filter(withStraySpace)).toEqual([]);
    expect(withoutTyped.split('\n').filter(withLooseUnit)).toEqual([]);
    expect(withoutTyped.match(/\d (in|ft|lb)\b/g)).toBeNull();
  });

  test('gives the metric measure first, and the US one after it in parentheses', () => {
    const pair = /(mm|cm|m|kg|°C) \([\d ×]*\d\u00A0(in|ft|lb|°F)\)/g;
    const alone = textsIn(chapter).filter((text) => /\d\u00A0(in|ft|lb|°F)/.test(text.replaceAll(pair, '')));
    expect(alone).toEqual([]);
  });
});
