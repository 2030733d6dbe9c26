import { expect, test } from 'vitest';
import { createShaper } from '../../../electron/print/shape-text.ts';
import { shapedPages, textsOfPages } from '../../../shared-core/drawing/shaped-pages.ts';
import { noShapes } from '../../../shared-core/drawing/shapes.ts';
import { drawReport } from '../../../shared-core/reports/draw-report.ts';
import { wordsIn } from '../labels/a-label.ts';
import { aBoardRow, aStack } from '../renderer/stacks/a-yard.ts';
import { aBuyerSheet, aPassport, aStackReport } from './a-report.ts';

const words = wordsIn('metric');
const shape = createShaper();
const MARGIN_MM = 15;

/** "Black walnut" in Chinese, Korean, Arabic, Hindi, Bengali, Tamil and Thai (from memory). */
const names = [
  '黑胡桃木'.repeat(20),
  '검은 호두나무',
  'الجوز الأسود',
  'काला अखरोट',
  'কালো আখরোট',
  'கருப்பு வால்நட்',
  'วอลนัทดำ',
];

const board = (speciesName: string) =>
  aBoardRow(7, { speciesName, placeName: speciesName, note: `${speciesName} ${speciesName}` });

test.each(names)('a report prints the letters of %s, inside its page', (name) => {
  for (const content of [
    aPassport({ board: board(name) }),
    aBuyerSheet({ board: board(name) }),
    aStackReport({ stack: aStack({ name, speciesNames: [name] }) }),
  ]) {
    const drawn = drawReport(content, 'a4', words);
    const texts = textsOfPages(drawn);
    expect(texts.length).toBeGreaterThan(0);
    const operations = shapedPages(drawn, shape(texts)).flatMap((page) => page.operations);
    const outlined = operations.filter((operation) => operation.kind === 'outlines');
    expect(outlined.map(({ text }) => text)).toEqual(expect.arrayContaining(texts));
    for (const { xMm, widthMm, glyphs } of outlined) {
      expect(xMm + widthMm).toBeLessThanOrEqual(210 - MARGIN_MM + 1e-6);
      expect(glyphs.some(({ d }) => d !== '')).toBe(true);
    }
    const printed = operations.flatMap((operation) => (operation.kind === 'text' ? [operation.text] : []));
    expect(printed.filter((text) => text.includes('□'))).toEqual([]);
  }
});

test('until letters are shaped, boxes stand for them, and all else is as it was', () => {
  const drawn = drawReport(aBuyerSheet({ board: board('黑胡桃木') }), 'a4', words);
  const texts = shapedPages(drawn, noShapes).flatMap(({ operations }) =>
    operations.flatMap((operation) => (operation.kind === 'text' ? [operation.text] : [])),
  );
  expect(texts).toContain('□□□□');
  expect(shapedPages(drawReport(aBuyerSheet(), 'a4', words), noShapes)).toEqual(
    drawReport(aBuyerSheet(), 'a4', words),
  );
});

test.each(['bring-in', 'keep-drying'] as const)(
  'a sheet for a buyer gives no order of the yard: %s',
  (call) => {
    const sheet = aBuyerSheet();
    const drawn = drawReport({ ...sheet, judgement: { ...sheet.judgement, call } }, 'a4', words);
    const texts = drawn.flatMap(({ operations }) =>
      operations.flatMap((operation) => (operation.kind === 'text' ? [operation.text] : [])),
    );
    expect(texts).toContain('Not at target yet');
    expect(texts.join(' ')).not.toMatch(/Bring|Keep drying/);
  },
);
