import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { drawLabels } from '../../../shared-core/labels/drawing.ts';
import { checkCodeText } from '../../../shared-core/reports/check-code.ts';
import { english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';
import { openWindow } from './a-window.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo({ thicknessMm: 27 });

const boardIds = () => yard.boards.map(({ id }) => id);
const asked = (more: Partial<RequestInput<'labels.pdf'>> = {}): RequestInput<'labels.pdf'> => ({
  boardIds: boardIds(),
  paperId: 'sheet',
  used: 0,
  region: { locale: 'en-US', timeZone: 'America/Chicago' },
  ...more,
});

async function probe(): Promise<void> {
  const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  await aimAt(roundId, 0, 0);
  for (let spot = 0; spot < 4; spot++) await type(roundId, 15);
}

async function textsOf(pdfBase64: string): Promise<string[]> {
  const pdf = await getDocument({ data: new Uint8Array(Buffer.from(pdfBase64, 'base64')), verbosity: 0 })
    .promise;
  const { items } = await (await pdf.getPage(1)).getTextContent();
  return items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : []));
}

test.each([
  ['metric', 'en-US', 'America/Chicago', ['27 mm × 200 mm × 2.4 m', 'Jun 1, 2026']],
  ['imperial', 'en-US', 'America/Chicago', ['1 1/16 in × 7 7/8 in × 7 ft 10 in', 'Jun 1, 2026']],
  // The round is at 08:00 UTC, which in Samoa is still the day before.
  ['metric', 'en-DE', 'Pacific/Pago_Pago', ['27 mm × 200 mm × 2,4 m', '31 May 2026']],
] as const)('the PDF reads as the preview does: %s, %s, %s', async (units, locale, timeZone, parts) => {
  await yard.command('settings.edit', { units });
  await probe();
  const { pdfBase64 } = await yard.query('labels.pdf', asked({ region: { locale, timeZone } }));
  const read = await textsOf(pdfBase64);

  const [sheet] = (await yard.query('settings.get', {})).labelPapers;
  const contents = (await yard.query('labels.contents', { boardIds: boardIds() })).filter(
    (content) => content !== null,
  );
  const words = createWords({ catalog: english, locale, timeZone, units, today: '2026-06-01' });
  const previewed = drawLabels(contents, sheet!, words).flatMap(({ operations }) =>
    operations.flatMap((operation) => (operation.kind === 'text' ? [operation.text] : [])),
  );
  expect(read).toEqual(previewed);
  expect(read).toEqual(
    expect.arrayContaining([...parts, 'WAL-01', 'WAL-02', 'No readings yet', 'Furniture and cabinets']),
  );
});

test('of a board that is not in the yard there is no label, and of the others there is', async () => {
  const [first] = boardIds();
  const contents = await yard.query('labels.contents', { boardIds: [999_999, first!] });
  expect(contents.map((content) => content?.code)).toEqual([undefined, 'WAL-01']);
});

test('of a board that left the yard there is no label', async () => {
  const [first] = boardIds();
  const codes = async () =>
    (await yard.query('labels.contents', { boardIds: boardIds() })).map((content) => content?.code);
  expect(await codes()).toEqual(['WAL-01', 'WAL-02']);
  await yard.command('boards.archive', { boardIds: [first!], why: 'sold', at: yard.now() });
  expect(await codes()).toEqual([undefined, 'WAL-02']);
});

test('a scanned label leads to its board, capitals or not, and another code to none', {
  tags: 'core',
}, async () => {
  const [boardId] = boardIds();
  const boardOf = async (code: string) => (await yard.query('labels.boardOf', { code })).boardId;
  expect(await boardOf('WAL-01')).toBe(boardId);
  expect(await boardOf(' wal-01 ')).toBe(boardId);
  expect(await boardOf('4006381333931')).toBeNull();
  const code = { boardCode: 'WAL-01', kind: 'passport', minute: 3_000_000, digest: '0123456AB' } as const;
  expect(await boardOf(checkCodeText(code))).toBe(boardId);
});

