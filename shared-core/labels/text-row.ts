import { type Face, fittedText, printableText, textWidthMm } from '../drawing/fitted-text.ts';
import type { Operation } from '../drawing/page.ts';
import { outlinesOf } from '../drawing/shaped-pages.ts';
import { cutShape, type Shape } from '../drawing/shapes.ts';
import { MM_PER_POINT } from '../measures.ts';
import { type CallMark, callShapePath } from './call-mark.ts';

export interface Box {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

/** No text of a label is smaller, so that all of it is read at arm's length: common practice, no source. */
export const SMALLEST_PT = 8;
/** But an ID on a small label is, rather than cut; beside its code not under this. */
export const SMALLEST_ID_PT = 5;

/** The fonts' own line, in ems (ascender and descender of their `hhea` tables): accents and tails stay in it. */
export const ascentEm = 1901 / 2048;
const lineEm = (1901 + 483) / 2048;
export const lineMm = (sizePt: number): number => lineEm * sizePt * MM_PER_POINT;

/** A call's shape: about as high as a capital letter. */
const markEm = { side: 0.8, above: 0.76, stroke: 0.07, andGap: 1.15 };
const gapEm = 0.6;

/** What was made to fit must not fail to for the last bit. */
export const NEARLY = 1 - 1e-9;

export interface Part {
  text: string;
  face: Face;
  /** Where it is cut if it is too wide; a board's ID differs from the next one at its end. */
  cut: 'end' | 'middle';
  /** Of a size of 1 pt. */
  widthMm: number;
  /** Where the fonts have not all of it. */
  shaped: { shape: Shape; outlines: readonly string[] } | null;
}

/** Texts beside each other, all of one size. */
export interface Row {
  parts: readonly Part[];
  mark: CallMark | null;
  /** How large it is beside a detail. */
  weight: number;
}

export const isBlank = ({ parts }: Row): boolean => parts.every(({ text }) => printableText(text) === '');

/** Rows are made of the same parts over and over until they fit, so that each is measured once. */
export const partOf = (text: string, face: Face, cut: Part['cut'], shaped: Part['shaped']): Part => ({
  text,
  face,
  cut,
  shaped,
  widthMm: shaped ? shaped.shape.widthEm * MM_PER_POINT : textWidthMm(printableText(text), face, 1),
});

export function rowWidthMm({ parts, mark }: Row, sizePt: number): number {
  const textMm = parts.reduce((sum, { widthMm }) => sum + widthMm, 0);
  return (textMm + ((mark ? markEm.andGap : 0) + (parts.length - 1) * gapEm) * MM_PER_POINT) * sizePt;
}

export const fits = (row: Row, { widthMm }: Box): boolean => rowWidthMm(row, SMALLEST_PT) <= widthMm * NEARLY;

/** The size at which a row is as wide as its box. */
export const widestPt = (row: Row, { widthMm }: Box): number => (widthMm / rowWidthMm(row, 1)) * NEARLY;

/** @param topMm of the row's line */
export function rowOperations({ parts, mark }: Row, sizePt: number, topMm: number, box: Box): Operation[] {
  const emMm = sizePt * MM_PER_POINT;
  const baselineMm = topMm + ascentEm * emMm;
  const operations: Operation[] = [];
  let xMm = box.xMm;
  if (mark) {
    const strokeMm = markEm.stroke * emMm;
    const side = markEm.side * emMm - strokeMm;
    const d = callShapePath(
      mark.shape,
      xMm + strokeMm / 2,
      baselineMm - markEm.above * emMm + strokeMm / 2,
      side,
    );
    operations.push({ kind: 'path', d, isFilled: mark.filled, strokeMm });
    xMm += markEm.andGap * emMm;
  }
  for (const { text, face, cut, shaped } of parts) {
    const maxMm = Math.max(0, box.xMm + box.widthMm - xMm);
    if (shaped) {
      const { widthEm, glyphs } = cutShape(shaped.shape, maxMm / emMm);
      const outlines = { text, xMm, baselineMm, sizePt, widthMm: widthEm * emMm, face };
      operations.push(outlinesOf(outlines, glyphs, shaped.outlines));
      xMm += (widthEm + gapEm) * emMm;
      continue;
    }
    const fit = fittedText(text, face, maxMm, sizePt, sizePt, cut);
    if (fit.text === '') continue;
    operations.push({ kind: 'text', ...fit, xMm, baselineMm, face });
    xMm += fit.widthMm + gapEm * emMm;
  }
  return operations;
}
