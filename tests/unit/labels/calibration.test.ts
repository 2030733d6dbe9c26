import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Calibration,
  calibrationFrom,
  calibrationLines,
  drawnAt,
  printedLines,
} from '../../../shared-core/labels/calibration.ts';
import { calibrationPage } from '../../../shared-core/labels/calibration-page.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { a4SheetLayout, letterSheetLayout, rollLayout } from '../../../shared-core/labels/sheet.ts';
import { aLabel, paperOf, wordsIn } from './a-label.ts';
import { polygons } from './raster.ts';

const aPrinter: fc.Arbitrary<Calibration> = fc.record({
  offsetXMm: fc.double({ min: -5, max: 5, noNaN: true }),
  offsetYMm: fc.double({ min: -5, max: 5, noNaN: true }),
  scaleX: fc.double({ min: 0.95, max: 1.05, noNaN: true }),
  scaleY: fc.double({ min: 0.95, max: 1.05, noNaN: true }),
});
const aLayout = fc.constantFrom(letterSheetLayout, a4SheetLayout, rollLayout);

describe('a calibration', () => {
  test('from where the lines of its page came out is that of the printer', () => {
    fc.assert(
      fc.property(aPrinter, aLayout, (printer, layout) => {
        const meant = calibrationLines(layout);
        const found = calibrationFrom(meant, printedLines(meant, printer));
        if (!('calibration' in found)) throw new Error('It was refused.');
        for (const key of ['offsetXMm', 'offsetYMm', 'scaleX', 'scaleY'] as const) {
          expect(found.calibration[key]).toBeCloseTo(printer[key], 9);
        }
      }),
    );
  });

  test('brings each label to its place: what is told to the printer comes out where it is meant', () => {
    fc.assert(
      fc.property(aPrinter, aLayout, (printer, layout) => {
        const paper = paperOf(layout, { calibration: printer });
        const cornerOf = (isFor: 'paper' | 'printer') => {
          const [page] = drawLabels([aLabel, aLabel], paper, wordsIn('metric'), 0, isFor);
          const [first] = polygons(page!.operations.at(-1)!);
          return { xMm: first![0]![0], yMm: first![0]![1] };
        };
        const told = cornerOf('printer');
        const printed = {
          xMm: printer.offsetXMm + printer.scaleX * told.xMm,
          yMm: printer.offsetYMm + printer.scaleY * told.yMm,
        };
        const meant = cornerOf('paper');
        // A label is moved as a whole: within it, up to 5 % of its size are left.
        expect(Math.abs(printed.xMm - meant.xMm)).toBeLessThan(0.05 * layout.labelWidthMm + 1e-3);
        expect(Math.abs(printed.yMm - meant.yMm)).toBeLessThan(0.05 * layout.labelHeightMm + 1e-3);
      }),
    );
  });

  test('of a printer 1 mm to the right moves a point 1 mm to the left', () => {
    const shifted = { offsetXMm: 1, offsetYMm: 0, scaleX: 1, scaleY: 1 };
    expect(drawnAt({ xMm: 20, yMm: 30 }, shifted)).toEqual({ xMm: 19, yMm: 30 });
  });

  test.each([
    ['a page fitted to the paper', { leftMm: 20, rightMm: 160, topMm: 20, bottomMm: 259.4 }],
    ['lines the wrong way round', { leftMm: 190, rightMm: 20, topMm: 20, bottomMm: 259.4 }],
    ['two at one place', { leftMm: 20, rightMm: 20, topMm: 20, bottomMm: 259.4 }],
  ])('is refused for %s', (_, measured) => {
    expect(calibrationFrom(calibrationLines(letterSheetLayout), measured)).toMatchObject({
      problem: { code: 'labels.measured-too-far-off' },
    });
  });
});

test.each([
  ['a sheet', letterSheetLayout],
  ['a roll', rollLayout],
])('on the page of %s, every line is where it is meant to be measured, and on the paper', (_, layout) => {
  const { operations, widthMm, heightMm } = calibrationPage(layout, wordsIn('metric'));
  const { leftMm, rightMm, topMm, bottomMm } = calibrationLines(layout);
  const [upright, across] = operations.map((operation) => (operation.kind === 'path' ? operation.d : ''));
  expect(upright).toBe(
    `M${leftMm} ${topMm}L${leftMm} ${bottomMm}M${rightMm} ${topMm}L${rightMm} ${bottomMm}`,
  );
  expect(across).toBe(`M${leftMm} ${topMm}L${rightMm} ${topMm}M${leftMm} ${bottomMm}L${rightMm} ${bottomMm}`);
  expect(operations.flatMap((operation) => (operation.kind === 'text' ? [operation.text] : []))).toEqual([
    'A',
    'B',
    'C',
    'D',
  ]);
  for (const operation of operations) {
    if (operation.kind !== 'text') continue;
    const [[[left, top] = [0, 0], , [right, bottom] = [0, 0]] = []] = polygons(operation);
    expect(left).toBeGreaterThan(leftMm);
    expect(right).toBeLessThan(Math.min(widthMm, rightMm));
    expect(top).toBeGreaterThan(topMm);
    expect(bottom).toBeLessThan(Math.min(heightMm, bottomMm));
  }
});
