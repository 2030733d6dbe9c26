import { type Chapter, textsOf } from './chapter.ts';

/** A part of a chapter, from one heading to the next. The first has the chapter's title and no heading. */
export interface Part {
  chapterId: string;
  chapterTitle: string;
  heading: { id: string; text: string } | null;
  texts: string[];
}

/** The parts of a chapter in their order. */
export function partsOf(chapterId: string, { title, blocks }: Chapter): Part[] {
  const first: Part = { chapterId, chapterTitle: title, heading: null, texts: [title] };
  const parts = [first];
  for (const block of blocks) {
    if (block.kind === 'heading') parts.push({ ...first, heading: block, texts: [block.text] });
    else parts.at(-1)!.texts.push(...textsOf(block));
  }
  return parts;
}

/** What was found, with the line that has it. */
export interface Found extends Part {
  line: string;
}

/**
 * The parts that have every typed word, in any order; those with a word in their heading come first.
 *
 * @example findIn(parts, 'pins sharp')
 */
export function findIn(parts: readonly Part[], typed: string): Found[] {
  const words = typed.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const has = (text: string, word: string) => text.toLowerCase().includes(word);
  const found = parts
    .filter(({ texts }) => words.every((word) => texts.some((text) => has(text, word))))
    .map((part) => {
      const counts = part.texts.map((text) => words.filter((word) => has(text, word)).length);
      const line = part.texts[counts.indexOf(Math.max(...counts))]!;
      const title = part.heading?.text ?? part.chapterTitle;
      return { ...part, line, inTitle: words.filter((word) => has(title, word)).length };
    });
  return found.sort((a, b) => b.inTitle - a.inTitle).map(({ inTitle: _, ...rest }) => rest);
}
