import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { callMarks } from '../../../shared-core/labels/call-mark.ts';
import { drawLabels, type Operation, type TextOperation } from '../../../shared-core/labels/drawing.ts';
import { textWidthMm } from '../../../shared-core/labels/fitted-text.ts';
import { type LabelContent, labelContent } from '../../../shared-core/labels/label.ts';
import {
  a4SheetLayout,
  type LabelLayout,
  labelLayoutSchema,
  labelPositions,
  letterSheetLayout,
  singleLabelLayout,
} from '../../../shared-core/labels/sheet.ts';
import { decoded } from './decoded.ts';
import { anyLayout } from './layouts.ts';
import { polygons, rasterise } from './raster.ts';

const oak = labelContent({
  code: 'OAK-07',
  speciesName: 'Northern red oak',
  thicknessMm: 27,
  units: 'metric',
  latest: {
    averagePct: 12.4,
    shellPct: 11.2,
    corePct: 13.1,
    lowPct: 11.6,
    highPct: 13.2,
    dateText: '2026-03-12',
  },
  call: 'bring-in',
});

function size(widthMm: number, heightMm: number) {
  return {
    pageWidthMm: widthMm,
    pageHeightMm: heightMm,
    labelWidthMm: widthMm,
    labelHeightMm: heightMm,
  };
}

const smallestLabel: LabelLayout = { ...singleLabelLayout, ...size(44, 18) };

function texts(operations: readonly Operation[]): TextOperation[] {
  return operations.filter((operation) => operation.kind === 'text');
}

function pageOf(content: LabelContent, layout: LabelLayout) {
  const [page] = drawLabels([content], layout);
  if (page === undefined) throw new Error('One label makes one page.');
  return page;
}

/** The dark modules' rectangles of the only QR code on a page. */
function qrRectangles(operations: readonly Operation[]) {
  const codes = operations.filter(
    (operation) => operation.kind === 'path' && operation.fill === 'black' && operation.strokeMm === null,
  );
  expect(codes).toHaveLength(1);
  return codes.flatMap(polygons);
}

describe('a label', () => {
  test('says everything of its board', () => {
    const said = texts(pageOf(oak, letterSheetLayout).operations).map(({ text }) => text);
    expect(said).toEqual([
      'OAK-07',
      '12.4 %',
      'MC 2026-03-12',
      'likely 11.6–13.2 %',
      '27 mm',
      'Northern red oak',
      'shell 11.2 %, core 13.1 %',
      'B',
      'Bring in',
    ]);
  });

  test('its ID and its MC are the largest of all', () => {
    const drawn = texts(pageOf(oak, letterSheetLayout).operations);
    const sizeOf = (text: string) => drawn.find((operation) => operation.text === text)?.sizePt ?? 0;
    const others = drawn.filter(({ text }) => text !== 'OAK-07' && text !== '12.4 %');
    expect(Math.min(sizeOf('OAK-07'), sizeOf('12.4 %'))).toBeGreaterThan(
      1.4 * Math.max(...others.map(({ sizePt }) => sizePt)),
    );
  });

  test('each verdict has a word, a letter and a shape of its own', () => {
    const marks = Object.values(callMarks);
    for (const part of ['word', 'letter', 'shape'] as const) {
      expect(new Set(marks.map((mark) => mark[part])).size).toBe(4);
    }
  });

  test('of a board without a call shows none', () => {
    const unprobed = { ...oak, mcText: 'not probed yet', mcDateText: '', intervalText: '', call: null };
    const { operations } = pageOf(unprobed, letterSheetLayout);
    const said = texts(operations).map(({ text }) => text);
    expect(said).toContain('not probed yet');
    for (const { word } of Object.values(callMarks)) expect(said).not.toContain(word);
    expect(operations.filter(({ kind }) => kind === 'path')).toHaveLength(1);
  });

  test('of a board whose ID is too long for a code says so instead of printing one that cannot be read', () => {
    const long = 'ł'.repeat(80);
    const { operations } = pageOf({ ...oak, boardId: long, qrPayload: long }, smallestLabel);
    expect(texts(operations).map(({ text }) => text)).toEqual(
      expect.arrayContaining(['no QR code:', 'ID too long']),
    );
  });
});

