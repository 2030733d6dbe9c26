import type { DrawnPage, Operation } from '../drawing/page.ts';
import { noShapes, type Shapes } from '../drawing/shapes.ts';
import type { Words } from '../words/words.ts';
import { drawnAt, exactPrinter } from './calibration.ts';
import { type LabelBox, placedCode } from './code-on-label.ts';
import { hasBarCode } from './code128.ts';
import { type Dots, dotsOf } from './dots.ts';
import type { LabelContent } from './label.ts';
import { type Detail, labelLines, textsToShape } from './label-lines.ts';
import { type ShapedLine, textOperations, textRoomOf } from './label-text.ts';
import type { LabelPaper } from './paper.ts';
import { labelPositions, printableArea } from './sheet.ts';

/**
 * Draws the labels of boards.
 *
 * @param words of the person who gets them: the same words, the same label, on screen and in the PDF
 * @param used  positions of the first page that are used up already
 * @param isFor `paper`: as they come out on the paper. `printer`: each where this printer is to be told to print it, so
 *              that it comes out there.
 * @param shapesOf gives the shapes of `textsToShape`: without them, boxes stand for letters that the fonts do not have
 * @returns     pages in order; none for no boards
 * @throws      RangeError where `problemOfUsed` finds one
 */
export function drawLabels(
  contents: readonly LabelContent[],
  paper: LabelPaper,
  words: Words,
  used = 0,
  isFor: 'paper' | 'printer' = 'paper',
  shapesOf: (texts: readonly string[]) => Shapes = () => noShapes,
): DrawnPage[] {
  const { layout } = paper;
  const linesOf = contents.map((content) => labelLines(content, words, paper.fields));
  const shapes = shapesOf(textsToShape(linesOf.flat()));
  const area = printableArea(layout);
  const calibration = isFor === 'printer' ? paper.calibration : exactPrinter;
  const dots = dotsOf(paper.dotsPerInch);
  const pages: DrawnPage[] = [];
  for (const [index, position] of labelPositions(contents.length, layout, used).entries()) {
    const [content, lines] = [contents[index], linesOf[index]];
    if (content === undefined || lines === undefined) break;
    pages[position.page] ??= { widthMm: layout.pageWidthMm, heightMm: layout.pageHeightMm, operations: [] };
    // A label is moved as a whole and not scaled: so its dots stay whole.
    const { xMm, yMm } = drawnAt(position, calibration);
    const box = {
      ...area,
      xMm: xMm + area.xMm,
      yMm: yMm + area.yMm,
      whiteXMm: area.xMm,
      whiteYMm: area.yMm,
    };
    const shaped = lines.map((line) => ({ ...line, shapes }));
    pages[position.page]?.operations.push(...labelOperations(content.code, shaped, box, paper, words, dots));
  }
  return pages;
}

/** Why there is no code, then that there is none. */
const noCodeForms = (code: LabelPaper['code'], id: string, { say }: Words): Detail =>
  code === 'qr'
    ? [say('labels.no-qr-code'), say('labels.no-qr-code-short')]
    : [
        say(hasBarCode(id) ? 'labels.no-bar-code' : 'labels.no-bar-code-for-id'),
        say('labels.no-bar-code-short'),
      ];

function labelOperations(
  id: string,
  lines: readonly ShapedLine[],
  box: LabelBox,
  { code }: LabelPaper,
  words: Words,
  dots: Dots,
): Operation[] {
  const placed = placedCode(code, id, box, textRoomOf(lines), dots);
  if (placed) return [...textOperations(lines, placed.textBox), ...placed.operations];
  const remark = { field: null, forms: noCodeForms(code, id, words), mark: null, shapes: noShapes };
  // Instead of the code, beside the ID.
  return textOperations(
    lines.flatMap((line) => (line.field === 'code' ? [line, remark] : [line])),
    box,
  );
}
