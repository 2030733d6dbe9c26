import { describe, expect, test } from 'vitest';
import { draftOfLayout, layoutOf } from '../../../../renderer/features/settings/layout-draft.ts';
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

  test('are typed and shown in inches and saved in mm', () => {
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
    expect(problems.labelWidthMm).toEqual({
      code: 'labels.too-wide',
      facts: { overMm: expect.closeTo(65.2, 1) },
    });
  });

  test('that are missing, not whole or out of range each get a problem', () => {
    const draft = draftOfLayout(letterSheetLayout, 'metric');
    expect(layoutOf({ ...draft, topMm: null }, letterSheetLayout, 'metric').problems).toEqual({
      topMm: { code: 'settings.size-missing' },
    });
    expect(layoutOf({ ...draft, columns: 2.5 }, letterSheetLayout, 'metric').problems).toEqual({
      columns: { code: 'settings.not-whole' },
    });
    expect(layoutOf({ ...draft, rows: 100 }, letterSheetLayout, 'metric').problems).toEqual({
      rows: { code: 'settings.count-too-large', facts: { most: 60 } },
      // So many also do not fit the page.
      labelHeightMm: expect.objectContaining({ code: 'labels.too-tall' }),
    });
    expect(layoutOf({ ...draft, leftMm: -1 }, letterSheetLayout, 'metric').problems).toEqual({
      leftMm: { code: 'settings.size-too-small', facts: { leastMm: 0 } },
    });
    expect(layoutOf({ ...draft, pageWidthMm: Number.NaN }, letterSheetLayout, 'metric').problems).toEqual({
      pageWidthMm: { code: 'settings.not-a-number' },
    });
  });

  test('name a limit in inches as a tape shows it, within the limit', () => {
    // 1200 mm is 47.24 in, 20 mm is 0.79 in.
    const draft = draftOfLayout(letterSheetLayout, 'imperial');
    const problemsAt = (pageWidthMm: number) =>
      layoutOf({ ...draft, pageWidthMm }, letterSheetLayout, 'imperial').problems.pageWidthMm;
    expect(problemsAt(50)).toEqual({
      code: 'settings.size-too-large',
      facts: { mostMm: expect.closeTo(47.1875 * 25.4, 9) },
    });
    expect(problemsAt(0.5)).toEqual({
      code: 'settings.size-too-small',
      facts: { leastMm: expect.closeTo(0.8125 * 25.4, 9) },
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
    expect(layoutOf(draft, singleLabelLayout, 'metric').problems.pageHeightMm?.code).toBe(
      'labels.too-short-for-code',
    );
  });
});