describe('the QR code', () => {
  test.each([
    ['US Letter', letterSheetLayout],
    ['A4', a4SheetLayout],
    ['single', singleLabelLayout],
    ['smallest', smallestLabel],
  ])('on a %s label is read back, all other ink beside it', (_, layout) => {
    expect(labelLayoutSchema.safeParse(layout).success).toBe(true);
    expect(decoded(rasterise(pageOf(oak, layout), 6))).toBe('OAK-07');
  });

  // Quiet zone of 4 modules: ISO/IEC 18004 (from memory). 0.33 mm: common practice, no source.
  test('on every accepted layout has modules of at least 0.33 mm and 4 modules of white on all sides', () => {
    fc.assert(
      fc.property(anyLayout, fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,15}$/), (layout, id) => {
        const { operations } = pageOf({ ...oak, boardId: id, qrPayload: id }, layout);
        const corners = qrRectangles(operations).flat();
        const xs = corners.map(([x]) => x);
        const ys = corners.map(([, y]) => y);
        const [left, right] = [Math.min(...xs), Math.max(...xs)];
        const [top, bottom] = [Math.min(...ys), Math.max(...ys)];
        const moduleMm = (right - left) / 21;
        const near = 1e-3;
        expect(moduleMm).toBeGreaterThanOrEqual(0.33 - near);
        expect(bottom - top).toBeCloseTo(right - left, 2);

        const quietMm = 4 * moduleMm - near;
        expect(left - quietMm).toBeGreaterThanOrEqual(layout.leftMm);
        expect(top - quietMm).toBeGreaterThanOrEqual(layout.topMm);
        expect(right + quietMm).toBeLessThanOrEqual(layout.leftMm + layout.labelWidthMm);
        expect(bottom + quietMm).toBeLessThanOrEqual(layout.topMm + layout.labelHeightMm);
        for (const text of texts(operations)) {
          const box = polygons(text).flat();
          const clear =
            Math.max(...box.map(([x]) => x)) <= left - quietMm ||
            Math.max(...box.map(([, y]) => y)) <= top - quietMm;
          expect(clear).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});

const hostile = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 500 }),
  fc.string({ unit: 'grapheme', maxLength: 500 }),
  fc.constantFrom(
    'W'.repeat(500),
    '\u202Eשלום עולם\u202C',
    'خشب'.repeat(100),
    '\u0000\u001B[31m',
    'Z\u0301\u0302\u0303'.repeat(50),
    '',
  ),
);

describe('whatever the texts are', () => {
  test('all that is printed stays on its label, in characters that the fonts have', () => {
    fc.assert(
      fc.property(
        anyLayout,
        fc.record({
          boardId: hostile,
          speciesName: hostile,
          thicknessText: hostile,
          mcText: hostile,
          mcDateText: hostile,
          intervalText: hostile,
          shellCoreText: hostile,
          call: fc.constantFrom('ready', 'bring-in', 'keep-drying', 'probe-again', null),
          qrPayload: hostile,
        }),
        fc.integer({ min: 0, max: 200 }),
        (layout, content, used) => {
          const skip = used % (layout.columns * layout.rows);
          const [page] = drawLabels([content], layout, skip);
          const [position] = labelPositions(1, layout, skip);
          const operations = page?.operations ?? [];
          expect(operations.length).toBeGreaterThan(0);
          for (const operation of operations) {
            if (operation.kind === 'text') {
              // Throws for a character that the fonts lack.
              expect(textWidthMm(operation.text, operation.face, operation.sizePt)).toBe(operation.widthMm);
            }
            for (const [x, y] of polygons(operation).flat()) {
              expect(x).toBeGreaterThanOrEqual(position?.xMm ?? Number.NaN);
              expect(x).toBeLessThanOrEqual((position?.xMm ?? Number.NaN) + layout.labelWidthMm);
              expect(y).toBeGreaterThanOrEqual(position?.yMm ?? Number.NaN);
              expect(y).toBeLessThanOrEqual((position?.yMm ?? Number.NaN) + layout.labelHeightMm);
            }
          }
        },
      ),
      { numRuns: 100 },
    );
  });

  test.each([letterSheetLayout, { ...singleLabelLayout, ...size(200, 150) }])(
    'accents on capitals stay on the label too, however large they are',
    (layout) => {
      const { operations } = pageOf({ ...oak, boardId: 'ÉÅĖ' }, layout);
      const [[[, topMm = Number.NaN] = []] = []] = polygons(texts(operations)[0] as TextOperation);
      expect(topMm).toBeGreaterThanOrEqual(layout.topMm + 1.5);
    },
  );

  test('the ID, the MC with its day and the verdict are whole on every accepted layout', () => {
    fc.assert(
      fc.property(
        anyLayout,
        fc.oneof(fc.stringMatching(/^[A-Z0-9][A-Z0-9-]{0,15}$/), fc.constant('WWWWWWWWWWWWWWWW')),
        fc.constantFrom(
          'ready' as const,
          'bring-in' as const,
          'keep-drying' as const,
          'probe-again' as const,
        ),
        (layout, id, call) => {
          const content = { ...oak, boardId: id, mcText: '112.4 %', call };
          const said = texts(pageOf(content, layout).operations).map(({ text }) => text);
          for (const whole of [id, '112.4 %', 'MC 2026-03-12', '27 mm', callMarks[call].word]) {
            expect(said).toContain(whole);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

test('31 boards from the third place on take two pages of 30', () => {
  const pages = drawLabels(
    Array.from({ length: 31 }, (_, index) => ({ ...oak, boardId: `OAK-${index + 1}` })),
    letterSheetLayout,
    2,
  );
  const ids = pages.map((page) => texts(page.operations).filter(({ text }) => /^OAK-/.test(text)).length);
  expect(ids).toEqual([28, 3]);
});

test('no boards make no page', () => {
  expect(drawLabels([], letterSheetLayout)).toEqual([]);
});
