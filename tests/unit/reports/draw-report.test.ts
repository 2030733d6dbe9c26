import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { pdfOf } from '../../../electron/print/pdf.ts';
import type { ReportContent } from '../../../shared-core/contract/report.ts';
import type { DrawnPage, TextOperation } from '../../../shared-core/drawing/page.ts';
import { paperSchema, usualPaper } from '../../../shared-core/drawing/paper.ts';
import { drawReport } from '../../../shared-core/reports/draw-report.ts';
import { message } from '../../../shared-core/words/message.ts';
import { wordsIn } from '../labels/a-label.ts';
import { decoded } from '../labels/decoded.ts';
import { polygons } from '../labels/raster.ts';
import { aBoardRow, aFinding, aStack } from '../renderer/stacks/a-yard.ts';
import {
  aBuyerList,
  aBuyerSheet,
  aPassport,
  aStackList,
  aStackReport,
  boardsInLayers,
  checkCode,
} from './a-report.ts';

const words = wordsIn('imperial');
const MARGIN_MM = 15;
const MM_PER_POINT = 25.4 / 72;

/** As long as the contract allows, with words too long for any column. */
const longName = 'Oberösterreichische Donauauenwaldlichtungsbewirtschaftung W';
const longNote = `${'x'.repeat(200)}\n${'A note that goes on. '.repeat(85)}`;
const longBoard = aBoardRow(7, {
  code: 'CHERRY-BUTT-1009',
  speciesName: longName,
  stackName: longName,
  placeName: longName,
  log: 'The butt log of the old ridge orchard',
  note: longNote,
  widthMm: 2999,
  lengthMm: 19_999,
  latest: aFinding(),
});

const reports: [string, ReportContent][] = [
  ['a passport', aPassport()],
  [
    'a passport with long names',
    aPassport({ board: longBoard, endUse: { ...aPassport().endUse, name: longName } }),
  ],
  ['a passport without readings', aPassport({ readings: [], findings: [], forecast: null })],
  ['a sheet for a buyer', aBuyerSheet()],
  ['a sheet for a buyer with long names', aBuyerSheet({ board: longBoard })],
  ['a sheet for a buyer of several boards', aBuyerList()],
  [
    'a sheet for a buyer of 120 boards with long names',
    aBuyerList({
      yardName: longName,
      soldTo: longNote.slice(0, 200),
      boards: boardsInLayers(120, 12).map((board) => ({
        ...board,
        code: 'CHERRY-BUTT-1009',
        checkCode: 'CHERRY-BUTT-1009/B39E-0RK7-Y34F-1CDY',
        speciesName: longName,
        widthMm: 2999,
        lengthMm: 19_999,
      })),
    }),
  ],
  ['a sheet for a buyer with names', aBuyerSheet({ soldTo: longName, yardName: longName })],
  ['a stack report', aStackReport()],
  ['a stack report of 300 boards in 12 columns', aStackReport({ boards: boardsInLayers(300, 12) })],
  [
    'a stack report with long names',
    aStackReport({
      stack: aStack({ name: longName, note: longNote, speciesNames: [longName, longName], boards: 6 }),
      boards: boardsInLayers(6, 3).map((board) => ({
        ...board,
        code: 'CHERRY-BUTT-1009',
        speciesName: longName,
      })),
    }),
  ],
  [
    'a stack report of boards entered at one place',
    aStackReport({
      boards: boardsInLayers(4, 2).map((board) => ({ ...board, layer: 1, column: 1 })),
    }),
  ],
  ['a list', aStackList()],
  [
    'a list with long names',
    aStackList({
      boards: aStackList().boards.map((board) => ({
        ...board,
        code: 'CHERRY-BUTT-1009',
        speciesName: longName,
      })),
    }),
  ],
];

const textsOf = ({ operations }: DrawnPage): TextOperation[] =>
  operations.filter((operation) => operation.kind === 'text');

/** A text as the box that its letters lie in: from the height of its capitals to its baseline. */
const boxOf = ({ xMm, baselineMm, widthMm, sizePt }: TextOperation) => ({
  left: xMm,
  right: xMm + widthMm,
  top: baselineMm - 0.72 * sizePt * MM_PER_POINT,
  bottom: baselineMm,
});

