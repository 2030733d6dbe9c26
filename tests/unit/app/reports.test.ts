import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { expect, test } from 'vitest';
import type { AskedReport, ReportKind } from '../../../shared-core/contract/report.ts';
import { DAY_MS } from '../../../shared-core/time.ts';
import { aimAt, type } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo({ thicknessMm: 27 });

const air = Array.from({ length: 12 }, () => ({ tempC: 15, rh: 0.6 }));
const region = { locale: 'en-US', timeZone: 'America/Chicago' };
const boardId = () => yard.boards[0]!.id;

async function probe(raw = 15): Promise<void> {
  const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  await aimAt(roundId, 0, 0);
  for (let spot = 0; spot < 4; spot++) await type(roundId, raw);
  await yard.command('rounds.finish', { roundId });
}

async function printed(
  kind: ReportKind,
  id: number,
  more: Partial<AskedReport> = {},
): Promise<{ text: string; fileName: string }> {
  const { pdfBase64, fileName } = await yard.query('reports.pdf', {
    kind,
    id,
    ...more,
    paper: 'letter',
    region,
  });
  const pdf = await getDocument({ data: new Uint8Array(Buffer.from(pdfBase64, 'base64')), verbosity: 0 })
    .promise;
  const texts: string[] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    texts.push(...items.flatMap((item) => ('str' in item ? [item.str] : [])));
  }
  return { text: texts.join(' ').replaceAll(/\s+/g, ' '), fileName };
}

const codeOf = async (kind: 'passport' | 'buyer') => {
  const content = await yard.query('reports.content', { kind, id: boardId() });
  return 'checkCode' in content ? content.checkCode : '';
};
const checked = async (checkCode: string) => yard.query('reports.check', { checkCode });

test('a passport has the board, its call, every reading raw and corrected, and its check code', async () => {
  await probe();
  const { text, fileName } = await printed('passport', boardId());
  expect(fileName).toBe('passport-WAL-01-2026-06-01.pdf');
  for (const part of [
    'WAL-01',
    'Black walnut',
    'Keep drying',
    'Furniture and cabinets, heated rooms',
    '15%',
    'temperature',
    'Shop',
    'Not a graded or certified test.',
    'Page 1 of 2',
  ])
    expect(text).toContain(part);
  expect(text).toContain(await codeOf('passport'));
});

test('a sheet for a buyer says what it is not, on one page', async () => {
  await probe();
  const { text } = await printed('buyer', boardId());
  for (const part of [
    'Pin readings by the owner. Not a graded or certified test.',
    'This sheet says nothing about strength.',
    'Measure it again before you use it.',
    'Page 1 of 1',
  ])
    expect(text).toContain(part);
});

test('a passport of a board that left says where it was, when it left and why, and makes no call', async () => {
  await probe();
  yard.later(2 * DAY_MS);
  await yard.command('boards.archive', { boardIds: [boardId()], why: 'sold', at: yard.now() });
  const { text } = await printed('passport', boardId());
  expect(text).toContain('Shop until Jun 3, 2026');
  expect(text).toContain('Sold on Jun 3, 2026.');
  expect(text).not.toMatch(/Shop since|Too wet/);
});

test('a board that is asked for twice is on a sheet for a buyer once', async () => {
  const [first, second] = yard.boards.map(({ id }) => id);
  const content = async (more: number[]) => {
    const report = await yard.query('reports.content', { kind: 'buyer', id: first!, more });
    return 'boards' in report ? report.boards.map(({ code }) => code) : report.kind;
  };
  expect(await content([first!, second!, second!])).toEqual(['WAL-01', 'WAL-02']);
  expect(await content([first!])).toBe('buyer');
});

test('several boards are on one sheet for a buyer, chosen or of a stack, and the code of each matches', async () => {
  await probe();
  await yard.command('settings.edit', { nameOnPaper: ' Ridge Sawmill ' });
  const [first, second] = yard.boards.map(({ id }) => id);
  const { text, fileName } = await printed('buyer', first!, {
    more: [second!],
    soldTo: 'Miller',
    priceText: '$84',
  });
  expect(fileName).toBe('moisture-2-boards-2026-06-01.pdf');
  for (const part of ['Ridge Sawmill', 'Miller', '$84', 'WAL-01', 'WAL-02', 'Total 2 boards', 'Not probed'])
    expect(text).toContain(part);
  const ofStack = await yard.query('reports.content', { kind: 'buyer-list', id: yard.stack.id });
  if (ofStack.kind !== 'buyer-list') throw new Error('Another report came.');
  expect(ofStack).toMatchObject({ stack: { name: 'Walnut', boards: 2 }, soldTo: '' });
  for (const { code, checkCode } of ofStack.boards)
    expect(await checked(checkCode)).toMatchObject({ kind: 'buyer', boardCode: code, matches: true });
});

