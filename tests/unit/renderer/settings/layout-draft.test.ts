// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { draftOfLayout, layoutOf } from '../../../../renderer/screens/settings/layout-draft.ts';
import { letterSheetLayout, singleLabelLayout } from '../../../../shared-core/labels/sheet.ts';

describe('Sizes of a sheet of labels in a form', () => {
  test.each(['metric', 'imperial'] as const)(
    'untouched in %s units they stay exactly as they were',
    (units) => {
      expect(layoutOf(draftOfLayout(letterSheetLayout, units), letterSheetLayout, units)).toEqual({
        layout: letterSheetLayout,
        problems: {},
      });
    },
  );

  test('are typed and shown in inches and kept in mm', () => {
    const draft = draftOfLayout(letterSheetLayout, 'imperial');
    expect(draft).toMatchObject({ pageWidthMm: 8.5, pageHeightMm: 11, labelWidthMm: 2.625, columns: 3 });
    // 2 in = 50.8 mm by definition.
    const { layout } = layoutOf({ ...draft, labelWidthMm: 2 }, letterSheetLayout, 'imperial');
    expect(layout?.labelWidthMm).toBeCloseTo(50.8, 9);
  });

  test('that do not fit their page are refused at the size to change', () => {
    const draft = { ...draftOfLayout(letterSheetLayout, 'metric'), labelWidthMm: 90 };
    const { layout, problems } = layoutOf(draft, letterSheetLayout, 'metric');
    expect(layout).toBeNull();
    expect(problems.labelWidthMm).toMatch(/^65 mm too wide for the page\./);
  });

  test('that are missing, not whole or out of range are each said in a sentence', () => {
    const draft = draftOfLayout(letterSheetLayout, 'metric');
    expect(layoutOf({ ...draft, topMm: null }, letterSheetLayout, 'metric').problems).toEqual({
      topMm: 'This size is needed.',
    });
    expect(layoutOf({ ...draft, columns: 2.5 }, letterSheetLayout, 'metric').problems).toEqual({
      columns: 'This must be a whole number.',
    });
    expect(layoutOf({ ...draft, rows: 100 }, letterSheetLayout, 'metric').problems).toEqual({
      rows: 'This must be at most 60.',
      // So many also do not fit the page.
      labelHeightMm: expect.stringMatching(/too tall for the page/),
    });
    expect(layoutOf({ ...draft, leftMm: -1 }, letterSheetLayout, 'metric').problems).toEqual({
      leftMm: 'This must be at least 0 mm.',
    });
    expect(layoutOf({ ...draft, pageWidthMm: Number.NaN }, letterSheetLayout, 'metric').problems).toEqual({
      pageWidthMm: 'This must be a number.',
    });
  });
});

describe('The size of a single label', () => {
  test('is its page', () => {
    const draft = { ...draftOfLayout(singleLabelLayout, 'metric'), pageWidthMm: 80, pageHeightMm: 40 };
    expect(layoutOf(draft, singleLabelLayout, 'metric').layout).toEqual({
      ...singleLabelLayout,
      pageWidthMm: 80,
      pageHeightMm: 40,
      labelWidthMm: 80,
      labelHeightMm: 40,
    });
  });

  test('too small for an ID with its QR code is refused where it was typed', () => {
    const draft = { ...draftOfLayout(singleLabelLayout, 'metric'), pageHeightMm: 12 };
    expect(layoutOf(draft, singleLabelLayout, 'metric').problems.pageHeightMm).toMatch(/Use taller labels/);
  });
});
