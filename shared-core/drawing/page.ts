import type { Face } from './fitted-text.ts';

/** A line of black text from its left end; `widthMm` is its measured width, to hold another font to. */
export interface TextOperation {
  kind: 'text';
  text: string;
  xMm: number;
  baselineMm: number;
  sizePt: number;
  widthMm: number;
  face: Face;
}

/** An outline as SVG path data in mm (M, L, A, Z; absolute), filled black or drawn with a line. */
export interface PathOperation {
  kind: 'path';
  d: string;
  isFilled: boolean;
  /** Width of a black line along the outline, its corners round; null for none. */
  strokeMm: number | null;
}

export type Operation = TextOperation | PathOperation;

/** One page, ready for any surface: y goes down from the upper left corner, all in mm. */
export interface DrawnPage {
  widthMm: number;
  heightMm: number;
  operations: Operation[];
}
