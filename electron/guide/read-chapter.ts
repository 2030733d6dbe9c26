import { marked, type Token, type Tokens } from 'marked';
import type { Block, Chapter, Inline } from '../../shared-core/guide/chapter.ts';

/** A link of the Markdown: to a chapter beside it, to a heading of one, or to a heading of the same. */
const LINK = /^(?:([a-z0-9-]+)\.md)?(?:#([\p{L}\p{N}-]+))?$/u;
const PICTURE = /^\.\.\/\.\.\/pictures\/([a-z0-9-]+)\.webp$/;

/** The address of a heading within its chapter. */
export const headingId = (text: string): string =>
  text
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-|-$/g, '');

/**
 * Reads a chapter of the guide. What the window could not show, as raw HTML or a link to elsewhere, is refused, so that
 * a chapter holds nothing but words and pictures of ours.
 *
 * @throws RangeError where the Markdown has more than a chapter may have
 */
export function readChapter(markdown: string): Chapter {
  const [title, ...rest] = marked.lexer(markdown).filter(({ type }) => type !== 'space');
  if (title?.type !== 'heading' || (title as Tokens.Heading).depth !== 1)
    throw new RangeError('a chapter begins with its title');
  return { title: textOf(title as Tokens.Heading), blocks: rest.map(blockOf) };
}

function blockOf(token: Token): Block {
  const { type, tokens = [], items, header, rows, ordered } = token as Tokens.Generic;
  switch (type) {
    case 'heading': {
      const text = textOf(token as Tokens.Heading);
      return { kind: 'heading', id: headingId(text), text };
    }
    case 'paragraph': {
      const [only, ...more] = tokens;
      if (only?.type === 'image' && more.length === 0) return pictureOf(only as Tokens.Image);
      return { kind: 'paragraph', says: tokens.map(inlineOf) };
    }
    case 'blockquote':
      return { kind: 'caution', says: sayingOf(tokens) };
    case 'list':
      return {
        kind: 'list',
        isNumbered: ordered,
        items: items.map((item: Tokens.ListItem) => sayingOf(item.tokens)),
      };
    case 'table':
      return {
        kind: 'table',
        heads: header.map(cellOf),
        rows: rows.map((row: Tokens.TableCell[]) => row.map(cellOf)),
      };
    default:
      throw new RangeError(`a chapter cannot have ${type}: ${token.raw}`);
  }
}

const cellOf = ({ tokens }: Tokens.TableCell): Inline[] => tokens.map(inlineOf);

/** Of an item or a caution, which is one run of sentences. */
function sayingOf(tokens: readonly Token[]): Inline[] {
  const [only, ...more] = tokens.filter(({ type }) => type !== 'space');
  if (more.length > 0 || !(only?.type === 'text' || only?.type === 'paragraph'))
    throw new RangeError(`an item or a caution is one paragraph: ${tokens.map(({ raw }) => raw).join('')}`);
  return ((only as Tokens.Generic).tokens ?? []).map(inlineOf);
}

function pictureOf({ href, text }: Tokens.Image): Block {
  const name = PICTURE.exec(href)?.[1];
  if (!name || text === '') throw new RangeError(`a picture is in ../../pictures and has words: ${href}`);
  return { kind: 'picture', name, alt: text };
}

function inlineOf(token: Token): Inline {
  const { type, href = '' } = token as Tokens.Generic;
  const text = textOf(token as Tokens.Text);
  switch (type) {
    case 'text':
    case 'escape':
      return text;
    case 'strong':
      return { kind: 'on-screen', text };
    case 'codespan':
      return { kind: 'code', text };
    case 'link': {
      const [whole, chapter = null, heading = null] = LINK.exec(href) ?? [];
      if (!whole) throw new RangeError(`a chapter links to chapters alone: ${href}`);
      return { kind: 'link', text, chapter, heading };
    }
    default:
      throw new RangeError(`a sentence of the guide cannot have ${type}: ${token.raw}`);
  }
}

/** Lines of a paragraph in the file are one on screen. */
const textOf = ({ text }: { text: string }): string => text.replaceAll('\n', ' ');
