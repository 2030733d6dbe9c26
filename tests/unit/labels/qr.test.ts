import fc from 'fast-check';
import { expect, test } from 'vitest';
import { darkRuns, qrCode, quietZoneModules } from '../../../shared-core/labels/qr.ts';
import { decoded } from './decoded.ts';
import { rasterise } from './raster.ts';

/** The text that an independent decoder reads from the code's drawn modules, some of them inverted. */
function readBack(text: string, damaged: (row: number, column: number) => boolean = () => false) {
  const code = qrCode(text);
  const drawn = {
    modules: code.modules,
    isDark: (row: number, column: number) => code.isDark(row, column) !== damaged(row, column),
  };
  const sideMm = code.modules + 2 * quietZoneModules;
  return decoded(
    rasterise(
      {
        widthMm: sideMm,
        heightMm: sideMm,
        operations: [
          {
            kind: 'modules',
            xMm: quietZoneModules,
            yMm: quietZoneModules,
            moduleMm: 1,
            rectangles: darkRuns(drawn),
          },
        ],
      },
      4,
    ),
  );
}

test.each(['OAK-07', 'A', '1', '00', 'CHERRY-BUTT-0012', 'oak-07', 'Bøg 3 ¾', '栗-1', '🌳'])(
  'the code of %s is read back by another library',
  (text) => {
    expect(readBack(text)).toBe(text);
  },
);

test('so is the code of every board ID', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,15}$/), (text) => {
      expect(readBack(text)).toBe(text);
    }),
    { numRuns: 50 },
  );
});

// ISO/IEC 18004: version 1 has 21 modules and holds 20 alphanumeric characters at level M (from memory).
test('a board ID of up to 16 characters fits the smallest version', () => {
  expect(qrCode('CHERRY-BUTT-0012').modules).toBe(21);
});

// ISO/IEC 18004: version 1-M corrects 4 of its 26 codewords, 1-L only 2 (from memory). The lower right
// corner, 4 columns by 8 rows, is four whole codewords.
test('a staple through a corner of four codewords is survived, which level L would not', () => {
  expect(readBack('OAK-07', (row, column) => row >= 13 && column >= 17)).toBe('OAK-07');
  expect(readBack('OAK-07', (row, column) => row >= 13 && column >= 13)).toBeNull();
});

test.each([
  ['nothing', ''],
  ['more than any code holds', 'x'.repeat(3000)],
  ['half a character', 'OAK\uD800'],
])('%s is refused', (_, text) => {
  expect(() => qrCode(text)).toThrow(RangeError);
});
