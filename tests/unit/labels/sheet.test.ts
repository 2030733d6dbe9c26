import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  a4SheetLayout,
  type LabelLayout,
  labelLayoutSchema,
  labelPositions,
  letterSheetLayout,
  printableArea,
  singleLabelLayout,
} from '../../../shared-core/labels/sheet.ts';
import { anyLayout } from './layouts.ts';

function sentences(layout: LabelLayout): string[] {
  return labelLayoutSchema.safeParse(layout).error?.issues.map((issue) => issue.message) ?? [];
}

describe('the layouts that come with the app', () => {
  test.each([
    ['US Letter', letterSheetLayout],
    ['A4', a4SheetLayout],
    ['single', singleLabelLayout],
  ])('%s is accepted', (_, layout) => {
    expect(sentences(layout)).toEqual([]);
  });

  // US Letter is 8 1/2 x 11 in (ANSI/ASME Y14.1), A4 is 210 x 297 mm (ISO 216); both from memory.
  test('the sheets have the standard page sizes', () => {
    expect(letterSheetLayout.pageWidthMm / 25.4).toBeCloseTo(8.5, 10);
    expect(letterSheetLayout.pageHeightMm / 25.4).toBeCloseTo(11, 10);
    expect(a4SheetLayout).toMatchObject({ pageWidthMm: 210, pageHeightMm: 297 });
  });

  test('a Letter label is 2 5/8 by 1 in, and the sheet is symmetric on its page', () => {
    const { labelWidthMm, labelHeightMm, leftMm, topMm, columnGapMm } = letterSheetLayout;
    expect(labelWidthMm / 25.4).toBeCloseTo(2.625, 10);
    expect(labelHeightMm).toBe(25.4);
    expect(2 * leftMm + 3 * labelWidthMm + 2 * columnGapMm).toBeCloseTo(215.9, 10);
    expect(2 * topMm + 10 * labelHeightMm).toBeCloseTo(279.4, 10);
  });

  test.each([
    ['US Letter', letterSheetLayout],
    ['A4', a4SheetLayout],
  ])('%s: 30 labels to a page, the 31st begins the next', (_, layout) => {
    const positions = labelPositions(31, layout, 0);
    expect(positions.filter(({ page }) => page === 0)).toHaveLength(30);
    expect(positions[30]).toEqual({ page: 1, xMm: layout.leftMm, yMm: layout.topMm });
  });
});

describe('a layout that cannot work is refused with a sentence', () => {
  test('too wide', () => {
    expect(sentences({ ...letterSheetLayout, labelWidthMm: 80 })).toEqual([
      'The labels reach 251.1 mm across, but the page is 215.9 mm wide. Use narrower labels, fewer columns or a wider page.',
    ]);
  });

  test('too high', () => {
    expect(sentences({ ...letterSheetLayout, rows: 11 })).toEqual([
      'The labels reach 292.1 mm down, but the page is 279.4 mm high. Use lower labels, fewer rows or a longer page.',
    ]);
  });

  test('too small to read', () => {
    expect(sentences({ ...letterSheetLayout, labelHeightMm: 12 })).toEqual([
      'Of each label only 63.7 mm by 9 mm can be printed on, and the ID with its QR code needs 40 by 14 mm. Use larger labels.',
    ]);
  });

  test('a single label of several', () => {
    expect(sentences({ ...singleLabelLayout, columns: 2 })).toEqual([
      'A single label has one column and one row. Choose a sheet for more.',
    ]);
  });

  test.each(['leftMm', 'labelWidthMm', 'columns', 'rows', 'pageWidthMm'] as const)(
    '%s that is no size',
    (field) => {
      for (const size of [-1, Number.NaN, Number.POSITIVE_INFINITY, 1e9]) {
        expect(labelLayoutSchema.safeParse({ ...letterSheetLayout, [field]: size }).success).toBe(false);
      }
    },
  );
});

describe('used labels are skipped', () => {
  test('the first label goes to the first free place, along the rows', () => {
    expect(labelPositions(1, a4SheetLayout, 4)).toEqual([{ page: 0, xMm: 70, yMm: 29.7 }]);
  });

  test('only on the first page', () => {
    const pages = labelPositions(60, a4SheetLayout, 29).map(({ page }) => page);
    expect([0, 1, 2].map((page) => pages.filter((of) => of === page).length)).toEqual([1, 30, 29]);
  });

  test.each([30, -1, 1.5, Number.NaN])('%f of 30 cannot be skipped', (skip) => {
    expect(() => labelPositions(1, a4SheetLayout, skip)).toThrow(/enter a whole number from 0 to 29\.$/);
  });
});

test('on every accepted layout no label leaves its page, none overlap, and ink keeps off the edge of the paper', () => {
  fc.assert(
    fc.property(anyLayout, fc.integer({ min: 0, max: 100 }), (layout, used) => {
      const perPage = layout.columns * layout.rows;
      const positions = labelPositions(perPage, layout, used % perPage);
      const near = 1e-6;
      for (const { xMm, yMm } of positions) {
        expect(xMm).toBeGreaterThanOrEqual(0);
        expect(yMm).toBeGreaterThanOrEqual(0);
        // The layout may exceed its page by 0.01 mm, for inch sizes rounded to mm.
        expect(xMm + layout.labelWidthMm).toBeLessThanOrEqual(layout.pageWidthMm + 0.01 + near);
        expect(yMm + layout.labelHeightMm).toBeLessThanOrEqual(layout.pageHeightMm + 0.01 + near);
      }
      for (const [index, one] of positions.entries()) {
        for (const other of positions.slice(index + 1)) {
          const apart =
            one.page !== other.page ||
            Math.abs(one.xMm - other.xMm) >= layout.labelWidthMm - near ||
            Math.abs(one.yMm - other.yMm) >= layout.labelHeightMm - near;
          expect(apart).toBe(true);
        }
      }
      const area = printableArea(layout);
      for (const { xMm, yMm } of positions) {
        expect(xMm + area.xMm).toBeGreaterThanOrEqual(5 - near);
        expect(yMm + area.yMm).toBeGreaterThanOrEqual(5 - near);
        expect(xMm + area.xMm + area.widthMm).toBeLessThanOrEqual(layout.pageWidthMm - 5 + near);
        expect(yMm + area.yMm + area.heightMm).toBeLessThanOrEqual(layout.pageHeightMm - 5 + near);
      }
    }),
    { numRuns: 60 },
  );
});
