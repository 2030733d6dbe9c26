import { createRequire } from 'node:module';
import fc from 'fast-check';
import PDFDocument from 'pdfkit';
import { describe, expect, test } from 'vitest';
import { advanceWidths } from '../../../shared-core/drawing/advance-widths.ts';
import { fittedText, printableText, textWidthMm } from '../../../shared-core/drawing/fitted-text.ts';

// The font files themselves, read by pdfkit's font engine: the same advance width for every character listed.
test.each([
  ['DejaVuSansCondensed.ttf', 1],
  ['DejaVuSansCondensed-Bold.ttf', 2],
] as const)('the widths are those of %s', (file, face) => {
  const font = createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${file}`);
  const document = new PDFDocument({ font, autoFirstPage: false }).fontSize(2048);
  for (const run of advanceWidths) {
    const measured = run[face].map((_, index) =>
      document.widthOfString(String.fromCodePoint(run[0] + index)),
    );
    expect(measured.map(Math.round)).toEqual([...run[face]]);
  }
});

describe('what a label can show', () => {
  test.each([
    ['Frêne élevé, Jesion wyniosły, Bøg, Ясень, Δ', 'Frêne élevé, Jesion wyniosły, Bøg, Ясень, Δ'],
    ['¾ ⅝ 20 °C ±0.5 – 8 %', '¾ ⅝ 20 °C ±0.5 – 8 %'],
    ['e\u0301le\u0300ve', 'élève'],
    ['two\nlines\tand\u0000more', 'two lines and more'],
    ['\u202Eoak\u202C', 'oak'],
    ['oak 🌳', 'oak □'],
    ['أرز cedar', '□□□ cedar'],
    ['', ''],
    [' \u200B ', ''],
  ])('%j is printed as %j', (text, printed) => {
    expect(printableText(text)).toBe(printed);
  });

  test('every character of Latin and of typography that is printed as it is has its width', () => {
    const plain = ['!~', '¡¬', '®ſ', '––', '——', '……', '−−'].flatMap(([first, last]) => {
      const from = first!.codePointAt(0)!;
      return Array.from({ length: last!.codePointAt(0)! - from + 1 }, (_, index) =>
        String.fromCodePoint(from + index),
      );
    });
    for (const character of plain) {
      expect(printableText(character)).toBe(character);
      expect(textWidthMm(character, 'regular', 1)).toBeGreaterThan(0);
    }
  });

  test('a width of a character that the fonts lack is refused, never guessed', () => {
    expect(() => textWidthMm('🌳', 'bold', 10)).toThrow(RangeError);
  });
});

describe('fitting', () => {
  test('text that has room keeps its size', () => {
    expect(fittedText('OAK-07', 'bold', 40, 16, 4, 'middle')).toMatchObject({ text: 'OAK-07', sizePt: 16 });
  });

  test('text that is a little long becomes smaller and stays whole', () => {
    const fit = fittedText('CHERRY-BUTT-0012', 'bold', 40, 16, 4, 'middle');
    expect(fit.text).toBe('CHERRY-BUTT-0012');
    expect(fit.sizePt).toBeLessThan(16);
    expect(fit.widthMm).toBeCloseTo(40, 6);
  });

  test('a name is cut at its end', () => {
    expect(fittedText('Black cherry of the old orchard', 'regular', 20, 8, 7, 'end').text).toBe(
      'Black cherry of…',
    );
  });

  test('an ID is cut in the middle: the next one differs at its end', () => {
    expect(fittedText('CHERRY-BUTT-0012', 'bold', 20, 12, 10, 'middle').text).toMatch(/^CH.*….*12$/);
  });

  test('no text of any kind is wider than it may be, and what is left is its own beginning', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: 'binary', maxLength: 500 }),
        fc.constantFrom('regular' as const, 'bold' as const),
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.double({ min: 4, max: 60, noNaN: true }),
        fc.constantFrom('end' as const, 'middle' as const),
        (text, face, maxWidthMm, sizePt, cut) => {
          const fit = fittedText(text, face, maxWidthMm, sizePt, 4, cut);
          expect(fit.widthMm).toBeLessThanOrEqual(maxWidthMm);
          expect(fit.widthMm).toBe(textWidthMm(fit.text, face, fit.sizePt));
          expect(fit.sizePt).toBeGreaterThanOrEqual(4);
          expect(fit.sizePt).toBeLessThanOrEqual(sizePt);
          const [head = ''] = fit.text.split('…');
          if (!printableText(text).includes('…')) expect(printableText(text).startsWith(head)).toBe(true);
        },
      ),
    );
  });
});