test('of a stack that is not in the yard there are no boards to choose from, and it says so', async () => {
  expect(await yard.refusal('labels.boards', { stackId: 99_999, search: '' })).toMatch(
    /^That stack is not in this yard/,
  );
});

test('its file is named by the day it was made on', async () => {
  const made = (timeZone: string) =>
    yard.query('labels.pdf', asked({ region: { locale: 'en-US', timeZone } }));
  expect((await made('America/Chicago')).fileName).toBe('labels-2026-06-01.pdf');
  expect((await made('Pacific/Pago_Pago')).fileName).toBe('labels-2026-05-31.pdf');
});

test('the PDF of a calibrated paper has its labels where this printer is to be told to print them', async () => {
  const firstAt = async () => {
    const { pdfBase64 } = await yard.query('labels.pdf', asked());
    const pdf = await getDocument({ data: new Uint8Array(Buffer.from(pdfBase64, 'base64')), verbosity: 0 })
      .promise;
    const { items } = await (await pdf.getPage(1)).getTextContent();
    const [, , , , x, y] = items.flatMap((item) =>
      'str' in item && item.str === 'WAL-01' ? [item.transform] : [],
    )[0]!;
    return [x, y].map((points) => ((points as number) * 25.4) / 72) as [number, number];
  };
  const before = await firstAt();
  const [sheet] = (await yard.query('settings.get', {})).labelPapers;
  const calibration = { offsetXMm: 2, offsetYMm: -1, scaleX: 1, scaleY: 1 };
  await yard.command('settings.edit', { labelPapers: [{ ...sheet!, calibration }] });
  const [x, y] = await firstAt();
  expect(x).toBeCloseTo(before[0] - 2, 3);
  // A PDF counts from the bottom.
  expect(y).toBeCloseTo(before[1] - 1, 3);
});

test('the page that a printer is measured by is a PDF of the paper', async () => {
  const region = { locale: 'en-US', timeZone: 'America/Chicago' };
  const { pdfBase64, fileName } = await yard.query('labels.calibrationPdf', { paperId: 'roll', region });
  expect(fileName).toBe('label-calibration.pdf');
  expect(await textsOf(pdfBase64)).toEqual(['A', 'B', 'C', 'D']);
  expect(await yard.refusal('labels.calibrationPdf', { paperId: 'gone', region })).toMatch(
    /^That label paper is not in this yard/,
  );
});

test('more labels used than a sheet has are refused', async () => {
  expect(await yard.refusal('labels.pdf', asked({ used: 30 }))).toContain(
    'This sheet has 30 labels. Type a whole number from 0 to 29.',
  );
});

test.each([
  { locale: 'no locale', timeZone: 'America/Chicago' },
  { locale: 'en-US', timeZone: 'Nowhere/Here' },
])('a region that there is none of is refused: %o', async (region) => {
  expect(await yard.refusal('labels.pdf', asked({ region }))).not.toBe('it was allowed');
});

test('a sheet that does not fit its page is refused with how much it is off', async () => {
  const settings = await yard.query('settings.get', {});
  const [sheet] = settings.labelPapers;
  const labelPapers = [{ ...sheet!, layout: { ...sheet!.layout, rows: 11 } }];
  expect(await yard.refusal('settings.edit', { labelPapers })).toMatch(
    /^13 mm too tall for the page\. Use shorter labels.* Nothing was saved\.$/,
  );
});

