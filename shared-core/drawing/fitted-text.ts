import { MM_PER_POINT } from '../measures.ts';
import { advanceWidths } from './advance-widths.ts';

export type Face = 'regular' | 'bold';

/** In place of a character that the fonts do not have, so that the gap is seen. */
const missing = '□';
const ellipsis = '…';

const widthOf = new Map<string, { regular: number; bold: number }>();
for (const [first, regular, bold] of advanceWidths) {
  for (const [index, units] of regular.entries()) {
    widthOf.set(String.fromCodePoint(first + index), { regular: units, bold: bold[index] ?? units });
  }
}

/** Words one blank apart, of characters that the fonts have and NFC leaves alone: most texts need no more work. */
const PLAIN_WORDS = /^[!-~¡-¬®-ſ–—…−]+( [!-~¡-¬®-ſ–—…−]+)*$/;

/**
 * The text as a drawing can show it, on one line: composed letters, control characters and runs of white space turned
 * into one space, marks of text direction left out, and a box for each character that the fonts do not have.
 */
export function printableText(text: string): string {
  if (PLAIN_WORDS.test(text)) return text;
  const line = text
    .normalize('NFC')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .replace(/[\p{Cf}\p{M}]+/gu, '')
    .trim();
  return Array.from(line, (character) => (widthOf.has(character) ? character : missing)).join('');
}

/** The text on one line, with all that scripts are written with. */
const shapedLine = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/[\s\p{Cc}]+/gu, ' ')
    .trim();

/** Whether the fonts have not all of a text, so that its letters must be shaped (`shapes.ts`). */
export const needsShape = (text: string): boolean =>
  !PLAIN_WORDS.test(text) && Array.from(shapedLine(text)).some((character) => !widthOf.has(character));

/** The text on one line: as `printableText` has it, or with its letters that are still to be shaped. */
export const lineOf = (text: string): string => (needsShape(text) ? shapedLine(text) : printableText(text));

/** Written over or under another letter, or not seen. */
const hasNoWidth = /^[\p{M}\p{Cf}]$/u;
const UNITS = 2048;

/** The room to be left for a line of `lineOf`, mm: a letter still to be shaped is no wider than 1 em, in most scripts. */
export function lineRoomMm(line: string, face: Face, sizePt: number): number {
  let units = 0;
  for (const character of line)
    units += widthOf.get(character)?.[face] ?? (hasNoWidth.test(character) ? 0 : UNITS);
  return (units / UNITS) * sizePt * MM_PER_POINT;
}

/**
 * Width of a line of printable text.
 *
 * @param text    as `printableText` gives it
 * @param sizePt  size of the em, points
 * @returns       mm
 * @throws        RangeError for a character that the fonts do not have
 */
export function textWidthMm(text: string, face: Face, sizePt: number): number {
  let units = 0;
  for (const character of text) {
    const width = widthOf.get(character);
    if (width === undefined) throw new RangeError(`The fonts have no “${character}”.`);
    units += width[face];
  }
  return (units / UNITS) * sizePt * MM_PER_POINT;
}

export interface FittedText {
  text: string;
  sizePt: number;
  widthMm: number;
}

/**
 * A line of text made to fit: smaller first, and cut with an ellipsis where it would become too small to read.
 *
 * @param text       anything; what cannot be printed is replaced as in `printableText`
 * @param maxWidthMm never exceeded
 * @param sizePt     size where there is room
 * @param minSizePt  it does not become smaller than this
 * @param cut        `middle` keeps both ends: a board ID differs from the next one at its end
 */
export function fittedText(
  text: string,
  face: Face,
  maxWidthMm: number,
  sizePt: number,
  minSizePt: number,
  cut: 'end' | 'middle',
): FittedText {
  const whole = printableText(text);
  const fitsAtPt = (maxWidthMm / textWidthMm(whole, face, 1)) * (1 - Number.EPSILON * 8);
  if (fitsAtPt >= minSizePt || whole === '') {
    const fittedPt = Math.min(sizePt, whole === '' ? sizePt : fitsAtPt);
    return { text: whole, sizePt: fittedPt, widthMm: textWidthMm(whole, face, fittedPt) };
  }
  for (let saved = whole.length - 1; saved > 0; saved--) {
    const head = cut === 'end' ? saved : Math.ceil(saved / 2);
    const shorter = whole.slice(0, head).trimEnd() + ellipsis + whole.slice(whole.length - (saved - head));
    const widthMm = textWidthMm(shorter, face, minSizePt);
    if (widthMm <= maxWidthMm) return { text: shorter, sizePt: minSizePt, widthMm };
  }
  return { text: '', sizePt: minSizePt, widthMm: 0 };
}
