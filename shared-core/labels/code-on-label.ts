import type { ModulesOperation } from '../drawing/page.ts';
import { bars, code128, quietModules } from './code128.ts';
import type { Dots } from './dots.ts';
import type { TextRoom } from './label-text.ts';
import type { LabelCode } from './paper.ts';
import { darkRuns, qrCode, quietZoneModules, smallestModuleMm } from './qr.ts';
import type { Box } from './text-row.ts';

/** The QR code's part of the label's longer side, where there is room for the text beside it. */
const QR_PART = 0.36;

/** Bars are between these: common practice, no source, as is their height. */
const barModuleMm = { min: 0.25, max: 0.5 };
/** At least so high, and at least such a part of their length where there is room. */
const BARS_MM = 5;
const BARS_PART = 0.15;
const GAP_MM = 1;

/** A module made exactly as small as allowed must not fail for the last bit. */
const roundingMm = 1e-6;

/** The part of a label that may carry ink, with the white around it that belongs to the label. */
export interface LabelBox extends Box {
  whiteXMm: number;
  whiteYMm: number;
}

/** The code as it is drawn, and where the text goes. */
export interface PlacedCode {
  textBox: Box;
  operations: ModulesOperation[];
}

/** Null where the text makes no such code, or where it would be too small to read or leave no room for the ID. */
export function placedCode(
  kind: LabelCode,
  text: string,
  box: LabelBox,
  room: TextRoom,
  dots: Dots,
): PlacedCode | null {
  try {
    if (kind === 'none') return { textBox: box, operations: [] };
    return kind === 'qr' ? placedQr(text, box, room, dots) : placedBars(text, box, room, dots);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

/**
 * Right of the text; below it on a label that is about as high as wide. The outer part of its quiet zone may lie in the
 * white around the box.
 */
function placedQr(text: string, box: LabelBox, room: TextRoom, dots: Dots): PlacedCode | null {
  const code = qrCode(text);
  const beside = box.heightMm < 0.8 * box.widthMm;
  const [alongMm, acrossMm] = beside ? [box.widthMm, box.heightMm] : [box.heightMm, box.widthMm];
  const [whiteAlongMm, whiteAcrossMm] = beside ? [box.whiteXMm, box.whiteYMm] : [box.whiteYMm, box.whiteXMm];
  const { modules } = code;
  const quiet = quietZoneModules;
  /** What the code takes of the box along it, with the white between it and the text. */
  const takenMm = (module: number) => (modules + quiet) * module + Math.max(0, quiet * module - whiteAlongMm);
  const acrossOf = (module: number) => modules * module + 2 * Math.max(0, quiet * module - whiteAcrossMm);
  const largestIn = (along: number, across: number) =>
    Math.min(
      along / (modules + quiet),
      (along + whiteAlongMm) / (modules + 2 * quiet),
      across / modules,
      (across + 2 * whiteAcrossMm) / (modules + 2 * quiet),
    );

  const need = beside ? room.width : room.height;
  const wantedMm = Math.min(QR_PART * alongMm, alongMm - need.usualMm);
  const leastMm = dots.up(smallestModuleMm);
  const moduleMm = Math.max(leastMm, dots.down(largestIn(wantedMm, acrossMm)));
  if (takenMm(moduleMm) > alongMm - need.idMm + roundingMm) return null;
  if (acrossOf(moduleMm) > acrossMm + roundingMm) return null;

  const outerMm = Math.max(0, quiet * moduleMm - whiteAlongMm);
  const sideMm = modules * moduleMm;
  const alongAtMm = (beside ? box.xMm + box.widthMm : box.yMm + box.heightMm) - outerMm - sideMm;
  const acrossAtMm = (beside ? box.yMm : box.xMm) + (acrossMm - sideMm) / 2;
  const [xMm, yMm] = beside ? [alongAtMm, acrossAtMm] : [acrossAtMm, alongAtMm];
  const leftMm = alongMm - takenMm(moduleMm);
  const textBox = beside ? { ...box, widthMm: leftMm } : { ...box, heightMm: leftMm };
  // Down along it, away from the edge of the label; the rounding stays within the quiet zone.
  const corner = { xMm: dots.down(xMm), yMm: dots.down(yMm) };
  return { textBox, operations: [{ kind: 'modules', ...corner, moduleMm, rectangles: darkRuns(code) }] };
}

/** Along the bottom, the text above. */
function placedBars(text: string, box: LabelBox, room: TextRoom, dots: Dots): PlacedCode | null {
  const code = code128(text);
  const { modules } = code;
  const largestMm = Math.min(
    box.widthMm / modules,
    (box.widthMm + 2 * box.whiteXMm) / (modules + 2 * quietModules),
    barModuleMm.max,
  );
  const moduleMm = dots.down(largestMm);
  if (moduleMm < dots.up(barModuleMm.min) - roundingMm) return null;
  const lengthMm = modules * moduleMm;
  const mostMm = box.heightMm - GAP_MM - room.height.idMm;
  if (mostMm < BARS_MM - roundingMm) return null;
  const usualMm = Math.min(
    Math.max(BARS_MM, BARS_PART * lengthMm),
    box.heightMm - GAP_MM - room.height.usualMm,
  );
  const heightMm = dots.down(Math.min(mostMm, Math.max(BARS_MM, usualMm)));
  const xMm = dots.down(box.xMm + (box.widthMm - lengthMm) / 2);
  const yMm = dots.down(box.yMm + box.heightMm - heightMm);
  return {
    textBox: { ...box, heightMm: yMm - GAP_MM - box.yMm },
    operations: [{ kind: 'modules', xMm, yMm, moduleMm, rectangles: bars(code, heightMm / moduleMm) }],
  };
}