/** The points of path data; of an arc, where it ends. */
function pointsOf(d: string): [x: number, y: number][] {
  return [...d.matchAll(/([MLA])([^MLAZ]*)/g)].map(([, , numbers]) => {
    const [x, y] = numbers!.trim().split(/[ ,]+/).map(Number).slice(-2);
    return [x!, y!];
  });
}

describe.each(reports)('%s', (_, content) => {
  describe.each(paperSchema.options)('on %s', (paper) => {
    const pages = drawReport(content, paper, words);

    test('has all its text within the margins', () => {
      for (const page of pages) {
        for (const text of textsOf(page)) {
          const { left, right, top, bottom } = boxOf(text);
          expect(left, text.text).toBeGreaterThanOrEqual(MARGIN_MM - 1e-6);
          expect(right, text.text).toBeLessThanOrEqual(page.widthMm - MARGIN_MM + 1e-6);
          expect(top, text.text).toBeGreaterThanOrEqual(MARGIN_MM - 1e-6);
          expect(bottom, text.text).toBeLessThanOrEqual(page.heightMm - MARGIN_MM + 1e-6);
        }
      }
    });

    test('has no text on another', () => {
      for (const page of pages) {
        const boxes = textsOf(page).map((text) => ({ ...boxOf(text), text: text.text }));
        for (const [index, a] of boxes.entries()) {
          const on = boxes
            .slice(index + 1)
            .find(
              (b) =>
                a.left < b.right - 0.05 &&
                b.left < a.right - 0.05 &&
                a.top < b.bottom - 0.05 &&
                b.top < a.bottom - 0.05,
            );
          expect(on && `${a.text} | ${on.text}`).toBeUndefined();
        }
      }
    });

    // 8 pt is read at arm's length: common practice, no source.
    test('has no text under 8 pt', () => {
      expect(
        Math.min(...pages.flatMap((page) => textsOf(page).map(({ sizePt }) => sizePt))),
      ).toBeGreaterThanOrEqual(8);
    });

    test('has no line or shape outside the page, and none in the footer', () => {
      for (const page of pages) {
        for (const [x, y] of page.operations.flatMap((each) =>
          each.kind === 'path' ? pointsOf(each.d) : each.kind === 'modules' ? polygons(each).flat() : [],
        )) {
          expect(x).toBeGreaterThan(MARGIN_MM - 2);
          expect(x).toBeLessThan(page.widthMm - MARGIN_MM + 2);
          expect(y).toBeGreaterThan(MARGIN_MM - 2);
          expect(y).toBeLessThan(page.heightMm - MARGIN_MM - 4);
        }
      }
    });

    test('numbers its pages', () => {
      for (const [index, page] of pages.entries())
        expect(textsOf(page).at(-1)!.text).toBe(`Page ${index + 1} of ${pages.length}`);
    });
  });
});

const textOf = (content: ReportContent): string =>
  drawReport(content, 'letter', words)
    .flatMap(textsOf)
    .map(({ text }) => text)
    .join(' ');

test('names and notes are wrapped, not cut', () => {
  const text = textOf(aPassport({ board: longBoard }));
  expect(text.replaceAll(' ', '')).toContain(longName.replaceAll(' ', ''));
  expect(text.replaceAll(' ', '')).toContain('x'.repeat(40));
});

test('each reading of a passport has its raw value, its MC and what it was corrected for', () => {
  const text = textOf(aPassport());
  for (const part of ['11.4%', '12.1%', '1.25 MΩ', 'temperature', 'Excluded: Knot, pitch, or bark'])
    expect(text).toContain(part);
});

test('what a person wrote about a reading is beside it', () => {
  const [reading] = aPassport().readings;
  const text = textOf(aPassport({ readings: [{ ...reading!, note: 'Near the knot.' }] }));
  expect(text).toContain('Near the knot.');
});

test.each([
  ['structural', 'Dry does not mean strong.'],
  ['firewood', 'Burn it in a sound stove with a swept chimney.'],
] as const)(
  'wood for a use with the caution “%s” says so in every report with a call',
  (caution, sentence) => {
    const endUse = { ...aPassport().endUse, cautions: [caution] };
    expect(textOf(aPassport({ endUse }))).toContain(sentence);
    expect(textOf(aStackReport({ endUse }))).toContain(sentence);
    if (caution === 'firewood') expect(textOf(aBuyerSheet({ endUse }))).toContain(sentence);
    expect(textOf(aBuyerSheet({ endUse }))).toContain('This sheet says nothing about strength.');
  },
);