describe('a label is out of date', () => {
  const labels = async () =>
    (await yard.query('labels.boards', { stackId: null, search: '' })).boards.map(({ label }) => label);
  const print = () =>
    yard.command('labels.recordPrint', { boardIds: boardIds().slice(0, 1), paperId: 'sheet' });

  test('only where one was printed', async () => {
    expect(await labels()).toEqual(['none', 'none']);
    await print();
    expect(await labels()).toEqual(['current', 'none']);
  });

  test('once its board was probed since, and no more once it is printed again', async () => {
    await print();
    await probe();
    expect(await labels()).toEqual(['outdated', 'none']);
    await print();
    expect(await labels()).toEqual(['current', 'none']);
  });

  test('once its board is of another size', async () => {
    await print();
    const [{ id, version } = { id: 0, version: 0 }] = yard.boards;
    await yard.command('boards.edit', { id, basedOn: version, changed: { widthMm: 190 } });
    expect(await labels()).toEqual(['outdated', 'none']);
  });

  test('by what it shows, and by nothing else', async () => {
    const { labelPapers } = await yard.query('settings.get', {});
    const idAlone = { ...labelPapers[0]!, id: 'tags', fields: ['code', 'place'] as const };
    await yard.command('settings.edit', {
      labelPapers: [...labelPapers, { ...idAlone, fields: [...idAlone.fields] }],
    });
    await yard.command('labels.recordPrint', { boardIds: boardIds(), paperId: 'tags' });
    await probe();
    expect(await labels()).toEqual(['current', 'current']);
    const { id: placeId } = await yard.command('places.add', {
      name: 'Shed',
      kind: 'open-shed',
      air: Array.from({ length: 12 }, () => ({ tempC: 10, rh: 0.7 })),
    });
    await yard.command('boards.move', {
      boardIds: boardIds().slice(0, 1),
      placeId,
      since: '2026-06-01T08:00:00.000Z',
    });
    expect(await labels()).toEqual(['outdated', 'current']);
  });

  test('as the list of boards to choose from says, with species and call', async () => {
    await probe();
    const ofCall = (filter: 'keep-drying' | 'ready') =>
      yard.query('labels.boards', { stackId: null, search: '', filter });
    expect(await ofCall('keep-drying')).toMatchObject({ total: 1, boards: [{ code: 'WAL-01' }] });
    expect(await ofCall('ready')).toEqual({ total: 0, boards: [] });
    expect(await yard.query('labels.boards', { stackId: null, search: 'wal-01' })).toEqual({
      total: 1,
      boards: [
        {
          id: boardIds()[0],
          code: 'WAL-01',
          speciesName: 'Black walnut',
          call: 'keep-drying',
          label: 'none',
        },
      ],
    });
  });
});

describe('making many labels', () => {
  const work = '0d0bfbc4-6a0c-4a2f-9b0e-0d6f6a6a3f11';
  const many = { paperId: 'roll', work };

  async function boards(count: number): Promise<number[]> {
    const codes = Array.from({ length: count }, (_, index) => yard.board(`X-${index}`));
    return (await yard.command('boards.add', codes)).map(({ id }) => id);
  }

  test('holds up no reading, and says how far it is', async () => {
    const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
    const ids = await boards(60);
    let isMade = false;
    const made = yard.query('labels.pdf', asked({ ...many, boardIds: ids })).then((pdf) => {
      isMade = true;
      return pdf;
    });
    await type(roundId, 14);
    expect(isMade).toBe(false);
    expect((await made).pdfBase64.length).toBeGreaterThan(1000);
    const news = yard.heard('work.progress');
    expect(news[0]).toEqual({ work, done: 0, total: 60 });
  });

  test('is stopped by the window that asked, and by no other', async () => {
    const ids = await boards(60);
    const refused = yard.refusal('labels.pdf', asked({ ...many, boardIds: ids }));
    await expect.poll(() => yard.heard('work.progress').length, { timeout: 10_000 }).toBeGreaterThan(0);
    const other = openWindow(yard.app, 'window-2');
    await other.command('work.cancel', { work });
    await yard.command('work.cancel', { work });
    expect(await refused).toBe('Stopped. Nothing was changed.');
    await yard.command('work.cancel', { work });
    other.close();
  });
});
