import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, test } from 'vitest';
import { boardSchema } from '../../../shared-core/contract/yard.ts';
import { aimAt } from './in-round.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

withYardOfTwo();

/** 8/4 is 2 in rough (common practice, no source); 1 in = 25.4 mm exactly (international inch, 1959). */
const eightQuarter = { thicknessMm: 50.8, thicknessQuarters: 8 };

const addOne = async (code: string, thickness: { thicknessMm: number; thicknessQuarters?: number }) => {
  const [board] = await yard.command('boards.add', [{ ...yard.board(code), ...thickness }]);
  return board!;
};

describe('a board given as 8/4', () => {
  test('is 8/4 on its page, in lists and in a round', async () => {
    const { id } = await addOne('WAL-03', eightQuarter);
    expect((await yard.query('boards.get', { id })).board).toMatchObject(eightQuarter);
    const which = { stackId: yard.stack.id, search: 'WAL-03', offset: 0, limit: 10 };
    expect((await yard.query('boards.list', which)).rows).toMatchObject([eightQuarter]);
    const roundId = (await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 })).id;
    await aimAt(roundId, 2, 0);
    const round = await yard.query('rounds.get', { roundId });
    expect(round.boards[2]).toMatchObject(eightQuarter);
    expect(round.probed).toMatchObject({ code: 'WAL-03', ...eightQuarter });
  });

  test.each(['metric', 'imperial'] as const)('is 8/4 on its printed label in %s units', async (units) => {
    const { id } = await addOne('WAL-03', eightQuarter);
    await yard.command('settings.edit', { units });
    expect(await yard.query('labels.contents', { boardIds: [id] })).toMatchObject([
      { thickness: { thicknessMm: 50.8, quarters: 8 } },
    ]);
    const { pdfBase64 } = await yard.query('labels.pdf', {
      boardIds: [id],
      paperId: 'roll',
      used: 0,
      region: { locale: 'en-US', timeZone: 'America/Chicago' },
    });
    const data = new Uint8Array(Buffer.from(pdfBase64, 'base64'));
    const page = await (await getDocument({ data, verbosity: 0 }).promise).getPage(1);
    const texts = (await page.getTextContent()).items.map((item) => ('str' in item ? item.str : ''));
    expect(texts.find((text) => text.startsWith('8/4 × '))).toBeDefined();
  });

  test('stays 8/4 when something else of it is edited', async () => {
    const { id } = await addOne('WAL-03', eightQuarter);
    const { version } = (await yard.query('boards.get', { id })).board;
    await yard.command('boards.editTogether', {
      boards: [{ id, basedOn: version }],
      changed: { sawing: 'quarter' },
      stackOrder: null,
    });
    expect((await yard.query('boards.get', { id })).board).toMatchObject({
      sawing: 'quarter',
      ...eightQuarter,
    });
    // What an edit leaves out has no default.
    expect(boardSchema.partial().parse({ note: 'Planed' })).toEqual({ note: 'Planed' });
  });

  test('is in millimeters once it is changed to those', async () => {
    const board = await addOne('WAL-03', eightQuarter);
    const edit = { id: board.id, basedOn: 1, changed: { thicknessMm: 54, thicknessQuarters: null } };
    expect(await yard.command('boards.edit', edit)).toMatchObject({
      thicknessMm: 54,
      thicknessQuarters: null,
    });
  });
});

test('a board given without quarters has none', async () => {
  expect(await addOne('WAL-03', { thicknessMm: 50.8 })).toMatchObject({ thicknessQuarters: null });
});

// 4/4 is the thinnest that the trade names in quarters (NHLA rules, from memory); a board is 400 mm thick at most.
test.each([3, 63, 8.5, -8])('%f/4 is refused', async (thicknessQuarters) => {
  expect(await yard.refusal('boards.add', [{ ...yard.board('WAL-03'), thicknessQuarters }])).not.toBe(
    'it was allowed',
  );
});
