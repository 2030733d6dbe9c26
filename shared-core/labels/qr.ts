import qrcode from 'qrcode-generator';
import type { Rectangle } from '../drawing/page.ts';

/** White around a QR code, in modules (ISO/IEC 18004, from memory). */
export const quietZoneModules = 4;

/** Smallest module that a phone reads off a label in a shed, mm: common practice, no source. */
export const smallestModuleMm = 0.33;

/** A QR code as its square of modules, without the quiet zone. */
export interface QrCode {
  modules: number;
  isDark(row: number, column: number): boolean;
}

/** The 45 characters of QR's alphanumeric mode (ISO/IEC 18004, from memory): a smaller code than bytes would make. */
const alphanumeric = /^[0-9A-Z $%*+\-./:]*$/;

/**
 * QR code of a text, error correction level M (about 15 % of the code may be damaged), smallest version that holds it.
 * Other than alphanumeric texts are coded as the bytes of their UTF-8 form, as phones expect.
 *
 * @throws RangeError when the text is empty, is too long for any QR code or has half of a surrogate pair
 */
export function qrCode(text: string): QrCode {
  if (text === '') throw new RangeError('A QR code needs a text.');
  const code = qrcode(0, 'M');
  try {
    if (alphanumeric.test(text)) code.addData(text, 'Alphanumeric');
    else code.addData(utf8(text), 'Byte');
    code.make();
  } catch (cause) {
    throw new RangeError(`No QR code can be made of a text of ${text.length} characters like this.`, {
      cause,
    });
  }
  return { modules: code.getModuleCount(), isDark: (row, column) => code.isDark(row, column) };
}

/** The UTF-8 bytes, each as a character of that code, which is what the generator takes for bytes. */
function utf8(text: string): string {
  return encodeURIComponent(text).replace(/%(..)/g, (_, hex: string) =>
    String.fromCharCode(Number.parseInt(hex, 16)),
  );
}

/** The dark modules, in each row those beside each other as one. */
export function darkRuns({ modules, isDark }: QrCode): Rectangle[] {
  const runs: Rectangle[] = [];
  for (let row = 0; row < modules; row++) {
    let start = 0;
    for (let column = 0; column <= modules; column++) {
      if (column < modules && isDark(row, column)) continue;
      if (column > start) runs.push([start, row, column - start, 1]);
      start = column + 1;
    }
  }
  return runs;
}
