import { textWidthMm } from '../drawing/fitted-text.ts';
import type { DrawnPage, Operation } from '../drawing/page.ts';
import { MM_PER_POINT } from '../measures.ts';
import type { Words } from '../words/words.ts';
import { calibrationLines } from './calibration.ts';
import type { LabelLayout } from './sheet.ts';

const LINE_MM = 0.2;
const NAME_PT = 8;
/** Marks along the lines, so that a scale shows at a glance: long ones every 10 mm. */
const MARK_MM = { short: 1, long: 2.5 };

/** A page of one paper with the lines that a person measures from its edges, named A to D, each with a ruler of millimeters. */
export function calibrationPage(layout: LabelLayout, { say }: Words): DrawnPage {
  const { pageWidthMm: widthMm, pageHeightMm: heightMm } = layout;
  const { leftMm, rightMm, topMm, bottomMm } = calibrationLines(layout);
  const line = (d: string): Operation => ({ kind: 'path', d, isFilled: false, strokeMm: LINE_MM });
  const name = (text: string, xMm: number, baselineMm: number): Operation => ({
    kind: 'text',
    text,
    xMm,
    baselineMm,
    sizePt: NAME_PT,
    widthMm: textWidthMm(text, 'bold', NAME_PT),
    face: 'bold',
  });
  const besideMm = 0.8;
  const emMm = NAME_PT * MM_PER_POINT;
  const marks = (lengthMm: number, markAt: (mm: number, markMm: number) => string): string =>
    Array.from({ length: Math.floor(lengthMm) }, (_, mm) =>
      markAt(mm + 1, (mm + 1) % 10 === 0 ? MARK_MM.long : MARK_MM.short),
    ).join('');
  const middleXMm = (leftMm + rightMm) / 2;
  const middleYMm = (topMm + bottomMm) / 2;
  return {
    widthMm,
    heightMm,
    operations: [
      line(`M${leftMm} ${topMm}L${leftMm} ${bottomMm}M${rightMm} ${topMm}L${rightMm} ${bottomMm}`),
      line(`M${leftMm} ${topMm}L${rightMm} ${topMm}M${leftMm} ${bottomMm}L${rightMm} ${bottomMm}`),
      line(
        marks(rightMm - leftMm, (mm, markMm) => `M${leftMm + mm} ${topMm}L${leftMm + mm} ${topMm + markMm}`),
      ),
      line(
        marks(bottomMm - topMm, (mm, markMm) => `M${leftMm} ${topMm + mm}L${leftMm + markMm} ${topMm + mm}`),
      ),
      name(say('labels.line-a'), leftMm + MARK_MM.long + besideMm, middleYMm + emMm / 3),
      name(say('labels.line-b'), rightMm - besideMm - emMm, middleYMm + emMm / 3),
      name(say('labels.line-c'), middleXMm, topMm + MARK_MM.long + besideMm + emMm * 0.75),
      name(say('labels.line-d'), middleXMm, bottomMm - besideMm),
    ],
  };
}