test('a stack report says how many boards to probe, and what that tells', () => {
  const text = textOf(
    aStackReport({
      plan: {
        boards: 20,
        probed: 4,
        certainty: 0.9,
        toKnowReady: 14,
        toKnowMean: { boards: 6, marginPct: 1, spreadPct: 1.5 },
        allProbed: null,
        next: [],
        whyNone: message('stack-plan.next.none'),
      },
    }),
  );
  expect(text).toContain('To call the stack ready, probe 14 of 20 boards.');
  expect(text).toContain('If all are ready, you can be 90% sure that at most 1 in 10 is not.');
});

describe('a sheet for a buyer of several boards', () => {
  const lined = boardsInLayers(3, 3).map((board, index) => ({
    ...board,
    checkCode: `OAK-00${index}/B39E-0RK7-Y34F-1CDY`,
    thicknessMm: 25.4,
    widthMm: 304.8,
    lengthMm: 1219.2,
  }));

  test('has the MC of each with its likely range, its day, and how long before printing that was', () => {
    const [first, second, third] = lined;
    const text = textOf(
      aBuyerList({
        boards: [
          { ...first!, latest: aFinding({ at: '2026-09-18T12:00:00.000Z', averagePct: 13.9 }) },
          { ...second!, latest: aFinding({ at: '2025-01-18T12:00:00.000Z', averageIs: 'estimated' }) },
          { ...third!, latest: aFinding({ averagePct: null, shellPct: 20.8 }) },
        ],
      }),
    );
    for (const part of [
      '13.9%',
      'Likely 13.7–16.1%.',
      'Sep 18, 2026',
      '2 days ago',
      'About 14.9%',
      '20 months ago',
      'Shell 20.8%',
      'No reliable average.',
      'Ridge Sawmill',
      'Sold to',
    ])
      expect(text.replaceAll('\u00A0', ' ')).toContain(part);
    expect(text).not.toMatch(/Probe (again|it|the)/);
  });

  test('says that nobody knows how deep it was read, and of no shell', () => {
    const [first, second] = lined;
    const unknown = { isDepthUnknown: true as const, shellPct: 16.2, corePct: null };
    const text = textOf(
      aBuyerList({
        boards: [
          { ...first!, latest: aFinding({ ...unknown, averagePct: null }) },
          { ...second!, latest: aFinding({ ...unknown, averageIs: 'estimated' }) },
        ],
      }),
    ).replaceAll('\u00A0', ' ');
    for (const part of ['16.2%', 'Depth of the pins unknown.', 'Estimated.']) expect(text).toContain(part);
    expect(text).not.toMatch(/shell/i);
  });

  test('adds up board feet, and says which boards are not in the total', () => {
    // 12 in wide, 4 ft long, 1 in thick: 4 board feet by definition.
    const all = textOf(aBuyerList({ boards: lined }));
    expect(all).toContain('Total 3 boards');
    expect(all).toMatch(/Total 3 boards\s+12 /);
    const text = textOf(aBuyerList({ boards: lined.map((board) => ({ ...board, widthMm: null })) }));
    expect(text).toMatch(/Total 3 boards\s+– /);
    expect(text).toContain('3 boards have no width or length. They are not in the total.');
  });

  test.each([
    ['of several boards', aBuyerList({ boards: lined.map((board) => ({ ...board, latest: null })) })],
    ['of one', aBuyerSheet({ board: aBoardRow(7, { latest: null }), readings: [] })],
  ])('%s that were never probed states no readings', (_, content) => {
    const text = textOf(content);
    expect(text).toContain('Not probed');
    expect(text).not.toMatch(/of the day it was probed|again|Pin readings by/);
  });
});

test('boards without a width have a dash for their board feet, and are counted below', () => {
  const { tally } = aStackReport();
  const none = { ...tally.total, measured: 0, boardFeet: 0, cubicMeters: 0, weighed: 0 };
  const text = textOf(aStackReport({ tally: { rows: [{ ...tally.rows[0]!, ...none }], total: none } }));
  expect(text).not.toContain('0 board feet');
  expect(text).toContain('6 boards have no width or length. They are not in these totals.');
});

