/** A piece of a sentence of the guide. */
export type Inline =
  | string
  /** What the window shows in these very words: a button, a field, a sentence. */
  | { kind: 'on-screen'; text: string }
  | { kind: 'code'; text: string }
  /** To another chapter, to a heading of it, or to a heading of the same. */
  | { kind: 'link'; text: string; chapter: string | null; heading: string | null };

export type Block =
  | { kind: 'heading'; id: string; text: string }
  | { kind: 'paragraph'; says: Inline[] }
  | { kind: 'caution'; says: Inline[] }
  | { kind: 'list'; isNumbered: boolean; items: Inline[][] }
  | { kind: 'table'; heads: Inline[][]; rows: Inline[][][] }
  /** `name` is that of its file, without the ending. */
  | { kind: 'picture'; name: string; alt: string };

/** A chapter of the user's guide, as its Markdown says it. */
export interface Chapter {
  title: string;
  blocks: Block[];
}

/** A sentence as plain text, for searching. */
export const plainText = (says: readonly Inline[]): string =>
  says.map((part) => (typeof part === 'string' ? part : part.text)).join('');

/** What a block says, one text for each line, item or cell. */
export function textsOf(block: Block): string[] {
  switch (block.kind) {
    case 'heading':
      return [block.text];
    case 'picture':
      return [block.alt];
    case 'list':
      return block.items.map(plainText);
    case 'table':
      return [block.heads, ...block.rows].flatMap((row) => row.map(plainText));
    default:
      return [plainText(block.says)];
  }
}
