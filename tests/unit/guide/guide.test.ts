/** The user's guide against the app that it is about: names, links, pictures, and our English. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readChapter } from '../../../electron/guide/read-chapter.ts';
import ids from '../../../renderer/help/guide/chapters.json' with { type: 'json' };
import { textsOf } from '../../../shared-core/guide/chapter.ts';
import { catalogOf, languages } from '../../../shared-core/words/languages.ts';
import { oldPhrasesIn } from '../words/strays.ts';
import { chaptersIn, headingsOf, help, linksOf, namesOf, picturesOf, says } from './chapters.ts';

/** Where the window says a sentence by its code alone, with what stands before it: of 'a.b', `aria-label={say('a.b'`. */
const renderer = resolve(import.meta.dirname, '../../../renderer');
const source = readdirSync(renderer, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.tsx'))
  .map((file) => readFileSync(join(renderer, file), 'utf8'))
  .join('\n');

/** A name that only a screen reader says cannot be found by someone who looks for it. */
function isOnlySpoken(text: string, sentences: [code: string, sentence: string][]): boolean {
  const codes = sentences.flatMap(([code, sentence]) => (sentence === text ? [code] : []));
  const uses = codes.map((code) => source.split(`'${code}'`).length - 1);
  const spoken = codes.map(
    (code) => source.split(new RegExp(`(?:aria-label=|spoken-only">)\\{say\\('${code}'`)).length - 1,
  );
  return uses.some((count) => count > 0) && codes.every((_, at) => uses[at] === spoken[at]);
}

const guides = await Promise.all(
  languages.map(async (language) => ({
    language,
    catalog: await catalogOf(language),
    chapters: chaptersIn(language),
  })),
);

describe.each(guides)('the guide in $language', ({ language, catalog, chapters }) => {
  const sentences = Object.entries<string>(catalog);

  test('has each chapter of the list, and no other', () => {
    expect(readdirSync(join(help, 'guide', language)).sort()).toEqual(ids.map((id) => `${id}.md`).sort());
  });

  test.each(chapters)('names nothing on screen that the window does not say: $id', (chapter) => {
    const names = namesOf(chapter);
    expect(names.filter((name) => !sentences.some(([, sentence]) => says(sentence, name)))).toEqual([]);
    expect(names.filter((name) => isOnlySpoken(name, sentences))).toEqual([]);
  });

  test.each(chapters)('links to chapters and headings that exist: $id', (chapter) => {
    const broken = linksOf(chapter).filter(({ chapter: to, heading }) => {
      const target = chapters.find(({ id }) => id === (to ?? chapter.id));
      return !target || (heading !== null && !headingsOf(target).includes(heading));
    });
    expect(broken).toEqual([]);
    expect(new Set(headingsOf(chapter)).size).toBe(headingsOf(chapter).length);
  });

  test.each(chapters)('shows pictures that are there: $id', (chapter) => {
    const files = readdirSync(join(help, 'pictures'));
    expect(picturesOf(chapter).filter((name) => !files.includes(`${name}.webp`))).toEqual([]);
  });

  test.each(chapters)('begins with a sentence, and has none above 20 words: $id', ({ title, blocks }) => {
    expect(blocks[0]?.kind).toBe('paragraph');
    const long = [title, ...blocks.flatMap(textsOf)]
      .flatMap((text) => text.split(/(?<=[.?!:])\s/))
      .filter((each) => each.split(/\s+/).length > 20);
    expect(long).toEqual([]);
  });

  test('has the letters of the calls', () => {
    const letters = (['ready', 'bring-in', 'keep-drying', 'too-dry', 'probe-again'] as const).map(
      (call) => catalog[`call.letter-${call}`],
    );
    expect(chapters.find(({ id }) => id === 'calls')?.markdown).toContain(`: ${letters.join(', ')}.`);
  });

  test('calls a chapter what links from other screens call it', () => {
    const titleOf = (of: string) => chapters.find(({ id }) => id === of)?.title;
    expect(titleOf('pins')).toBe(catalog['help.push-pins']);
    expect(titleOf('calls')).toBe(catalog['help.read-calls']);
  });
});

describe.each(chaptersIn('en'))('the English chapter $id', ({ id, markdown, blocks }) => {
  test('has no phrase that our English has outgrown', () => {
    expect(oldPhrasesIn(markdown, `${id}.md`)).toEqual([]);
  });

  test('gives US measures with the metric ones', () => {
    const texts = blocks.flatMap(textsOf);
    const alone = texts.filter(
      (text) => /\d (in|ft|lb|°F)\b/.test(text) && !/\d (mm|cm|m|kg|°C)\b/.test(text),
    );
    expect(alone).toEqual([]);
  });
});

test('pictures take little room, and each is in a chapter', () => {
  const shown = chaptersIn('en').flatMap(picturesOf);
  const files = readdirSync(join(help, 'pictures')).filter((name) => name.endsWith('.webp'));
  expect(files.filter((name) => !shown.includes(name.replace('.webp', '')))).toEqual([]);
  const bytes = files.reduce((sum, name) => sum + readFileSync(join(help, 'pictures', name)).length, 0);
  expect(bytes).toBeLessThan(1_500_000);
});

describe('a chapter holds nothing but our words and pictures', () => {
  test.each([
    ['raw HTML', '# A\n\n<img src=x onerror=alert(1)>\n'],
    ['HTML in a sentence', '# A\n\nOne <b>two</b>.\n'],
    ['a link to elsewhere', '# A\n\n[One](https://example.org).\n'],
    ['a script as a link', '# A\n\n[One](javascript:alert(1)).\n'],
    ['a picture from elsewhere', '# A\n\n![One](https://example.org/a.webp)\n'],
    ['a picture without words', '# A\n\n![](../../pictures/round.webp)\n'],
    ['no title', 'One.\n'],
  ])('%s is refused', (_, text) => {
    expect(() => readChapter(text)).toThrow(RangeError);
  });
});
