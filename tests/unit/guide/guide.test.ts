/** The user's guide against the app that it is about: names, links, pictures, and our English. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readChapter } from '../../../electron/guide/read-chapter.ts';
import ids from '../../../renderer/help/guide/chapters.json' with { type: 'json' };
import { type Block, type Inline, textsOf } from '../../../shared-core/guide/chapter.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { oldPhrasesIn } from '../words/strays.ts';

const help = resolve(import.meta.dirname, '../../../renderer/help');
const folder = join(help, 'guide/en');
const markdown = new Map(ids.map((id) => [id, readFileSync(join(folder, `${id}.md`), 'utf8')]));
const chapters = [...markdown].map(([id, text]) => ({ id, ...readChapter(text) }));

const saidIn = (block: Block): Inline[] => {
  switch (block.kind) {
    case 'paragraph':
    case 'caution':
      return block.says;
    case 'list':
      return block.items.flat();
    case 'table':
      return [...block.heads, ...block.rows.flat()].flat();
    default:
      return [];
  }
};

/** What stands on screen in a sentence of the catalog, between the facts that are put into it. */
const written = Object.values(english).flatMap((sentence) =>
  sentence
    .replaceAll(/\{\w+\}/g, '\n')
    .split(/[\n{}]/)
    .map((part) => part.trim()),
);
const sentences = written.join('\n');
const names = new Set(written);

/** A name must be whole; of a sentence, the guide may quote a part. */
const isOnScreen = (text: string): boolean =>
  names.has(text) || (/[.?!]$/.test(text) && sentences.includes(text));

/** Where the window says a sentence by its code alone, with what stands before it: of 'a.b', `aria-label={say('a.b'`. */
const renderer = resolve(import.meta.dirname, '../../../renderer');
const source = readdirSync(renderer, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.tsx'))
  .map((file) => readFileSync(join(renderer, file), 'utf8'))
  .join('\n');

/** A name that only a screen reader says cannot be found by someone who looks for it. */
function isOnlySpoken(text: string): boolean {
  const codes = Object.entries(english).flatMap(([code, sentence]) => (sentence === text ? [code] : []));
  const uses = codes.map((code) => source.split(`'${code}'`).length - 1);
  const spoken = codes.map(
    (code) => source.split(new RegExp(`(?:aria-label=|spoken-only">)\\{say\\('${code}'`)).length - 1,
  );
  return uses.some((count) => count > 0) && codes.every((_, at) => uses[at] === spoken[at]);
}

test('each chapter is in the list, and each of the list is there', () => {
  expect(readdirSync(folder).sort()).toEqual(ids.map((id) => `${id}.md`).sort());
});

describe.each(chapters)('the chapter $id', ({ id, title, blocks }) => {
  const said = blocks.flatMap(saidIn);

  test('names nothing on screen that the window does not say', () => {
    const shown = said.flatMap((part) =>
      typeof part === 'object' && part.kind === 'on-screen' ? [part.text] : [],
    );
    expect(shown.filter((text) => !isOnScreen(text))).toEqual([]);
    expect(shown.filter(isOnlySpoken)).toEqual([]);
  });

  test('links to chapters and headings that exist', () => {
    const headingsOf = (of: string) =>
      chapters
        .find((each) => each.id === of)
        ?.blocks.flatMap((block) => (block.kind === 'heading' ? block.id : []));
    const broken = said.filter((part) => {
      if (typeof part === 'string' || part.kind !== 'link') return false;
      const headings = headingsOf(part.chapter ?? id);
      return !headings || (part.heading !== null && !headings.includes(part.heading));
    });
    expect(broken).toEqual([]);
    expect(new Set(headingsOf(id)).size).toBe(headingsOf(id)?.length);
  });

  test('shows pictures that are there', () => {
    const files = readdirSync(join(help, 'pictures'));
    const pictures = blocks.flatMap((block) => (block.kind === 'picture' ? [`${block.name}.webp`] : []));
    expect(pictures.filter((name) => !files.includes(name))).toEqual([]);
  });

  test('is in our English: begins with a sentence, no sentence above 20 words, no outgrown phrase', () => {
    expect(blocks[0]?.kind).toBe('paragraph');
    const texts = [title, ...blocks.flatMap(textsOf)];
    const long = texts
      .flatMap((text) => text.split(/(?<=[.?!:])\s/))
      .filter((each) => each.split(/\s+/).length > 20);
    expect(long).toEqual([]);
    expect(oldPhrasesIn(markdown.get(id)!, `${id}.md`)).toEqual([]);
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
  const shown = chapters.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.kind === 'picture' ? [`${block.name}.webp`] : [])),
  );
  const files = readdirSync(join(help, 'pictures')).filter((name) => name.endsWith('.webp'));
  expect(files.filter((name) => !shown.includes(name))).toEqual([]);
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
