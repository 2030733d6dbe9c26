import { MM_PER_POINT } from '../measures.ts';
import { needsShape, printableText, textWidthMm } from './fitted-text.ts';
import type { DrawnPage, Operation, OutlinesOperation, TextOperation } from './page.ts';
import { cutShape, type Shape, type Shapes } from './shapes.ts';

/** A line of text as the outlines of its letters. */
export const outlinesOf = (
  text: Omit<OutlinesOperation, 'kind' | 'glyphs'>,
  glyphs: Shape['glyphs'],
  outlines: readonly string[],
): OutlinesOperation => ({
  kind: 'outlines',
  ...text,
  glyphs: glyphs.map(({ outline, xEm, yEm }) => ({ d: outlines[outline] ?? '', xEm, yEm })),
});

const isToShape = (operation: Operation): operation is TextOperation =>
  operation.kind === 'text' && needsShape(operation.text);

/** The texts of pages of which the fonts have not all, each once. */
export const textsOfPages = (pages: readonly DrawnPage[]): string[] => [
  ...new Set(pages.flatMap(({ operations }) => operations.filter(isToShape).map(({ text }) => text))),
];

/**
 * Pages whose texts a printer has the letters of.
 * @param shapes  of `textsOfPages`; where one is missing, boxes stand for the letters that the fonts do not have
 */
export const shapedPages = (pages: readonly DrawnPage[], shapes: Shapes): DrawnPage[] =>
  pages.map((page) => ({
    ...page,
    operations: page.operations.map((operation) =>
      isToShape(operation) ? shaped(operation, shapes) : operation,
    ),
  }));

function shaped(operation: TextOperation, { texts, outlines }: Shapes): Operation {
  const { text, xMm, baselineMm, sizePt, widthMm, face } = operation;
  const shape = texts[text];
  if (shape === undefined) {
    const boxes = printableText(text);
    return { ...operation, text: boxes, widthMm: textWidthMm(boxes, face, sizePt) };
  }
  const emMm = sizePt * MM_PER_POINT;
  const { widthEm, glyphs } = cutShape(shape, widthMm / emMm);
  return outlinesOf({ text, xMm, baselineMm, sizePt, widthMm: widthEm * emMm, face }, glyphs, outlines);
}
