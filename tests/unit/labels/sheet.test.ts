import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  a4SheetLayout,
  asRoll,
  type LabelLayout,
  labelLayoutSchema,
  labelPositions,
  letterSheetLayout,
  printableArea,
  problemOfUsed,
  rollLayout,
} from '../../../shared-core/labels/sheet.ts';
import { anyLayout } from './layouts.ts';

/** What is wrong with a layout, as codes with their facts. */
function problems(layout: LabelLayout): unknown[] {
  const issues = labelLayoutSchema.safeParse(layout).error?.issues ?? [];
  return issues.map((issue) => [issue.path[0], issue.message, issue.code === 'custom' && issue.params]);
}

describe('the layouts that come with the app', () => {
  test.each([
    ['US Letter', letterSheetLayout],
    ['A4', a4SheetLayout],
    ['a roll', rollLayout],
  ])('%s is accepted', (_, layout) => {
    expect(problems(layout)).toEqual([]);
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

describe('a layout that cannot work is refused, with how much it is off', () => {
  test('too wide', () => {
    // 4.7625 + 3 × 80 + 2 × 3.175 mm is 251.1125 mm, on 215.9 mm of page.
    expect(problems({ ...letterSheetLayout, labelWidthMm: 80 })).toEqual([
      ['labelWidthMm', 'labels.too-wide', { overMm: expect.closeTo(35.2125) }],
    ]);
  });

  test('too tall', () => {
    expect(problems({ ...letterSheetLayout, rows: 11 })).toEqual([
      ['labelHeightMm', 'labels.too-tall', { overMm: expect.closeTo(12.7) }],
    ]);
  });

  test('too small for the ID and its code, which need 21 × 9 mm inside 1.5 mm of white', () => {
    expect(problems({ ...letterSheetLayout, labelHeightMm: 11 })).toEqual([
      ['labelHeightMm', 'labels.too-short-for-code', { missingMm: expect.closeTo(1) }],
    ]);
    expect(problems({ ...letterSheetLayout, labelWidthMm: 23 })).toEqual([
      ['labelWidthMm', 'labels.too-narrow-for-code', { missingMm: expect.closeTo(1) }],
    ]);
  });

  test('a roll of more than one row', () => {
    expect(problems({ ...rollLayout, rows: 2, pageHeightMm: 60 })).toEqual([
      ['rows', 'labels.roll-has-one-row', undefined],
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

  test('all but one may be', () => expect(problemOfUsed(29, a4SheetLayout)).toBeNull());

  test('only on the first page', () => {
    const pages = labelPositions(60, a4SheetLayout, 29).map(({ page }) => page);
    expect([0, 1, 2].map((page) => pages.filter((of) => of === page).length)).toEqual([1, 30, 29]);
  });

  test.each([30, -1, 1.5, Number.NaN])('%f of 30 cannot be skipped', (used) => {
    expect(problemOfUsed(used, a4SheetLayout)).toEqual({
      code: 'labels.too-many-used',
      facts: { labels: 30, mostUsed: 29 },
    });
    expect(() => labelPositions(1, a4SheetLayout, used)).toThrow(RangeError);
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

// From the smallest to the largest that are sold for lumber: common practice, no source.
test.each([
  [25, 13],
  [50, 25],
  [100, 150],
])('a roll of labels of %f × %f mm is accepted, also two abreast', (labelWidthMm, labelHeightMm) => {
  for (const columns of [1, 2]) {
    const layout = asRoll({ columns, labelWidthMm, labelHeightMm, columnGapMm: 3 });
    expect(problems(layout as LabelLayout)).toEqual([]);
    expect(layout.pageWidthMm).toBe(columns * labelWidthMm + (columns - 1) * 3);
  }
});
