import type { DrawnPage, Operation } from '../drawing/page.ts';
import type { Words } from '../words/words.ts';
import type { LabelContent } from './label.ts';
import { type LabelLines, labelLines } from './label-lines.ts';
import { type TextRoom, textOperations, textRoomOf } from './label-text.ts';
import { type QrCode, qrCode, qrPath, quietZoneModules, smallestModuleMm } from './qr.ts';
import { type LabelLayout, labelPositions, printableArea } from './sheet.ts';
import type { Box } from './text-row.ts';

/** The QR code's part of the label's longer side, where there is room for the text beside it. */
const QR_PART = 0.36;

/** A module made exactly as small as allowed must not fail for the last bit. */
const roundingMm = 1e-6;

/**
 * Draws the labels of boards: the ID and its QR code, the call with its day, the MC, and what else there is room for.
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
  const lines = labelLines(content, words);
  const code = qrCodeOf(content.code);
  const halves = code && split(box, code, textRoomOf(lines));
  if (!halves) {
    const details: LabelLines['details'] = [[words.say('labels.no-qr-code')], ...lines.details];
    return textOperations({ ...lines, details }, box);
  }
  return [...textOperations(lines, halves.textBox), qrOperation(code, halves.qrBox)];
}

/** Null for a text that no QR code can hold. */
function qrCodeOf(text: string): QrCode | null {
  try {
    return qrCode(text);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * Text left and QR code right of it; below it on a label that is about as high as wide. Null where the code would be
 * too small to read, or would leave no room for the text.
 */
function split(box: Box, code: QrCode, text: TextRoom): { textBox: Box; qrBox: Box } | null {
  const beside = box.heightMm < 0.8 * box.widthMm;
  const alongMm = beside ? box.widthMm : box.heightMm;
  const acrossMm = beside ? box.heightMm : box.widthMm;
  const smallestMm = (code.modules + 2 * quietZoneModules) * smallestModuleMm;
  const room = beside ? text.width : text.height;
  const wantedMm = Math.min(acrossMm, QR_PART * alongMm, alongMm - room.usualMm);
  const sideMm = Math.max(smallestMm, wantedMm);
  if (sideMm > Math.min(acrossMm, alongMm - room.leastMm) + roundingMm) return null;
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

function qrOperation(code: QrCode, box: Box): Operation {
  const sideMm = Math.min(box.widthMm, box.heightMm);
  const moduleMm = sideMm / (code.modules + 2 * quietZoneModules);
  const xMm = box.xMm + (box.widthMm - sideMm) / 2 + quietZoneModules * moduleMm;
  const yMm = box.yMm + (box.heightMm - sideMm) / 2 + quietZoneModules * moduleMm;
  return { kind: 'path', d: qrPath(code, xMm, yMm, moduleMm), isFilled: true, strokeMm: null };
}
