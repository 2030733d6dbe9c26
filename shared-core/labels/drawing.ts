import { type Face, type FittedText, fittedText } from '../drawing/fitted-text.ts';
import type { DrawnPage, Operation } from '../drawing/page.ts';
import { MM_PER_POINT } from '../measures.ts';
import type { Words } from '../words/words.ts';
import { callShapePath } from './call-mark.ts';
import type { LabelContent } from './label.ts';
import { type LabelLines, labelLines } from './label-lines.ts';
import { type QrCode, qrCode, qrPath, quietZoneModules, smallestModuleMm } from './qr.ts';
import { type LabelLayout, labelPositions, printableArea } from './sheet.ts';

interface Box {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

/** What must stay whole shrinks to this before it is cut. */
const smallestPt = 4;

/** A species' name is cut before it gets smaller than this: its beginning still names the species. */
const smallestNamePt = 6;

/** The label fonts' own line, in ems (ascender and descender of their `hhea` tables): accents and tails stay in it. */
const ascentEm = 1901 / 2048;
const descentEm = 483 / 2048;

/** A module made exactly as small as allowed must not fail for the last bit. */
const roundingMm = 1e-6;

/** How the height of a label's text is shared out, top to bottom: what is looked for from afar is largest. */
const shares = { id: 0.28, mc: 0.28, board: 0.14, shellCore: 0.11, call: 0.19 };

/** The text is never higher than this part of its width, where the MC would leave no room for its day. */
const highestOfWidth = 0.62;

/** The MC's part of its row's width; the rest is for the day and the interval. */
const mcOfRow = 0.55;

/**
 * Draws the labels of boards: big ID, big MC, species and thickness, shell and core, the call, and the QR code of the ID.
 *
 * @param words of the person who gets them: the same words, the same label, on screen and in the PDF
 * @param used  positions of the first page that are used up already
 * @returns     pages in order; none for no boards
 * @throws      RangeError where `problemOfUsed` finds one
 */
export function drawLabels(
  contents: readonly LabelContent[],
  layout: LabelLayout,
  words: Words,
  used = 0,
): DrawnPage[] {
  const area = printableArea(layout);
  const pages: DrawnPage[] = [];
  for (const [index, position] of labelPositions(contents.length, layout, used).entries()) {
    const content = contents[index];
    if (content === undefined) break;
    pages[position.page] ??= { widthMm: layout.pageWidthMm, heightMm: layout.pageHeightMm, operations: [] };
    const box = { ...area, xMm: position.xMm + area.xMm, yMm: position.yMm + area.yMm };
    pages[position.page]?.operations.push(...labelOperations(content, box, words));
  }
  return pages;
}

function labelOperations(content: LabelContent, box: Box, words: Words): Operation[] {
  const code = qrCodeOf(content.code);
  const { textBox, qrBox } = split(box, code);
  return [...textOperations(labelLines(content, words), textBox), ...qrOperations(code, qrBox, words)];
}

/** Null for a text that no QR code can hold: the label says so instead. */
function qrCodeOf(text: string): QrCode | null {
  try {
    return qrCode(text);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/** Text left and QR code right of it; below it on a label that is about as high as wide. */
function split(box: Box, code: QrCode | null): { textBox: Box; qrBox: Box } {
  const beside = box.heightMm < 0.8 * box.widthMm;
  const alongMm = beside ? box.widthMm : box.heightMm;
  const acrossMm = beside ? box.heightMm : box.widthMm;
  const neededMm = code === null ? 0 : (code.modules + 2 * quietZoneModules) * smallestModuleMm;
  const sideMm = Math.min(acrossMm, Math.max(0.36 * alongMm, Math.min(neededMm, 0.6 * alongMm)));
  if (beside) {
    return {
      textBox: { ...box, widthMm: box.widthMm - sideMm },
      qrBox: { ...box, xMm: box.xMm + box.widthMm - sideMm, widthMm: sideMm },
    };
  }
  return {
    textBox: { ...box, heightMm: box.heightMm - sideMm },
    qrBox: { ...box, yMm: box.yMm + box.heightMm - sideMm, heightMm: sideMm },
  };
}

function qrOperations(code: QrCode | null, box: Box, { say }: Words): Operation[] {
  const sideMm = Math.min(box.widthMm, box.heightMm);
  const moduleMm = code === null ? 0 : sideMm / (code.modules + 2 * quietZoneModules);
  if (code === null || moduleMm < smallestModuleMm - roundingMm) {
    const middleMm = box.yMm + box.heightMm / 2;
    return [
      ...line(
        fitted(say('labels.no-qr-code'), 'regular', { ...box, yMm: middleMm - 3, heightMm: 3 }, smallestPt),
      ),
      ...line(
        fitted(say('labels.id-too-long'), 'regular', { ...box, yMm: middleMm, heightMm: 3 }, smallestPt),
      ),
    ];
  }
  const xMm = box.xMm + (box.widthMm - sideMm) / 2 + quietZoneModules * moduleMm;
  const yMm = box.yMm + (box.heightMm - sideMm) / 2 + quietZoneModules * moduleMm;
  return [{ kind: 'path', d: qrPath(code, xMm, yMm, moduleMm), fill: 'black', strokeMm: null }];
}

function textOperations(lines: LabelLines, box: Box): Operation[] {
  const heightMm = Math.min(box.heightMm, highestOfWidth * box.widthMm);
  let topMm = box.yMm + (box.heightMm - heightMm) / 2;
  const row = (share: number): Box => {
    const made = { xMm: box.xMm, yMm: topMm, widthMm: box.widthMm, heightMm: share * heightMm };
    topMm += made.heightMm;
    return made;
  };
  return [
    ...line(fitted(lines.code, 'bold', row(shares.id), smallestPt, 'middle')),
    ...mcOperations(lines, row(shares.mc)),
    ...boardOperations(lines, row(shares.board)),
    ...line(fitted(lines.shellCore, 'regular', row(shares.shellCore), smallestPt)),
    ...callOperations(lines.call, row(shares.call)),
  ];
}

/** The MC, and small beside it its day and what is known of its exactness. */
function mcOperations({ mc, day, interval }: LabelLines, row: Box): Operation[] {
  const big = fitted(mc, 'bold', { ...row, widthMm: mcOfRow * row.widthMm }, smallestPt);
  const takenMm = big.widthMm + 0.2 * row.heightMm;
  const beside = {
    xMm: row.xMm + takenMm,
    widthMm: row.widthMm - takenMm,
    heightMm: 0.4 * row.heightMm,
  };
  return [
    ...line(big),
    ...line(fitted(day, 'regular', { ...beside, yMm: row.yMm + 0.1 * row.heightMm }, smallestPt)),
    ...line(fitted(interval, 'regular', { ...beside, yMm: row.yMm + 0.5 * row.heightMm }, smallestPt)),
  ];
}

/** Thickness first: it is short and must stay whole, a species' name may be cut. */
function boardOperations({ thickness, speciesName }: LabelLines, row: Box): Operation[] {
  const size = fitted(thickness, 'bold', row, smallestPt);
  const takenMm = size.widthMm + 0.5 * row.heightMm;
  const rest = { ...row, xMm: row.xMm + takenMm, widthMm: row.widthMm - takenMm };
  return [...line(size), ...line(fitted(speciesName, 'regular', rest, smallestNamePt))];
}

function callOperations(call: LabelLines['call'], row: Box): Operation[] {
  if (call === null) return [];
  const topMm = row.yMm + 0.1 * row.heightMm;
  const sideMm = 0.9 * row.heightMm;
  const strokeMm = 0.08 * sideMm;
  const outlineMm = sideMm - strokeMm;
  const d = callShapePath(call.shape, row.xMm + strokeMm / 2, topMm + strokeMm / 2, outlineMm);
  const letterPt = (0.58 * sideMm) / MM_PER_POINT;
  const letter = fittedText(call.letter, 'bold', letterOfSide * sideMm, letterPt, 0, 'end');
  const word = {
    xMm: row.xMm + 1.3 * sideMm,
    yMm: topMm,
    widthMm: row.widthMm - 1.3 * sideMm,
    heightMm: sideMm,
  };
  return [
    { kind: 'path', d, fill: call.filled ? 'black' : null, strokeMm },
    {
      kind: 'text',
      ...letter,
      xMm: row.xMm + (sideMm - letter.widthMm) / 2,
      baselineMm: topMm + letterBaseline[call.shape] * sideMm,
      face: 'bold',
      ink: call.filled ? 'white' : 'black',
    },
    ...line(fitted(call.word, 'bold', word, smallestPt)),
  ];
}

/** The most of its shape's side that a letter takes: some languages have wider ones than ours. */
const letterOfSide = 0.6;

/** Where the letter is in its shape, as a part of the side: lower where the shape is wider there. */
const letterBaseline = { disc: 0.71, house: 0.85, square: 0.71, triangle: 0.88 };

interface Line extends FittedText {
  face: Face;
  box: Box;
}

/** As large as the box is high, or smaller to fit its width. */
function fitted(text: string, face: Face, box: Box, minPt: number, cut: 'end' | 'middle' = 'end'): Line {
  const sizePt = box.heightMm / (ascentEm + descentEm) / MM_PER_POINT;
  const fit = fittedText(text, face, Math.max(0, box.widthMm), sizePt, Math.min(sizePt, minPt), cut);
  return { ...fit, face, box };
}

function line({ box, text, sizePt, widthMm, face }: Line): Operation[] {
  if (text === '') return [];
  const emMm = sizePt * MM_PER_POINT;
  const airMm = box.heightMm - (ascentEm + descentEm) * emMm;
  const baselineMm = box.yMm + airMm / 2 + ascentEm * emMm;
  return [{ kind: 'text', text, xMm: box.xMm, baselineMm, sizePt, widthMm, face, ink: 'black' }];
}