test('a sheet of sold boards says whom they were sold to, where that was one', async () => {
  const [first, second] = yard.boards.map(({ id }) => id);
  const sell = (id: number, note: string) =>
    yard.command('boards.archive', { boardIds: [id], why: 'sold', note, at: yard.now() });
  const soldTo = async () => {
    const content = await yard.query('reports.content', { kind: 'buyer', id: first!, more: [second!] });
    return 'soldTo' in content && content.soldTo;
  };
  await sell(first!, 'Miller');
  expect(await soldTo()).toBe('');
  await sell(second!, 'Miller');
  expect(await soldTo()).toBe('Miller');
});

test('a board without readings has both, and says so', async () => {
  expect((await printed('passport', boardId())).text).toContain('No readings yet.');
  expect((await printed('buyer', boardId())).text).toContain('Not probed');
  expect(await checked(await codeOf('buyer'))).toMatchObject({ matches: true, stated: null });
});

test('a stack report and a list name every board', async () => {
  await probe();
  const { text } = await printed('stack', yard.stack.id);
  for (const part of ['Walnut', 'WAL-01', 'WAL-02', 'Board feet', '10', 'Keep drying'])
    expect(text).toContain(part);
  const list = await printed('list', yard.stack.id);
  for (const part of ['WAL-01', 'WAL-02', 'Spot 1', 'Wood temperature', 'Pins are sharp.'])
    expect(list.text).toContain(part);
});

test('a stack report names the boards that are in another place, and counts those read in part', async () => {
  const loft = await yard.command('places.add', { name: 'Loft', kind: 'shop', air });
  await yard.command('boards.move', {
    boardIds: [yard.boards[1]!.id],
    placeId: loft.id,
    since: yard.now(),
    isDayOnly: false,
  });
  const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
  await aimAt(roundId, 0, 0);
  await type(roundId, 8);
  await yard.command('rounds.finish', { roundId });
  const { text } = await printed('stack', yard.stack.id);
  expect(text).toContain('0 of 1 probed, 1 partly');
  expect(text).toContain(
    '1 more board of this stack is in another place, and is not counted here: WAL-02 (Loft).',
  );
});

test('a stack without boards has a report and a list', async () => {
  const stack = await yard.command('stacks.add', {
    name: 'Empty',
    placeId: yard.place.id,
    endUseId: 'furniture',
    topCover: 'covered',
    note: '',
  });
  expect((await printed('stack', stack.id)).text).toContain('Empty');
  expect((await printed('list', stack.id)).text).toContain('Empty');
});

test('what is not in the yard has no report', async () => {
  expect(await yard.refusal('reports.content', { kind: 'passport', id: 99_999 })).toMatch(
    /^That board is not/,
  );
  expect(await yard.refusal('reports.content', { kind: 'list', id: 99_999 })).toMatch(/^That stack is not/);
});

test.each(['passport', 'buyer'] as const)(
  'the code of a %s matches, and still does after another round',
  async (kind) => {
    await probe();
    const code = await codeOf(kind);
    const before = await checked(code.toLowerCase());
    expect(before).toMatchObject({ kind, boardCode: 'WAL-01', matches: true, roundsSince: 0 });
    expect(before.stated).toMatchObject({ call: 'keep-drying' });
    yard.later(30 * DAY_MS);
    await probe(12);
    const after = await checked(code);
    expect(after).toMatchObject({ matches: true, roundsSince: 1 });
    expect(after.stated).toEqual(before.stated);
  },
);

test('the code matches no more once something that the sheet states was changed, and the yard’s facts are shown', async () => {
  await probe();
  const code = await codeOf('buyer');
  const { version } = yard.boards[0]!;
  await yard.command('boards.edit', {
    id: boardId(),
    basedOn: version,
    changed: { speciesId: 'cherry-black' },
  });
  expect(await checked(code)).toMatchObject({ matches: false, speciesName: 'Black cherry' });
});

test('excluding a reading changes the passport', async () => {
  await probe();
  const code = await codeOf('passport');
  const { readings } = await yard.query('boards.get', { id: boardId() });
  await yard.command('readings.exclude', { readingId: readings[0]!.id, why: { code: 'defect' } });
  expect(await checked(code)).toMatchObject({ matches: false });
});

test('a code that is none, mistyped or of no board of the yard is refused with a sentence', async () => {
  const code = await codeOf('buyer');
  expect(await yard.refusal('reports.check', { checkCode: 'WAL-01' })).toMatch(/^That is not a check code\./);
  expect(
    await yard.refusal('reports.check', {
      checkCode: code.replace(/.$/, '#').replace('#', code.endsWith('A') ? 'B' : 'A'),
    }),
  ).toMatch(/^A character of that code is wrong\./);
  const { version } = yard.boards[0]!;
  await yard.command('boards.edit', { id: boardId(), basedOn: version, changed: { code: 'NEW-1' } });
  expect(await yard.refusal('reports.check', { checkCode: code })).toMatch(
    /^No board WAL-01 is in this yard\./,
  );
});
