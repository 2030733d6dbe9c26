/** The size of every text in a drawing, px. */
export const TEXT_PX = 13;
export const LINE_PX = 16;
/** The mean width of a letter at that size in a wide face, px. */
const LETTER_PX = 8;

export const widthOf = (text: string): number => text.length * LETTER_PX;

/** Where a text may be: the point is on its baseline. */
export interface Spot {
  x: number;
  y: number;
  anchor: 'start' | 'middle' | 'end';
}

export interface Word extends Spot {
  text: string;
  isName?: boolean;
}

interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Puts each text where it is wholly in the drawing and on no other text, or nowhere. */
export function wordPlacer(width: number) {
  const placed: Word[] = [];
  const boxes: Box[] = [];
  return {
    placed,
    /** Keeps other texts off one that is drawn otherwise. */
    reserve: (word: Word) => boxes.push(boxOf(word)),
    /** At the first of its spots that is free; null where none is. */
    place(word: Pick<Word, 'text' | 'isName'>, spots: readonly Spot[]): Word | null {
      for (const spot of spots) {
        const box = boxOf({ ...word, ...spot });
        if (box.left < 0 || box.right > width || boxes.some((other) => overlap(box, other))) continue;
        boxes.push(box);
        placed.push({ ...word, ...spot });
        return { ...word, ...spot };
      }
      return null;
    },
  };
}

function boxOf({ text, x, y, anchor }: Word): Box {
  const width = widthOf(text);
  const left = x - { start: 0, middle: width / 2, end: width }[anchor];
  return { left, right: left + width, top: y - TEXT_PX + 2, bottom: y + 3 };
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
