import type { Rectangle } from '../drawing/page.ts';

/**
 * Widths of the bars and spaces of each symbol character, in modules, a bar first (ISO/IEC 15417, table 1, from memory).
 * The values 0 to 102 are data and code sets, 103 to 105 begin with set A, B or C, and 106 ends.
 */
const SYMBOLS = (
  '212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132 122231 113222 ' +
  '123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212 322112 322211 212123 212321 ' +
  '232121 111323 131123 131321 112313 132113 132311 211313 231113 231311 112133 112331 132131 113123 113321 133121 ' +
  '313121 211331 231131 213113 213311 213131 311123 311321 331121 312113 312311 332111 314111 221411 431111 111224 ' +
  '111422 121124 121421 141122 141221 112214 112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 ' +
  '111242 121142 121241 114212 124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 ' +
  '114311 411113 411311 113141 114131 311141 411131 211412 211214 211232 2331112'
).split(' ');

const TO_C = 99;
const TO_B = 100;
const START_B = 104;
const START_C = 105;
const STOP = 106;

/** White at both ends, in modules (ISO/IEC 15417, from memory). */
export const quietModules = 10;

/** A bar code as the widths of its bars and spaces in turn, in modules, a bar first and last. */
export interface BarCode {
  widths: readonly number[];
  /** All of them together. */
  modules: number;
}

/** Whether a text has a Code 128 here, of whatever length. */
export const hasBarCode = (text: string): boolean => /^[ -~]+$/.test(text);

/**
 * Code 128 of a text, two digits to a symbol character where that is shorter.
 *
 * @throws RangeError for an empty text, and for one with other characters than those of printable ASCII
 */
export function code128(text: string): BarCode {
  if (!hasBarCode(text)) throw new RangeError('A Code 128 holds printable ASCII, and at least one of it.');
  const values = symbolValues(text);
  const check = values.reduce((sum, value, index) => sum + value * Math.max(1, index), 0) % 103;
  const widths = [...values, check, STOP].flatMap((value) => [...(SYMBOLS[value] as string)].map(Number));
  return { widths, modules: widths.reduce((sum, width) => sum + width, 0) };
}

/** The start and the text; where digits go in pairs is the rule of annex E of ISO/IEC 15417 (from memory). */
function symbolValues(text: string): number[] {
  const values: number[] = [];
  let set: 'B' | 'C' | null = null;
  let at = 0;
  while (at < text.length) {
    const digits = /^\d*/.exec(text.slice(at))?.[0].length ?? 0;
    const isAtAnEnd = at === 0 || at + digits === text.length;
    const isOnlyAPair = digits === 2 && text.length === 2;
    const wantsC: boolean = set === 'C' ? digits >= 2 : digits >= (isAtAnEnd ? 4 : 6) || isOnlyAPair;
    // The first of an odd number of digits stays with what is before them.
    const isOdd = digits % 2 === 1;
    if (wantsC && set !== 'C' && !(isOdd && at > 0)) {
      values.push(set === null ? START_C : TO_C);
      set = 'C';
    } else if (set === null || (set === 'C' && !wantsC)) {
      values.push(set === null ? START_B : TO_B);
      set = 'B';
    }
    if (set === 'C') {
      values.push(Number(text.slice(at, at + 2)));
      at += 2;
    } else {
      values.push(text.charCodeAt(at) - 32);
      at += 1;
    }
  }
  return values;
}

/** @param height  in modules */
export function bars({ widths }: BarCode, height: number): Rectangle[] {
  let at = 0;
  return widths.flatMap((width, index) => {
    const x = at;
    at += width;
    return index % 2 === 0 ? [[x, 0, width, height] as const] : [];
  });
}
