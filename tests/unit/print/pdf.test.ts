import { getDocument, type PDFDocumentProxy, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import { pdfOf } from '../../../electron/print/pdf.ts';
import { textWidthMm } from '../../../shared-core/drawing/fitted-text.ts';
import type { DrawnPage } from '../../../shared-core/drawing/page.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import type { LabelContent } from '../../../shared-core/labels/label.ts';
import {
  a4SheetLayout,
  labelPositions,
  letterSheetLayout,
  printableArea,
  rollLayout,
} from '../../../shared-core/labels/sheet.ts';
import { aLabel, paperOf, wordsIn } from '../labels/a-label.ts';
import { decoded } from '../labels/decoded.ts';
import type { Raster } from '../labels/raster.ts';

const meta = {
  title: 'Labels of the north stack',
  locale: 'en-US',
  createdAt: new Date('2026-03-12T09:30:00Z'),
};
const words = wordsIn('metric');
const pixelsPerMm = 6;

const calls = ['ready', 'bring-in', 'keep-drying', 'probe-again'] as const;
const allSpecies = [
  'Northern red oak',
  'Frêne élevé',
  'Jesion wyniosły',
  'Bøg ¾ – ±½ °C',
  'Black cherry of the old orchard',
];

/** As many boards of a yard of our own as asked for, their IDs up to the longest. */
function boards(count: number): LabelContent[] {
  return Array.from({ length: count }, (_, index) => ({
    ...aLabel,
    code: index % 7 === 6 ? `CHERRY-BUTT-${1000 + index}` : `OAK-${index + 1}`,
    speciesName: allSpecies[index % allSpecies.length]!,
    thickness: { thicknessMm: 27 + index, quarters: index % 2 === 0 ? null : 8 },
    widthMm: 150 + index,
    lengthMm: index % 5 === 0 ? null : 2400,
    endUseName: 'Furniture and cabinets, heated rooms',
    latest: {
      at: '2026-03-12T17:30:00Z',
      averagePct: 7 + index,
      averageIs: 'read' as const,
      shellPct: 6.8 + index,
      corePct: 7.4 + index,
      lowPct: 6.1 + index,
      highPct: 7.9 + index,
      call: calls[index % calls.length]!,
      spotsRead: null,
    },
  }));
}

async function opened(pages: readonly DrawnPage[]): Promise<PDFDocumentProxy> {
  return getDocument({ data: await pdfOf(pages, meta), verbosity: 0 }).promise;
}

async function lines(page: PDFPageProxy) {
  const { items } = await page.getTextContent();
  return items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
}

/** The page as pdf.js paints it. */
async function painted(pdf: PDFDocumentProxy, page: PDFPageProxy): Promise<Raster> {
  const viewport = page.getViewport({ scale: (pixelsPerMm * 25.4) / 72 });
  const [width, height] = [Math.ceil(viewport.width), Math.ceil(viewport.height)];
  const factory = pdf.canvasFactory as {
    create(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D };
  };
  const { canvas, context } = factory.create(width, height);
  await page.render({ canvas, canvasContext: context, viewport }).promise;
  return { width, height, rgba: context.getImageData(0, 0, width, height).data };
}

function cutOut(
  { width, rgba }: Raster,
  xMm: number,
  yMm: number,
  widthMm: number,
  heightMm: number,
): Raster {
  const [left, top, across, down] = [xMm, yMm, widthMm, heightMm].map((mm) =>
    Math.floor(mm * pixelsPerMm),
  ) as [number, number, number, number];
  const part = new Uint8ClampedArray(across * down * 4);
  for (let row = 0; row < down; row++) {
    const from = ((top + row) * width + left) * 4;
    part.set(rgba.subarray(from, from + across * 4), row * across * 4);
  }
  return { width: across, height: down, rgba: part };
}

test('the text of a sheet can be read out of the PDF, every line of every label', async () => {
  const pages = drawLabels(boards(32), paperOf(letterSheetLayout), words);
  const pdf = await opened(pages);
  expect(pdf.numPages).toBe(2);
  for (const [index, page] of pages.entries()) {
    const read = (await lines(await pdf.getPage(index + 1))).map(({ str }) => str);
    const drawn = page.operations.flatMap((operation) => (operation.kind === 'text' ? [operation.text] : []));
    expect(read.join('|').replaceAll('\u00A0', ' ')).toBe(drawn.join('|'));
  }
});

// 8 pt at arm's length: common practice, no source.
test.each([
  ['a sheet', letterSheetLayout],
  ['single labels', rollLayout],
])('no text of the PDF is under 8 pt, on %s', async (_, layout) => {
  const pdf = await opened(drawLabels(boards(9), paperOf(layout), words));
  for (let number = 1; number <= pdf.numPages; number++) {
    // The height of a text item is its font size in points.
    const sizes = (await lines(await pdf.getPage(number))).map(({ height }) => height);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(8 - 1e-6);
  }
});

test('every text of the PDF is as wide as it was fitted to be: no kerning, ligatures or built fractions', async () => {
  const texts = ['AVAT fi ffl 12/16 1⁄2', 'Frêne élevé', 'Jesion wyniosły', 'To. LT “Yo”', 'Ångström Ǿ Ẫ'];
  const operations = (['regular', 'bold'] as const).flatMap((face, column) =>
    texts.map((text, row) => ({
      kind: 'text' as const,
      text,
      xMm: 5 + 90 * column,
      baselineMm: 20 + 20 * row,
      sizePt: 20,
      widthMm: textWidthMm(text, face, 20),
      face,
    })),
  );
  const pdf = await opened([{ widthMm: 200, heightMm: 120, operations }]);
  const read = await lines(await pdf.getPage(1));
  for (const { text, widthMm } of operations) {
    const widths = read.filter(({ str }) => str === text).map(({ width }) => (width * 25.4) / 72);
    expect(Math.min(...widths.map((found) => Math.abs(found - widthMm)))).toBeLessThan(0.01);
  }
});

test.each([
  ['US Letter', letterSheetLayout],
  ['A4', a4SheetLayout],
])(
  'on a %s sheet of 30 every QR code reads as its board ID, and no ink leaves its label',
  async (_, layout) => {
    const contents = boards(30);
    const pdf = await opened(drawLabels(contents, paperOf(layout), words));
    const sheet = await painted(pdf, await pdf.getPage(1));
    const area = printableArea(layout);
    const positions = labelPositions(30, layout, 0);
    const read = positions.map(({ xMm, yMm }) =>
      decoded(cutOut(sheet, xMm, yMm, layout.labelWidthMm, layout.labelHeightMm)),
    );
    expect(read).toEqual(contents.map(({ code }) => code));

    // White out what may be printed on, and nothing is left. One pixel is for the smoothing of edges.
    const pixel = 1 / pixelsPerMm;
    for (const { xMm, yMm } of positions) {
      const [left, right] = [xMm + area.xMm - pixel, xMm + area.xMm + area.widthMm + pixel];
      const [top, bottom] = [yMm + area.yMm - pixel, yMm + area.yMm + area.heightMm + pixel];
      for (let row = Math.floor(top * pixelsPerMm); row < bottom * pixelsPerMm; row++) {
        const from = row * sheet.width + Math.floor(left * pixelsPerMm);
        sheet.rgba.fill(255, from * 4, (row * sheet.width + Math.ceil(right * pixelsPerMm)) * 4);
      }
    }
    expect(sheet.rgba.findIndex((value) => value < 200)).toBe(-1);
  },
);

test('a single label has a page of its own size, and its code reads', async () => {
  const pdf = await opened(drawLabels(boards(2), paperOf(rollLayout), words));
  expect(pdf.numPages).toBe(2);
  const page = await pdf.getPage(2);
  const { width, height } = page.getViewport({ scale: 25.4 / 72 });
  expect([width, height]).toEqual([expect.closeTo(60, 3), expect.closeTo(30, 3)]);
  expect(decoded(await painted(pdf, page))).toBe('OAK-2');
});

test('the file has its title and language, asks for actual size, and is the same for the same pages and instant', async () => {
  const pages = drawLabels(boards(3), paperOf(letterSheetLayout), words);
  const pdf = await opened(pages);
  expect((await pdf.getMetadata()).info).toMatchObject({
    Title: meta.title,
    CreationDate: 'D:20260312093000Z',
    Language: 'en-US',
  });
  expect(await pdf.getViewerPreferences()).toEqual(
    new Map<string, unknown>([
      ['DisplayDocTitle', true],
      ['PrintScaling', 'None'],
    ]),
  );
  expect(Buffer.from(await pdfOf(pages, meta)).equals(Buffer.from(await pdfOf(pages, meta)))).toBe(true);
});
