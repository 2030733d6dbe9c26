import { inflateSync } from 'node:zlib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test, vi } from 'vitest';
import { pdfOf } from '../../../electron/print/pdf.ts';
import { createShaper } from '../../../electron/print/shape-text.ts';
import { needsShape, textWidthMm } from '../../../shared-core/drawing/fitted-text.ts';
import { cutShape } from '../../../shared-core/drawing/shapes.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { rollLayout } from '../../../shared-core/labels/sheet.ts';
import { aLabel, paperOf, wordsIn } from '../labels/a-label.ts';

const shape = createShaper();
const shapeOf = (text: string) => shape([text]).texts[text]!;
const boxed = (text: string): string[] => {
  const { texts, outlines } = shape([text, '\u2FFF']);
  const box = outlines[texts['\u2FFF']!.glyphs[0]!.outline];
  return texts[text]!.glyphs.map(({ outline }) => (outlines[outline] === box ? '□' : 'x'));
};

// Walnut, teak, oak and cedar, as dictionaries have them; from memory.
describe('a text of another script', () => {
  test.each([
    ['胡桃木', 'Chinese'],
    ['クルミ', 'Japanese'],
    ['호두나무', 'Korean'],
    ['सागौन', 'Hindi'],
    ['সেগুন', 'Bengali'],
    ['தேக்கு', 'Tamil'],
    ['ไม้สัก', 'Thai'],
    ['אלון', 'Hebrew'],
    ['خشب الجوز', 'Arabic'],
    ['ընկուզենի', 'Armenian'],
    ['კაკალი', 'Georgian'],
  ])('%s (%s) has a letter for every character', (text) => {
    expect(needsShape(text)).toBe(true);
    expect(boxed(text)).not.toContain('□');
    expect(shapeOf(text).widthEm).toBeGreaterThan(1);
  });

  // Every ideograph is as wide as high, by the design of these fonts; Korean syllables are 0.92 em.
  test('of ideographs is an em a letter, from left to right', () => {
    const { glyphs, widthEm } = shapeOf('胡桃木');
    expect(widthEm).toBe(3);
    expect(glyphs.map(({ xEm }) => xEm)).toEqual([0, 1, 2]);
  });

  test('that nobody has letters for shows a box, and names each sign once', () => {
    // A tree, and the same asked for in color (emoji variation sequence, UTS #51).
    expect(boxed('\u{1F333}\uFE0F')).toEqual(['□']);
    expect(shape(['胡桃 \u{1F333}', '\u{1F333}\uFE0F']).missing).toEqual(['\u{1F333}']);
    // A letter of Telugu with its vowel sign (from memory) is one, so that the end of the line stays.
    expect(boxed('తే')).toEqual(['□']);
    expect(shape(['胡桃木']).missing).toEqual([]);
  });

  // The Unicode Standard, chapter 9: Arabic letters join, so each has a form by its place.
  test('of Arabic joins its letters, and stands from right to left', () => {
    const [alone, joined] = ['ب', 'ببب'].map(shapeOf);
    expect(joined!.isRtl).toBe(true);
    expect(new Set([...joined!.glyphs, ...alone!.glyphs].map(({ widthEm }) => widthEm)).size).toBeGreaterThan(
      1,
    );
    const [pair, first] = ['אב', 'א'] as const;
    const { texts, outlines } = shape([pair, first]);
    // The first letter is the one at the right.
    expect(outlines[texts[pair]!.glyphs.at(-1)!.outline]).toBe(outlines[texts[first]!.glyphs[0]!.outline]);
  });

  // UAX #9: a number within a text from right to left is read from left to right.
  test('from right to left keeps a number within it from left to right', () => {
    const { texts, outlines } = shape(['אלון 27', '2', '7']);
    const drawn = texts['אלון 27']!.glyphs.map(({ outline }) => outlines[outline]);
    const digit = (text: string) => outlines[texts[text]!.glyphs[0]!.outline];
    expect(drawn.slice(0, 2)).toEqual([digit('2'), digit('7')]);
  });

  test('with Latin in it uses the same letters as plain text, as wide', () => {
    const { glyphs } = shapeOf('Oak 木');
    expect(glyphs.at(-1)!.xEm).toBeCloseTo(textWidthMm('Oak ', 'regular', 72) / 25.4, 3);
  });

  test('is cut by whole letters where it is too wide, at its end', () => {
    expect(cutShape(shapeOf('胡桃木'), 2.5)).toMatchObject({ widthEm: 2, glyphs: [{ xEm: 0 }, { xEm: 1 }] });
    const hebrew = shapeOf('אלון');
    const cut = cutShape(hebrew, hebrew.widthEm - 0.1);
    expect(cut.glyphs.map(({ outline }) => outline)).toEqual(
      hebrew.glyphs.slice(1).map(({ outline }) => outline),
    );
    expect(cut.glyphs[0]!.xEm).toBe(0);
  });
});

/** What the streams of a PDF hold, one after another. */
const streamsOf = (pdf: Uint8Array): string =>
  [
    ...Buffer.from(pdf)
      .toString('latin1')
      .matchAll(/FlateDecode[^>]*>>\s*stream\n([\s\S]*?)\nendstream/g),
  ]
    .map(([, packed]) => inflateSync(Buffer.from(packed!, 'latin1')).toString('latin1'))
    .join('');

test('a label shows it as outlines, and its text can be copied from the PDF', async () => {
  const words = wordsIn('metric');
  const content = { ...aLabel, speciesName: '胡桃木 (Juglans)' };
  const paper = paperOf(rollLayout);
  const shapesOf = vi.fn(shape);
  const pages = drawLabels([content], paper, words, 0, 'paper', shapesOf);
  expect(shapesOf.mock.calls).toEqual([[['胡桃木 (Juglans)']]]);
  const outlines = pages[0]!.operations.filter(({ kind }) => kind === 'outlines');
  expect(outlines).toMatchObject([{ text: '胡桃木 (Juglans)', glyphs: { length: 13 } }]);
  const meta = { title: 'Labels', locale: 'en-US', createdAt: new Date('2026-03-12T09:30:00Z') };
  const bytes = await pdfOf(pages, meta);
  // UTF-16, as PDF has it: U+80E1 U+6843 are 胡桃.
  expect(streamsOf(bytes)).toContain(Buffer.from([0x80, 0xe1, 0x68, 0x43]).toString('latin1'));
  const pdf = await getDocument({ data: bytes, verbosity: 0 }).promise;
  expect(pdf.numPages).toBe(1);
});
