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

/** Grays that a laser printer tells apart. A label has black alone: a label printer knows nothing else. */
export type Shade = 'black' | 'gray' | 'light' | 'white';

/** The same as colors of the screen and of a PDF. */
export const shadeColors: Readonly<Record<Shade, string>> = {
  black: '#000000',
  gray: '#7f7f7f',
  light: '#e3e3e3',
  white: '#ffffff',
};

/** An outline as SVG path data in mm (M, L, A, Z; absolute), filled or drawn with a line. */
export interface PathOperation {
  kind: 'path';
  d: string;
  isFilled: boolean;
  /** Black unless given. */
  fill?: Shade;
  /** Width of a line along the outline, its corners round; null for none. */
  strokeMm: number | null;
  /** Of that line; black unless given. */
  stroke?: Shade;
  /** Lengths of its dashes and gaps by turns; unbroken unless given. */
  dashMm?: readonly number[] | undefined;
}

/** Black rectangles of whole modules, inked in one go, so that no hairline shows between neighbors: those of a code. */
export interface ModulesOperation {
  kind: 'modules';
  /** Of the upper left corner of the code. */
  xMm: number;
  yMm: number;
  moduleMm: number;
  /** In modules from that corner. */
  rectangles: readonly Rectangle[];
}
export type Rectangle = readonly [x: number, y: number, width: number, height: number];

/** Of the outlines of letters. */
export const UNITS_PER_EM = 1000;
/** A line along the outlines makes them bold, 1/1000 em: their fonts have one weight. */
export const BOLD_LINE = 45;

/** A line of text as the outlines of its letters, for scripts that the fonts of `TextOperation` do not have. */
export interface OutlinesOperation {
  kind: 'outlines';
  text: string;
  xMm: number;
  baselineMm: number;
  sizePt: number;
  widthMm: number;
  face: Face;
  /** SVG path data in 1/1000 em, y down from the baseline, each with where it begins, em. */
  glyphs: readonly { d: string; xEm: number; yEm: number }[];
}

export type Operation = TextOperation | PathOperation | ModulesOperation | OutlinesOperation;

/** One page, ready for any surface: y goes down from the upper left corner, all in mm. */
export interface DrawnPage {
  widthMm: number;
  heightMm: number;
  operations: Operation[];
}
