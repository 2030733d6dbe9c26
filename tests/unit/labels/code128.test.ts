import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { bars, code128 } from '../../../shared-core/labels/code128.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelLayout } from '../../../shared-core/labels/sheet.ts';
import { asRoll, letterSheetLayout } from '../../../shared-core/labels/sheet.ts';
import { aLabel, paperOf, wordsIn } from './a-label.ts';
import { decoded } from './decoded.ts';
import { polygons, rasterise } from './raster.ts';
import { readBars } from './read-bars.ts';

const id = fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,15}$/);

/** The bars of a text alone, 10 modules of white around them. */
function pageOf(text: string): DrawnPage {
  const code = code128(text);
  return {
    widthMm: code.modules + 20,
    heightMm: 30,
    operations: [{ kind: 'modules', xMm: 10, yMm: 10, moduleMm: 1, rectangles: bars(code, 10) }],
  };
}

describe('a label without a Code 128 says why, or at least that it has none', () => {
  const textsOf = (code: string, widthMm: number, heightMm: number) => {
    const sizes = { columns: 1, labelWidthMm: widthMm, labelHeightMm: heightMm, columnGapMm: 0 };
    const layout = asRoll(sizes) as LabelLayout;
    const [page] = drawLabels(
      [{ ...aLabel, code }],
      paperOf(layout, { code: 'code-128' }),
      wordsIn('metric'),
    );
    return page!.operations.flatMap((each) => (each.kind === 'text' ? [each.text] : []));
  };
  test.each([
    ['of letters beyond ASCII', 'ΩΔ-7', 60, 30, 'No barcode for this ID'],
    ['too long', 'NORTH-RIDGE-OAK-2026-LOT-17', 60, 30, 'No room for a barcode'],
    ['on a label too small for either sentence', 'OAK-07', 25, 13, 'No barcode'],
  ])('%s', (_, code, widthMm, heightMm, said) => {
    expect(textsOf(code, widthMm, heightMm)).toContain(said);
  });
});

describe('a Code 128', () => {
  // The reader is zxing's, a general-purpose library of its own making.
  test('of any ID is read back', () => {
    fc.assert(
      fc.property(id, (text) => {
        expect(readBars(rasterise(pageOf(text), 3))).toBe(text);
      }),
      { numRuns: 200 },
    );
  });

  test.each([
    'A',
    '12',
    '123',
    '1234',
    '12345',
    'A1234',
    'A12345',
    'AB123456C',
    '00-11-22',
    'a{z~ !',
    '9'.repeat(16),
  ])('of %j is read back', (text) => expect(readBars(rasterise(pageOf(text), 3))).toBe(text));

  // ISO/IEC 15417 (from memory): 11 modules a symbol character, 13 to end; two digits to one character in set C.
  test.each([
    ['OAK-07', 11 * 8 + 13],
    ['12345678', 11 * 6 + 13],
    ['A1234', 11 * (1 + 1 + 1 + 2 + 1) + 13],
  ])('of %s has %f modules', (text, modules) => {
    expect(code128(text).modules).toBe(modules);
  });

  test.each(['', 'ł', 'a\nb'])('of %j is refused', (text) => {
    expect(() => code128(text)).toThrow(RangeError);
  });
});

const roll = (labelWidthMm: number, labelHeightMm: number) =>
  asRoll({ columns: 1, labelWidthMm, labelHeightMm, columnGapMm: 0 }) as LabelLayout;

describe('on a label', () => {
  test.each([
    ['a sheet', letterSheetLayout, null],
    ['a roll at 203 dots to the inch', roll(50, 25), 203],
    ['a roll at 300', roll(50, 25), 300],
    ['a large label', roll(100, 150), 203],
  ] as const)('of %s it is read back, all other ink above it', (_, layout, dotsPerInch) => {
    const [page] = drawLabels(
      [aLabel],
      paperOf(layout, { code: 'code-128', dotsPerInch }),
      wordsIn('metric'),
    );
    expect(readBars(rasterise(page!, 12))).toBe('OAK-07');
  });

  test('too narrow for it, the label says so and shows its ID', () => {
    const [page] = drawLabels([aLabel], paperOf(roll(25, 13), { code: 'code-128' }), wordsIn('metric'));
    const texts = page!.operations.flatMap((operation) =>
      operation.kind === 'text' ? [operation.text] : [],
    );
    expect(texts[0]).toBe('OAK-07');
    expect(page!.operations.filter(({ kind }) => kind === 'modules')).toEqual([]);
  });

  test('without a code, the text has the whole label', () => {
    const [page] = drawLabels([aLabel], paperOf(roll(25, 13), { code: 'none' }), wordsIn('metric'));
    const shown = page!.operations.map((operation) => (operation.kind === 'text' ? operation.text : null));
    expect(shown).toEqual(['OAK-07', null, 'Bring in']);
  });
});

describe('for a printer with dots', () => {
  // A dot is 25.4 mm / 203, and so on.
  test.each([203, 300, 600] as const)(
    'every edge of a code is on a whole dot: %f to the inch',
    (dotsPerInch) => {
      const dotMm = 25.4 / dotsPerInch;
      for (const code of ['qr', 'code-128'] as const) {
        const layout = roll(60, 30);
        const paper = paperOf(layout, {
          code,
          dotsPerInch,
          calibration: { offsetXMm: 0.7, offsetYMm: -0.3, scaleX: 1.004, scaleY: 0.997 },
        });
        const [page] = drawLabels([aLabel], paper, wordsIn('metric'), 0, 'printer');
        const codes = page!.operations.filter(({ kind }) => kind === 'modules');
        expect(codes).toHaveLength(1);
        for (const at of codes.flatMap(polygons).flat(2)) {
          const dots = at / dotMm;
          expect(Math.abs(dots - Math.round(dots)) * dotMm).toBeLessThan(1e-6);
        }
      }
    },
  );

  test('the smallest label of 25 × 13 mm has a QR code that is read at 203 dots to the inch', () => {
    const paper = paperOf(roll(25, 13), { dotsPerInch: 203 });
    const [page] = drawLabels([{ ...aLabel, code: 'ABCDEFGH-1234567' }], paper, wordsIn('metric'));
    expect(decoded(rasterise(page!, (203 / 25.4) * 2))).toBe('ABCDEFGH-1234567');
  });
});
