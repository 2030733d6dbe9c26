/** The guide's chapters as the tests read them. */
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { readChapter } from '../../../electron/guide/read-chapter.ts';
import ids from '../../../renderer/help/guide/chapters.json' with { type: 'json' };
import type { Block, Chapter, Inline } from '../../../shared-core/guide/chapter.ts';
import type { Language } from '../../../shared-core/words/languages.ts';

export const help = resolve(import.meta.dirname, '../../../renderer/help');

export interface ReadChapter extends Chapter {
  id: string;
  markdown: string;
}

export const chaptersIn = (language: Language): ReadChapter[] =>
  ids.map((id) => {
    const markdown = readFileSync(join(help, `guide/${language}/${id}.md`), 'utf8');
    return { id, markdown, ...readChapter(markdown) };
  });

function saidIn(block: Block): Inline[] {
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
}

export const linksOf = ({ blocks }: Chapter) =>
  blocks.flatMap(saidIn).flatMap((part) => (typeof part === 'object' && part.kind === 'link' ? [part] : []));

/** The ids of a chapter's headings, in their order. */
export const headingsOf = ({ blocks }: Chapter): string[] =>
  blocks.flatMap((block) => (block.kind === 'heading' ? [block.id] : []));

export const picturesOf = ({ blocks }: Chapter): string[] =>
  blocks.flatMap((block) => (block.kind === 'picture' ? [block.name] : []));

/** What a chapter says is on screen, in its order. */
export const namesOf = ({ blocks }: Chapter): string[] =>
  blocks
    .flatMap(saidIn)
    .flatMap((part) => (typeof part === 'object' && part.kind === 'on-screen' ? [part.text] : []));

/** What of a sentence of the catalog is written, between the facts that are put into it. */
const written = (sentence: string): string[] =>
  sentence
    .replaceAll(/\{\w+\}/g, '\n')
    .split(/[\n{}]/)
    .map((part) => part.trim());

/** Whether a sentence of the catalog says a name, which must be whole; of a sentence, the guide may quote a part. */
export function says(sentence: string, name: string): boolean {
  if (!sentence.includes(name)) return false;
  const parts = written(sentence);
  return parts.includes(name) || (/[.?!]$/.test(name) && parts.some((part) => part.includes(name)));
}
