import { z } from 'zod';
import { type Message, message } from '../words/message.ts';
import type { LabelLayout } from './sheet.ts';

const scaleSchema = z.number().min(0.9).max(1.1);
const MOST_OFFSET_MM = 25;
const offsetSchema = z.number().min(-MOST_OFFSET_MM).max(MOST_OFFSET_MM);

/**
 * Where a printer puts what is meant for a point of the paper: at `offset + scale × point` from the paper's left and top
 * edge, mm.
 */
export const calibrationSchema = z.object({
  offsetXMm: offsetSchema,
  offsetYMm: offsetSchema,
  scaleX: scaleSchema,
  scaleY: scaleSchema,
});
export type Calibration = z.infer<typeof calibrationSchema>;

/** Of a printer that prints where it should. */
export const exactPrinter: Calibration = { offsetXMm: 0, offsetYMm: 0, scaleX: 1, scaleY: 1 };

/** Where to draw what is to be printed at a point of the paper. */
export const drawnAt = (
  { xMm, yMm }: { xMm: number; yMm: number },
  { offsetXMm, offsetYMm, scaleX, scaleY }: Calibration,
) => ({ xMm: (xMm - offsetXMm) / scaleX, yMm: (yMm - offsetYMm) / scaleY });

/** Where the lines of the calibration page are meant to be: two from the left edge and two from the top edge, mm. */
export interface CalibrationLines {
  leftMm: number;
  rightMm: number;
  topMm: number;
  bottomMm: number;
}

/** So far from the edges that every printer can ink them: common practice, no source. */
const edgeMm = { sheet: 20, roll: 4 };

export function calibrationLines({ kind, pageWidthMm, pageHeightMm }: LabelLayout): CalibrationLines {
  const edge = Math.min(edgeMm[kind], pageWidthMm / 4, pageHeightMm / 4);
  return { leftMm: edge, rightMm: pageWidthMm - edge, topMm: edge, bottomMm: pageHeightMm - edge };
}

/** Where those lines come out on the paper by a calibration. */
export const printedLines = (
  { leftMm, rightMm, topMm, bottomMm }: CalibrationLines,
  { offsetXMm, offsetYMm, scaleX, scaleY }: Calibration,
): CalibrationLines => ({
  leftMm: offsetXMm + scaleX * leftMm,
  rightMm: offsetXMm + scaleX * rightMm,
  topMm: offsetYMm + scaleY * topMm,
  bottomMm: offsetYMm + scaleY * bottomMm,
});

/**
 * What a printer does to a page, from where the lines of its calibration page were measured.
 *
 * @param measured  from the left edge of the paper, and from the top edge, mm
 * @returns         what is wrong with them, where they are no small correction of the lines
 */
export function calibrationFrom(
  meant: CalibrationLines,
  measured: CalibrationLines,
): { calibration: Calibration } | { problem: Message } {
  const scaleX = (measured.rightMm - measured.leftMm) / (meant.rightMm - meant.leftMm);
  const scaleY = (measured.bottomMm - measured.topMm) / (meant.bottomMm - meant.topMm);
  const { success, data } = calibrationSchema.safeParse({
    offsetXMm: measured.leftMm - scaleX * meant.leftMm,
    offsetYMm: measured.topMm - scaleY * meant.topMm,
    scaleX,
    scaleY,
  });
  return success
    ? { calibration: data }
    : { problem: message('labels.measured-too-far-off', { mostSharePct: 10, mostMm: MOST_OFFSET_MM }) };
}
