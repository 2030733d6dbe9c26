/** The size of every text in a drawing, px. */
export const TEXT_PX = 13;
export const LINE_PX = 16;
/** How wide a letter of our face is at that size in its heavier weight, px; rather more than less. */
const letterPx = (letter: string): number =>
  /[%mwMW]/.test(letter) ? 12.4 : /[\p{Lu}\d]/u.test(letter) ? 8.5 : 6.8;

export const widthOf = (text: string): number =>
  [...text].reduce((width, letter) => width + letterPx(letter), 0);

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

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/**
 * Puts each text where it is wholly in the drawing and on no other text, or nowhere; off what is drawn, where there is
 * such a spot.
 */
export function wordPlacer(width: number) {
  const placed: Word[] = [];
  const boxes: Box[] = [];
  const drawn: Box[] = [];
  return {
    placed,
    /** Keeps other texts off one that is drawn otherwise. */
    reserve: (word: Word) => boxes.push(boxOf(word)),
    /** Keeps texts off a line or a mark, if they can be elsewhere. */
    avoid: (box: Box) => drawn.push(box),
    /** At the first of its spots that is free; null where none is. */
    place(word: Pick<Word, 'text' | 'isName'>, spots: readonly Spot[]): Word | null {
      const free = spots
        .map((spot) => ({ ...word, ...spot }))
        .filter((each) => {
          const box = boxOf(each);
          return box.left >= 0 && box.right <= width && !boxes.some((other) => overlap(box, other));
        });
      const found = free.find((each) => !drawn.some((other) => overlap(boxOf(each), other))) ?? free[0];
      if (!found) return null;
      boxes.push(boxOf(found));
      placed.push(found);
      return found;
    },
  };
}

export type WordPlacer = ReturnType<typeof wordPlacer>;

function boxOf({ text, x, y, anchor }: Word): Box {
  const width = widthOf(text);
  const left = x - { start: 0, middle: width / 2, end: width }[anchor];
  return { left, right: left + width, top: y - TEXT_PX + 2, bottom: y + 3 };
}

const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