test('a questionable average says so, in the report of its board and of its stack', () => {
  const questionable = aFinding({ isQuestionable: true });
  const boards = boardsInLayers(1, 1).map((board) => ({ ...board, latest: questionable }));
  for (const report of [aPassport({ findings: [questionable] }), aStackReport({ boards })])
    expect(textOf(report)).toMatch(/14\.9%, questionable/);
});

test('metric people have cubic meters in the tally, others board feet alone', () => {
  const texts = (units: 'metric' | 'imperial') =>
    drawReport(aStackReport(), 'a4', wordsIn(units))
      .flatMap(textsOf)
      .map(({ text }) => text);
  expect(texts('metric')).toEqual(expect.arrayContaining(['Volume (m³)', '0.113', 'Board feet', '48']));
  expect(texts('imperial').join(' ')).not.toContain('m³');
});

// Page sizes: ANSI/ASME Y14.1 size A is 8.5 by 11 in, ISO 216 A4 is 210 by 297 mm (both from memory).
test('the paper is that of the region', () => {
  expect([usualPaper('en-US'), usualPaper('es-MX'), usualPaper('en')]).toEqual([
    'letter',
    'letter',
    'letter',
  ]);
  expect([usualPaper('de-DE'), usualPaper('en-GB'), usualPaper('fr')]).toEqual(['a4', 'a4', 'a4']);
});

/** Where the filled squares of a page are, each with the white that belongs to it, mm. */
const squaresOf = ({ operations }: DrawnPage) =>
  operations
    .filter((each) => each.kind === 'modules')
    .map(({ xMm, yMm, moduleMm, rectangles }) => {
      const side = moduleMm * Math.max(...rectangles.map(([x, , width]) => x + width));
      const white = side / 8;
      return { left: xMm - white, top: yMm - white, side: side + 2 * white };
    });

const codes = ['OAK-001/B39E-0RK7-Y34F-1CDY', 'CHERRY-BUTT-1009/B39E-0RK7-Y34F-1CDY'];
test.each([
  ['a sheet', aBuyerSheet(), [checkCode]],
  [
    'a sheet for several boards',
    aBuyerList({
      boards: boardsInLayers(2, 2).map((board, index) => ({ ...board, checkCode: codes[index]! })),
    }),
    codes,
  ],
])('the square code of each board on %s reads as its check code, in the PDF too', async (_, content, of) => {
  const pages = drawReport(content, 'letter', words);
  const meta = { title: 'A sheet', locale: 'en-US', createdAt: new Date('2026-09-20T17:05:00Z') };
  const pdf = await getDocument({ data: await pdfOf(pages, meta), verbosity: 0 }).promise;
  const page = await pdf.getPage(1);
  const viewport = page.getViewport({ scale: 3 });
  const factory = pdf.canvasFactory as {
    create(width: number, height: number): { canvas: HTMLCanvasElement; context: CanvasRenderingContext2D };
  };
  const { canvas, context } = factory.create(Math.ceil(viewport.width), Math.ceil(viewport.height));
  await page.render({ canvas, canvasContext: context, viewport }).promise;
  const perMm = 3 / MM_PER_POINT;
  const read = squaresOf(pages[0]!).map(({ left, top, side }) => {
    const [x, y, across] = [left, top, side].map((mm) => Math.round(mm * perMm)) as [number, number, number];
    return decoded({ width: across, height: across, rgba: context.getImageData(x, y, across, across).data });
  });
  expect(read).toEqual(of);
});

test('a stack of 1,000 boards is laid out with every board', () => {
  const boards = boardsInLayers(1000, 8);
  const pages = drawReport(aStackReport({ boards, stack: aStack({ boards: 1000 }) }), 'letter', words);
  const texts = pages.flatMap(textsOf).map(({ text }) => text);
  // In the drawing and in the table.
  expect(texts.filter((text) => text === 'OAK-777')).toHaveLength(2);
  expect(texts.filter((text) => text === 'Northern red oak').length).toBeGreaterThanOrEqual(1000);
});
