import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { type ImportChoices, nothingChosen } from '../../../shared-core/contract/import.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { newBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import {
  brazilian,
  finnish,
  german,
  inSections,
  long,
  pasted,
  quarters,
  type Spreadsheet,
  visitsAcross,
  wide,
} from '../import/spreadsheets.ts';
import { say } from './a-window.ts';
import { pastPage } from './past-page.ts';
import { doing, redo, undo } from './seen-yard.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// The clock of the yard begins at 08:00 UTC on June 1, 2026. The values are invented.
withYardOfTwo({ isKeptUnchanged: true });

const american = { units: 'imperial', order: 'mdy' } as const;

/** A file, read as it is guessed: what a person has chosen before they changed anything. */
async function read(content: string | Buffer, reader: Spreadsheet['reader'] = american) {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-table-')), 'table.csv');
  writeFileSync(file, content);
  const { guessed, table, ...shown } = await yard.command('imports.read', { file, ...reader });
  const choices: ImportChoices = {
    ...guessed,
    ...nothingChosen,
    stackName: 'Imported',
    place: { placeId: yard.place.id },
  };
  return { table, choices, ...shown };
}
const check = ({ table, choices }: { table: string; choices: ImportChoices }) =>
  yard.command('imports.check', { table, choices });
/** Names that no list of species here has. */
const SPECIES_OF_NAMES = { mänty: 'pine-eastern-white', kuusi: 'spruce-sitka', jatoba: 'walnut-black' };
const isOnlyTotal = (problems: { problem: { code: string } }[]): boolean =>
  problems.every(({ problem }) => problem.code === 'import.totals');
const problemsOf = ({ refusedRows }: RequestOutput<'imports.check'>) =>
  refusedRows.map(({ row, problems }) => [row + 1, ...problems.map(({ problem }) => say(problem))]);
const save = (plan: string) => yard.command('imports.save', { plan });
const total = async () =>
  (await yard.query('boards.list', { stackId: null, search: '', offset: 0, limit: 1 })).total;

test('what was checked before the last choice is not imported, and the table stays open', async () => {
  const table = await read(
    'Board,Species,Thickness,Date,MC\nN-1,walnut,8/4,5/1/2026,14.2\nN-2,walnut,8/4,5/1/2026,12:30\n',
  );
  const before = await check(table);
  const fixed = await check({
    ...table,
    choices: { ...table.choices, fixes: [{ row: 2, column: 4, text: '12.3' }] },
  });
  await expect(save(before.plan)).rejects.toThrow(
    'The table was checked again. Nothing was imported. Look over the rows, then import.',
  );
  expect((await save(fixed.plan)).counts).toMatchObject({ boards: 2, readings: 2 });
});

describe('2,000 rows by nine habits come in as they are guessed', () => {
  test.each([
    ['a row a board, readings under their dates', wide],
    ['a row a reading', long],
    ['semicolons, decimal commas, days first, Windows-1252', german],
    ['quarters, °F, and notes in cells', quarters],
    ['pasted, with blanks for what is as above', pasted],
    ['a line over each stack, averages, words in cells', inSections],
    ['Finnish, with the species over its boards', finnish],
    ['Brazilian, with the day over its readings, in megohms', brazilian],
    ['pasted, with visits across', visitsAcross],
  ] as const)(
    '%s',
    async (_, make) => {
      const sheet = make();
      // The mapping: what this yard does not know, a person answers once.
      const readSheet = async () => {
        const { choices, ...open } = await read(sheet.bytes, sheet.reader);
        return { ...open, choices: { ...choices, speciesOfNames: SPECIES_OF_NAMES } };
      };
      const checked = await check(await readSheet());
      expect(checked.refusedRows.filter(({ problems }) => !isOnlyTotal(problems))).toEqual([]);
      expect(checked.problems).toEqual([]);
      expect(checked.counts).toMatchObject({ boards: sheet.boards, readings: sheet.readings });
      const saved = await save(checked.plan);
      expect(saved.counts).toMatchObject({ boards: sheet.boards, readings: sheet.readings });
      expect(await total()).toBe(sheet.boards + 2);

      // The same once more adds nothing.
      const again = await check(await readSheet());
      expect(again.counts).toEqual({
        places: 0,
        stacks: 0,
        boards: 0,
        readings: 0,
        airValues: 0,
        ovenChecks: 0,
      });
      expect(again.knownReadings).toBe(sheet.readings);
    },
    60_000,
  );
});

test('an import is undone as one act, and the same file restores it', async () => {
  const file =
    'Board,Species,Thickness,Date,MC\nX-1,walnut,8/4,5/3/2025,14.2\nX-2,walnut,8/4,5/3/2025,15.1\n';
  const first = await check(await read(file));
  const { act, counts } = await save(first.plan);
  expect(counts).toEqual({ places: 0, stacks: 1, boards: 2, readings: 2, airValues: 0, ovenChecks: 0 });
  await yard.command('acts.undo', { act });
  expect(await total()).toBe(2);
  // Its IDs are free.
  await yard.command('boards.add', [yard.board('X-3')]);
  const again = await check(await read(file));
  expect(again.counts).toMatchObject({ boards: 2, readings: 2 });
  const restored = await save(again.plan);
  expect(restored).toMatchObject({ isRestored: true, counts });
  expect(await total()).toBe(5);
  const { rows } = await yard.query('boards.list', { stackId: null, search: 'X-1', offset: 0, limit: 9 });
  const { readings } = await yard.query('boards.get', { id: rows[0]!.id });
  expect(readings).toHaveLength(1);
  expect(readings[0]).toMatchObject({ raw: 14.2, excluded: null, depthFrom: 'plan' });
  expect(readings[0]!.spot.depthMm).toBeNull();
});

test('a page is not redone while the import that added its board is undone', async () => {
  const checked = await check(await read('Board,Species,Thickness,Date,MC\nX-1,walnut,8/4,5/3/2026,14.2\n'));
  const imported = await doing('imports.save', { plan: checked.plan });
  const { rows } = await yard.query('boards.list', { stackId: null, search: 'X-1', offset: 0, limit: 1 });
  const { id: boardId, stackId } = rows[0]!;
  const page = {
    ...pastPage({
      startedAt: '2026-05-20T10:00:00.000Z',
      depths: ['pins'],
      lines: [{ boardId, raws: [13.1] }],
    }),
    stackId: stackId!,
  };
  const typed = await doing('pastRounds.save', page);
  await undo(typed.act);
  await undo(imported.act);
  expect(await yard.refusal('acts.redo', { act: typed.act })).toMatch(
    /^Board X-1 was deleted, so nothing was redone[.] Redo that first [(].*[)]: .*imported/i,
  );
  await redo(imported.act);
  await redo(typed.act);
  const { readings } = await yard.query('boards.get', { id: boardId });
  expect(readings.map(({ raw }) => raw)).toEqual([13.1, 14.2]);
});

test('a new place keeps the name that the person gave it', async () => {
  const open = await read('Board,Species,Thickness\nX-1,walnut,8/4\n');
  const { air, airSource, airMovement } = yard.place;
  const place = { add: { name: 'Lean-to', kind: 'outdoors', air, airSource, airMovement } } as const;
  const checked = await check({ ...open, choices: { ...open.choices, place } });
  await save(checked.plan);
  expect((await yard.query('places.list', {})).map(({ name }) => name)).toEqual(['Shop', 'Lean-to']);
  const { rows } = await yard.query('boards.list', { stackId: null, search: 'X-1', offset: 0, limit: 1 });
  expect(rows).toMatchObject([{ placeName: 'Lean-to' }]);
});

test.each(['4/4', '5/4', '8/4'])('shell and core of a board of %s are saved as such', async (thickness) => {
  const { plan } = await check(
    await read(`Board,Species,Thickness,Date,Shell,Core\nX-1,walnut,${thickness},5/3/2025,14.2,15.1\n`),
  );
  await save(plan);
  const { rows } = await yard.query('boards.list', { stackId: null, search: 'X-1', offset: 0, limit: 1 });
  const { readings } = await yard.query('boards.get', { id: rows[0]!.id });
  expect(readings.map(({ raw, spot }) => [raw, spot.depth])).toEqual([
    [14.2, 'shell'],
    [15.1, 'core'],
  ]);
});

test('rows that cannot go in are shown with their reasons, and the others go in', async () => {
  const open = await read(
    [
      'Board,Species,Thickness (in),Date,MC',
      'Y-1,walnut,1,5/3/2025,14.2',
      'Y-2,unobtainium,1,5/3/2025,14.2',
      'Y-3,walnut,1,2/30/2025,14.2',
      'Y-4,walnut,1,5/3/2031,14.2',
      'Y-5,walnut,99,5/3/2025,14.2',
      'Y-6,walnut,1,5/3/2025,wet',
      'Y-7,walnut,1,,14.2',
      ',walnut,1,5/3/2025,14.2',
      'Average,,,,14.2',
      'Y-1,cherry,1,5/3/2025,14.2',
    ].join('\n'),
  );
  const checked = await check(open);
  expect(problemsOf(checked)).toEqual([
    [3, 'No species here is called unobtainium, or more than one is.'],
    [4, '“2/30/2025” is not a date. Check the order of day and month.'],
    [5, 'May 3, 2031 is in the future, or too long ago.'],
    [6, '“99” is not between 3 mm and 400 mm. Check the unit.'],
    [8, 'The reading has no date.'],
    [9, 'No board ID.'],
    [10, '“Average” looks like a totals row. Skip it.'],
    [11, 'Line 2 gives this board another species.'],
  ]);
  expect(checked.speciesNames).toEqual([
    { name: 'unobtainium', rows: 1, speciesId: null },
    { name: 'walnut', rows: 6, speciesId: 'walnut-black' },
    { name: 'cherry', rows: 1, speciesId: 'cherry-black' },
  ]);
  expect(checked.rows).toBe(2);
  expect(checked.remarks.map(say)).toContain(
    '1 cell says “wet” for a reading. It is not imported. If the meter was past its scale, write its end, like >30.',
  );

  const corrected = await check({
    ...open,
    choices: {
      ...open.choices,
      speciesOfNames: { unobtainium: 'walnut-black' },
      fixes: [{ row: 5, column: 2, text: '1' }],
      leftOut: [8, 9, 10],
    },
  });
  expect(problemsOf(corrected).map(([line]) => line)).toEqual([4, 5, 8]);
  expect(corrected).toMatchObject({ rows: 4, leftOut: 3 });
  await save(corrected.plan);
  expect(await total()).toBe(6);
});

test('of many rows that cannot go in, the later ones are shown as well', async () => {
  const rows = Array.from({ length: 450 }, (_, at) => `Z-${at},walnut,1,2/30/2025,14.2`);
  const { table, choices } = await read(`Board,Species,Thickness (in),Date,MC\n${rows.join('\n')}\n`);
  const shown = async (refusedFrom: number) =>
    (await yard.command('imports.check', { table, choices, refusedFrom })).refusedRows.map(({ row }) => row);
  expect(await shown(0)).toHaveLength(200);
  const last = await shown(400);
  expect([last.length, last[0], last.at(-1)]).toEqual([50, 401, 450]);
});

const THREE_READINGS = { places: 0, stacks: 0, boards: 0, readings: 3, airValues: 0, ovenChecks: 0 };

test('readings of a known board are added, and those that it has are not', async () => {
  await yard.beginRound();
  const checked = await check(
    await read('Board,Date,MC 1,MC 2\nWAL-01,6/1/2026,12.4,13.0\nWAL-02,5/1/2026,14.0,14.5\n'),
  );
  expect(checked.counts).toEqual(THREE_READINGS);
  expect(checked.knownReadings).toBe(1);
  await save(checked.plan);
  const { findings } = await yard.query('boards.get', { id: yard.boards[1]!.id });
  expect(findings.length).toBeLessThanOrEqual(1);
});

test('a reading that was corrected, moved and dated anew is known on the board that has it now', async () => {
  const { id: roundId } = await yard.beginRound();
  await yard.command('rounds.finish', { roundId });
  const [from, to] = yard.boards.map(({ id }) => id) as [number, number];
  const readingId = (await yard.query('boards.get', { id: from })).readings[0]!.id;
  const shown = { raw: 12.4, unit: 'pct' as const, woodTempC: 20 };
  await yard.command('readings.correct', { readingId, corrected: { raw: 12.6 }, shown });
  await yard.command('readings.moveToBoard', { readingId, boardId: to, spotIndex: null, scope: 'reading' });
  const { version } = await yard.query('rounds.get', { roundId });
  const changed = { startedAt: '2026-05-20T10:00:00.000Z' };
  await yard.command('rounds.edit', { id: roundId, basedOn: version, changed });
  const checked = await check(await read('Board,Date,MC 1\nWAL-02,5/20/2026,12.6\nWAL-02,6/1/2026,12.6\n'));
  expect(checked.knownReadings).toBe(1);
  expect(checked.counts.readings).toBe(1);
});

test('readings of a board that was merged go to the one that stayed, and those that it has are not added', async () => {
  const round = await yard.beginRound();
  await yard.command('rounds.finish', { roundId: round.id });
  const [gone, kept] = yard.boards.map(({ id }) => id) as [number, number];
  const { own, other } = await yard.query('boards.twice', { id: kept, otherId: gone });
  await yard.command('boards.merge', {
    id: kept,
    basedOn: own.board.version,
    otherId: gone,
    otherBasedOn: other.board.version,
    taken: [],
    note: 'both',
    moves: 'both',
    reservation: 'own',
  });
  // In one table, with the same ID in both.
  const checked = await check(
    await read('Board,Date,MC 1,MC 2\nWAL-01,6/1/2026,12.4,13.0\nWAL-02,5/1/2026,14.0,14.5\n'),
  );
  expect(checked.refusedRows).toEqual([]);
  expect(checked.remarks.map((remark) => say(remark))).toContain(
    'WAL-01 was merged into WAL-02. Its readings go there.',
  );
  expect(checked.counts).toEqual(THREE_READINGS);
  expect(checked.knownReadings).toBe(1);
  await save(checked.plan);
  expect(await total()).toBe(1);
  const { readings } = await yard.query('boards.get', { id: kept });
  expect(readings.map(({ raw }) => raw).toSorted()).toEqual([12.4, 13, 14, 14.5]);
  // A new board may have the ID: it is meant then.
  await yard.command('boards.add', [yard.board('WAL-01')]);
  const again = await check(await read('Board,Date,MC 1\nWAL-01,4/1/2026,18.0\n'));
  expect(again.remarks.map(({ code }) => code)).not.toContain('import.merged-board');
});

describe('the same file once more adds nothing after boards became others', () => {
  const table = [
    'Board,Species,Thickness (mm),Date,MC',
    'X-1,walnut,16,5/1/2025,15',
    'X-2,walnut,16,5/1/2025,17',
  ].join('\n');
  const nothing = { places: 0, stacks: 0, boards: 0, readings: 0, airValues: 0, ovenChecks: 0 };
  const DAY_MS = 86_400_000;
  const rowOf = async (search: string) =>
    (await yard.query('boards.list', { stackId: null, search, offset: 0, limit: 1 })).rows[0]!;
  const rawsOf = async (id: number) =>
    (await yard.query('boards.get', { id })).readings.map(({ raw }) => raw).toSorted();
  const remarksOf = ({ remarks }: RequestOutput<'imports.check'>) => remarks.map((remark) => say(remark));
  async function importOnce() {
    await save((await check(await read(table))).plan);
    yard.later(DAY_MS);
  }
  const rip = async (board: { id: number }, codes: string[]) =>
    doing('boards.cut', {
      boardId: board.id,
      how: 'ripped',
      at: yard.now(),
      pieces: codes.map((code) => ({ code, widthMm: 90, lengthMm: 2400 })),
    });
  const rename = async (board: { id: number }, code: string) => {
    const { version: basedOn } = (await yard.query('boards.get', { id: board.id })).board;
    return doing('boards.edit', { id: board.id, basedOn, changed: { code } });
  };

  test('cut: its ID means it, also for readings of up to the cut, which its pieces have', async () => {
    await importOnce();
    const whole = await rowOf('X-1');
    const { act, output } = await rip(whole, ['X-1-1', 'X-1-2']);
    yard.later(DAY_MS);
    const again = await check(await read(table));
    expect(again).toMatchObject({ refusedRows: [], counts: nothing, knownReadings: 2 });
    expect(remarksOf(again)).toContain(
      '1 board of this table was cut: X-1. Only readings from before that are added. Give another board another ID.',
    );
    // The cut was at 08:00 UTC on June 2, before noon of that day.
    const rows = ['X-1,,,6/2/2026,13', 'X-1,,,6/3/2026,12'];
    const later = await check(await read([table, ...rows].join('\n')));
    expect(problemsOf(later)).toEqual([
      [
        5,
        'Read on Jun 3, 2026, after the board of that ID was cut on Jun 2, 2026. Correct the date, or give the ID of a piece.',
      ],
    ]);
    expect(later.counts).toEqual({ ...nothing, readings: 1 });
    const saved = await save(later.plan);
    for (const id of [whole.id, ...output.pieceIds]) expect(await rawsOf(id)).toEqual([13, 15]);
    await undo(saved.act);
    await undo(act);
    expect(await rowOf('X-1')).toMatchObject({ id: whole.id });
  });

  test('cut, and a piece has its ID', async () => {
    await importOnce();
    await rip(await rowOf('X-1'), ['X-1', 'X-9']);
    expect(await check(await read(table))).toMatchObject({ counts: nothing, knownReadings: 2 });
  });

  test('renamed: the ID that it had means it where no other has that, and its new ID is said', async () => {
    await importOnce();
    const board = await rowOf('X-2');
    await rename(board, 'Z-2');
    await rename(board, 'Y-2');
    const said = 'X-2 is Y-2 now. Its readings go there. If X-2 is another board, add it first.';
    const again = await check(await read(`${table}\nX-2,walnut,16,5/2/2025,16\nY-2,walnut,16,5/3/2025,14`));
    expect(again).toMatchObject({ counts: { ...nothing, readings: 2 }, knownReadings: 2 });
    expect(remarksOf(again)).toContain(said);
    await save(again.plan);
    expect(await rawsOf(board.id)).toEqual([14, 16, 17]);

    // It left the yard under its new ID.
    await yard.command('boards.archive', { boardIds: [board.id], why: 'sold', at: yard.now() });
    const left = await check(await read(table));
    expect(left).toMatchObject({ counts: nothing, knownReadings: 2 });
    expect(remarksOf(left)).toContain(said);

    await yard.command('boards.add', [yard.board('X-2')]);
    expect(remarksOf(await check(await read(table)))).not.toContain(said);
  });

  test('an ID that a board had only by a change that was undone means none', async () => {
    await importOnce();
    const { act } = await rename(await rowOf('X-2'), 'N-1');
    await undo(act);
    const open = await read('Board,Species,Thickness (mm),Date,MC\nN-1,walnut,16,5/1/2025,17\n');
    expect((await check(open)).counts).toMatchObject({ boards: 1, readings: 1 });
    expect((await check(await read(table))).counts).toEqual(nothing);
    // Redone, it is X-2 that it had.
    await redo(act);
    const again = await check(await read(table));
    expect(again.counts).toEqual(nothing);
    expect(remarksOf(again).some((text) => text.startsWith('X-2 is N-1 now.'))).toBe(true);
  });

  test('of many renamed boards some are named', async () => {
    const codes = Array.from({ length: 8 }, (_, at) => `R-${at + 1}`);
    const rows = codes.map((code) => `${code},walnut,16,5/1/2025,15`);
    const many = ['Board,Species,Thickness (mm),Date,MC', ...rows].join('\n');
    await save((await check(await read(many))).plan);
    for (const code of codes) await rename(await rowOf(code), `S-${code}`);
    const again = await check(await read(many));
    expect(again).toMatchObject({ counts: nothing, knownReadings: 8 });
    const said = remarksOf(again).filter((text) => / now\. /.test(text));
    expect(said).toHaveLength(6);
    expect(said.at(-1)).toBe('3 more boards of this table have another ID now. Their readings go there.');
  });
});

test('the air of a place comes in by months', async () => {
  const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
  const lines = months.map((month, at) => `Shop,${month},${50 + at},${60 + at}`);
  const open = await read(['Place,Month,Temp (°F),RH (%)', ...lines].join('\n'));
  expect(open.choices.kind).toBe('air');
  const checked = await check(open);
  expect(checked.counts.places).toBe(1);
  await save(checked.plan);
  const [place] = await yard.query('places.list', {});
  expect(place!.air[0]).toEqual({ tempC: 10, rh: 0.6 });
  expect(place!.air[11]!.rh).toBeCloseTo(0.71);
});

describe('the air of a place by date', () => {
  const airOfShop = () => yard.query('air.ofPlace', { placeId: yard.place.id });
  const imported = async (lines: readonly string[]) => {
    const open = await read(lines.join('\n'), { units: 'metric', order: 'dmy' });
    expect(open.choices.kind).toBe('air');
    return check(open);
  };
  const hours = (values: number) =>
    Array.from({ length: values }, (_, at) => {
      const time = new Date(Date.parse('2026-05-04T00:00') + at * 1_800_000);
      const clock = `${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`;
      const day = String(time.getDate()).padStart(2, '0');
      return `2026-05-${day} ${clock},${18 + (at % 2)},${60 + (at % 7)}`;
    });
  const hygrometer = ['Date,Temperature (°C),RH (%)', ...hours(4 * 48)];

  test('is saved by the hour, and the same file again adds nothing', async () => {
    const checked = await imported(hygrometer);
    expect(checked.counts).toMatchObject({ places: 0, airValues: 96 });
    expect((await save(checked.plan)).counts).toMatchObject({ airValues: 96 });
    const { days, usedDays } = await airOfShop();
    expect(usedDays).toBeGreaterThanOrEqual(3);
    expect(days.find(({ values }) => values === 24)).toMatchObject({ tempC: 18.5, doubt: null });
    const again = await imported(hygrometer);
    expect(again.counts.airValues).toBe(0);
    await expect(save(again.plan)).rejects.toThrow('new');
    const longer = await imported(['Date,Temperature (°C),RH (%)', ...hours(4 * 48 + 2)]);
    expect(longer.counts.airValues).toBe(1);
  });

  test('is no longer there once its import is undone, and is again once redone', async () => {
    const before = await airOfShop();
    const { act } = await save((await imported(hygrometer)).plan);
    const after = await airOfShop();
    expect(after.days.length).toBeGreaterThan(before.days.length);
    await undo(act);
    expect(await airOfShop()).toEqual(before);
    await redo(act);
    expect(await airOfShop()).toEqual(after);
  });

  test('is that of its day where it has no time, as a typed value is', async () => {
    await yard.command('air.type', { placeId: yard.place.id, measuredOn: '2026-05-04', tempC: 18, rh: 0.6 });
    const checked = await imported([
      'Date,Temperature (°C),RH (%)',
      '2026-05-04,18,60',
      '2026-05-05,18,62',
      '2026-07-05,18,62',
    ]);
    expect(checked.counts.airValues).toBe(1);
    expect(problemsOf(checked)).toEqual([[4, 'Jul 5, 2026 is in the future, or too long ago.']]);
  });

  test('of a sensor that is stuck is saved, and not used', async () => {
    const stuck = hours(4 * 48).map((line) => line.replace(/,.*/, ',18,60'));
    await save((await imported(['Date,Temperature (°C),RH (%)', ...stuck])).plan);
    expect((await airOfShop()).usedDays).toBe(0);
  });
});

test('oven-dry checks come in, once', async () => {
  const file =
    'Piece,Species,Date,Reading,Wet weight (g),Dry 1,Dry 2\nP1,walnut,5/1/2026,12.5,98.5,88.06,88.05\n';
  const open = await read(file);
  expect(open.choices.kind).toBe('oven');
  await save((await check(open)).plan);
  const [fit] = await yard.query('ovenChecks.ofSpecies', { speciesId: 'walnut-black' });
  expect(fit!.checks).toHaveLength(1);
  expect(fit!.checks[0]!.weights.map(({ grams }) => grams)).toEqual([88.06, 88.05]);
  expect(fit!.checks[0]!.dry).toBe(true);
  await save((await check(await read(`${file}P2,walnut,5/1/2026,13,98.5,88\n`))).plan);
  const [after] = await yard.query('ovenChecks.ofSpecies', { speciesId: 'walnut-black' });
  expect(after!.checks).toHaveLength(2);
});

test('an oven-dry check of today loses no weight', async () => {
  const file =
    'Piece,Species,Date,Reading,Wet weight (g),Dry 1,Dry 2\nP1,walnut,6/1/2026,12.5,98.5,88.1,88.05\n';
  await save((await check(await read(file))).plan);
  const [fit] = await yard.query('ovenChecks.ofSpecies', { speciesId: 'walnut-black' });
  expect(fit!.checks[0]!.weights.map(({ grams }) => grams)).toEqual([88.1, 88.05]);
});

describe('what is no table is refused with a sentence', () => {
  test.each([
    ['a zipped workbook', Buffer.from('PK\x03\x04 and more'), 'This is a workbook'],
    ['a picture', Buffer.from('\x89PNG\r\n', 'latin1'), 'This file is not a text table.'],
    ['bytes', Buffer.from([1, 2, 3, 4, 5, 6, 7, 200]), 'This file is not a text table.'],
    ['nothing', '', 'This table is empty.'],
    ['an endless line', 'a'.repeat(400_000), 'A line of this file is too long.'],
    ['an open quote', 'Board,MC\n"X-1,12\nX-2,13\n', 'A quotation mark in line 2 is never closed.'],
    [
      'a wide row above many',
      `${Array(400).fill('a').join(',')}\n${'b,b\n'.repeat(30_000)}`,
      'It has more than 25,000 rows.',
    ],
    ['a row too wide', Array(600).fill('a').join(','), 'It has more than 500 columns.'],
  ])('%s', async (_, content, sentence) => {
    await expect(read(content)).rejects.toThrow(sentence);
  });

  test('a file that is not there', async () => {
    const gone = { file: '/nowhere/table.csv', ...american };
    expect(await yard.refusal('imports.read', gone)).toBe(say({ code: 'import.refused-no-file', facts: {} }));
  });

  test('two columns of one name: the first holds', async () => {
    const { choices } = await read('Board,Species,Species,Thickness\nX-1,walnut,walnut,8/4\n');
    expect(choices.columns.map(({ role }) => role)).toEqual(['code', 'species', 'unused', 'thickness']);
  });

  test('UTF-16 as spreadsheets save it is read', async () => {
    const text = 'Board\tSpecies\tThickness\nÄ 1\twalnut\t8/4\n';
    const checked = await check(await read(Buffer.from(`\uFEFF${text}`, 'utf16le')));
    expect(checked.counts.boards).toBe(1);
  });
});

describe('a cell of which nobody knows what was meant is no reading', () => {
  const rowOf = (cell: string) =>
    `Board,Species,Thickness,Date,MC %\nM-1,walnut,8/4,5/3/2025,"${cell.replaceAll('"', '""')}"\n`;
  test.each(['14.2.3', '14..2', '1e2', '14-16', '14 15 16', '14 °C', '3/8"'])('%s', async (cell) => {
    const checked = await check(await read(rowOf(cell)));
    expect(problemsOf(checked)).toEqual([
      [2, say({ code: 'import.no-reading', facts: { cellTypedText: cell } })],
    ]);
  });
  test.each([
    ['12.4 (3/8" deep)', [12.4]],
    ['12.4 / 13.1', [12.4, 13.1]],
    ['14 wet end', [14]],
    ['30+', [30]],
  ] as const)('%s is read as %j', async (cell, readings) => {
    const checked = await check(await read(rowOf(cell)));
    expect(checked.counts.readings).toBe(readings.length);
  });
  test.each([
    ['7/1/2025', 'import.reading-is-date'],
    ['7/1/2025 14:00', 'import.reading-is-date'],
    ['12/13/14', 'import.reading-is-date'],
    ['3 May', 'import.reading-is-date'],
    ['May 3, 2025', 'import.reading-is-date'],
    ['12:30', 'import.no-reading'],
    ['12:30:15', 'import.no-reading'],
    ['<6', 'import.reading-below-scale'],
    ['under 6', 'import.reading-below-scale'],
    ['6-', 'import.reading-below-scale'],
    ['2:20 pm', 'import.no-reading'],
    ['2025', 'import.reading-above'],
    ['1,402', 'import.reading-above'],
    ['0.14', 'import.reading-below'],
  ] as const)('%s', async (cell, code) => {
    const rows = [2, 3, 4].map((at) => `M-${at},walnut,8/4,5/3/2025,14.${at}\n`).join('');
    const checked = await check(await read(rowOf(cell) + rows));
    const problem = checked.refusedRows.flatMap(({ problems }) => problems)[0]?.problem;
    expect([checked.counts.readings, checked.refused, problem?.code]).toEqual([3, 1, code]);
  });
  test('200.1 is above what a pin meter shows, and 200 is not', async () => {
    const checked = await check(
      await read(`${rowOf('200')}M-2,walnut,8/4,5/3/2025,200.1\nM-3,walnut,8/4,5/3/2025,20.1\n`),
    );
    expect(problemsOf(checked)).toEqual([[3, '“200.1” is above 200%. Check the reading and its unit.']]);
  });
  test('a value in megohms is no percentage', async () => {
    const { plan } = await check(await read(rowOf('14 MOhm')));
    await save(plan);
    const { rows } = await yard.query('boards.list', { stackId: null, search: 'M-1', offset: 0, limit: 1 });
    const { readings } = await yard.query('boards.get', { id: rows[0]!.id });
    expect(readings.map(({ raw, unit }) => [raw, unit])).toEqual([[14e6, 'ohm']]);
  });
});

test('an abbreviation is asked about, and answered once for all', async () => {
  const file =
    'Board,Species,Thickness\nS-1,W. Oak,8/4\nS-2,White oak,8/4\nS-3,WO,8/4\nS-4,WO,8/4\nS-5,chestnut,8/4\n';
  const open = await read(file);
  expect((await check(open)).speciesNames).toEqual([
    { name: 'WO', rows: 2, speciesId: null },
    { name: 'W. Oak', rows: 1, speciesId: null },
    { name: 'chestnut', rows: 1, speciesId: 'chestnut-american' },
  ]);
  const speciesOfNames = { wo: 'oak-white', 'w. oak': 'oak-white' };
  const checked = await check({ ...open, choices: { ...open.choices, speciesOfNames } });
  expect(checked.counts.boards).toBe(5);
});

test('a board of another species or thickness than that of the yard is asked about', async () => {
  const open = await read(
    'Board,Species,Thickness (mm),Date,MC\nWAL-01,red oak,16,5/1/2025,14.1\nWAL-02,walnut,50,5/1/2025,15.1\nWAL-02,walnut,16,5/2/2025,15.2\n',
  );
  const checked = await check(open);
  expect(problemsOf(checked)).toEqual([
    [2, 'WAL-01 in this yard is Black walnut.'],
    [3, 'WAL-02 in this yard is 16 mm thick.'],
  ]);
  expect([checked.otherInYard, checked.counts.readings]).toEqual([2, 1]);
  const answered = await check({ ...open, choices: { ...open.choices, areInYard: true } });
  expect([answered.refused, answered.counts.readings]).toEqual([0, 3]);
});

test('a turned table with one ID over two columns says so of both', async () => {
  const open = await read('Board,A1,A2,A1\n5/1/2025,20.1,21.2,22.3\n6/1/2025,15.5,16.5,17.5\n');
  expect(open.reshaped).toBe('turned');
  const choices = { ...open.choices, speciesId: 'walnut-black', thicknessMm: 27 };
  const checked = await check({ ...open, choices });
  const twice = say({ code: 'import.twice-turned', facts: { boardCode: 'A1' } });
  expect(problemsOf(checked)).toEqual([
    [2, twice],
    [4, twice],
  ]);
  const fixes = [{ row: 3, column: 0, text: 'A3' }];
  expect((await check({ ...open, choices: { ...choices, fixes } })).counts.readings).toBe(6);
});

test('a turned table may say over its dates what each board is', async () => {
  const open = await read(
    'Stack,North,North,South\nBoard,A1,A2,A3\nSpecies,walnut,walnut,cherry\nThickness,1,2,1.5\n5/1/2025,20.1,21.2,22.3\n6/1/2025,15.5,,16.6\n7/1/2025,12,13,\n',
  );
  expect(open.reshaped).toBe('turned');
  const checked = await check(open);
  expect(checked.counts).toMatchObject({ boards: 3, readings: 7, stacks: 2 });
  await save(checked.plan);
  const { rows } = await yard.query('boards.list', { stackId: null, search: 'A3', offset: 0, limit: 1 });
  expect(rows).toMatchObject([{ speciesId: 'cherry-black', stackName: 'South' }]);
  expect(rows[0]?.thicknessMm).toBeCloseTo(38.1, 6);
  const { acts } = await yard.query('acts.list', { boardId: null, before: null, limit: 1 });
  expect(say(acts[0]!.line)).toBe('Imported a table: 3 boards, 7 readings, and 2 stacks.');
});

describe('visits across', () => {
  test.each([
    ['with their date over three', 'Board,Species,5/1/2025,,,6/1/2025,,\n,,1,2,3,1,2,3\n', 6],
    ['with names beside the depths', ',,5/1/2025,,6/1/2025,\nBoard,Species,Shell,Core,Shell,Core\n', 4],
    ['with a temperature each', ',,5/1/2025,,6/1/2025,\nBoard,Species,MC,Temp F,MC,Temp F\n', 2],
  ])('%s', async (_, head, readings) => {
    const values =
      readings === 2 ? '14,68,12,65' : '14,18,12,16,15,13'.split(',').slice(0, readings).join(',');
    const open = await read(`${head}X1,walnut,${values}\n`);
    const checked = await check({ ...open, choices: { ...open.choices, thicknessMm: 27 } });
    expect([checked.problems, checked.refused]).toEqual([[], 0]);
    expect(checked.counts).toMatchObject({ boards: 1, readings });
  });
  test('without a year they are told, and come in as nothing else', async () => {
    const open = await read('Board,Species,May 1,Jun 1\nX1,walnut,14,12\nX2,walnut,15,13\n');
    const checked = await check({ ...open, choices: { ...open.choices, thicknessMm: 27 } });
    expect(checked.remarks.map(say)).toContain(
      say({ code: 'import.numbers-unused', facts: { columnName: 'Jun 1' } }),
    );
  });
});

describe('the order of dates', () => {
  const head = 'Board,Species,Thickness,Sawn on,Date,MC\n';
  const row = (sawnOn: string, day: string) =>
    `${sawnOn.length}${day.length},walnut,8/4,${sawnOn},${day},14.2\n`;
  const ordersOf = async (rows: string) =>
    (await read(head + rows)).choices.columns.slice(3, 5).map(({ order }) => order);
  test('is asked where a single date is against the own one', async () => {
    const open = await read(`${head}D1,walnut,8/4,4/1/24,13/1/25,14.2\nD2,walnut,8/4,4/2/24,4/12/25,15.2\n`);
    const checked = await check(open);
    expect(checked.problems.map(say)).toEqual(
      ['Sawn on', 'Date'].map((columnName) => say({ code: 'import.choose-order', facts: { columnName } })),
    );
    expect(checked.counts.readings).toBe(0);
    const columns = open.choices.columns.map((column) =>
      column.order === null && ['day', 'sawn-on'].includes(column.role)
        ? { ...column, order: 'mdy' as const }
        : column,
    );
    const answered = await check({ ...open, choices: { ...open.choices, columns } });
    expect(problemsOf(answered).map(([line]) => line)).toEqual([2]);
  });
  test('of one column holds for the others of the table', async () => {
    expect(await ordersOf(row('13/1/24', '4/12/25') + row('14/11/24', '4/2/25'))).toEqual(['dmy', 'dmy']);
    expect(await ordersOf(row('1/13/24', '13/1/25') + row('1/14/24', '4/2/25'))).toEqual(['mdy', 'mdy']);
  });
});

describe('the time of a reading', () => {
  const takenAt = async (date: string) => {
    const checked = await check(await read(`Board,Species,Thickness,Date,MC\nT-1,walnut,8/4,${date},14.2\n`));
    if (checked.counts.readings === 0) return problemsOf(checked);
    await save(checked.plan);
    const { rows } = await yard.query('boards.list', { stackId: null, search: 'T-1', offset: 0, limit: 1 });
    return (await yard.query('boards.get', { id: rows[0]!.id })).readings.map((reading) => reading.takenAt);
  };
  // ISO 8601: what is behind a time says how far its clock is ahead of UTC.
  test('is taken with its distance from UTC', async () => {
    expect(await takenAt('2025-05-03T23:30:00+02:00')).toEqual(['2025-05-03T21:30:00.000Z']);
  });
  test('is taken from a year with short months and days', async () => {
    expect(await takenAt('2025/5/3 14:20')).toEqual([new Date('2025-05-03T14:20').toISOString()]);
  });
  test('is not still to come today', async () => {
    const later = new Date('2026-06-01T08:00:00Z');
    later.setHours(23, 59);
    expect(await takenAt(`6/1/2026 ${later.getHours()}:59`)).toEqual([
      [2, say({ code: 'import.later-today', facts: {} })],
    ]);
  });
});

test('names that every object has are names like any other', async () => {
  const file = 'Board,Species,Thickness,Place,Date,MC\nC-1,constructor,8/4,toString,5/3/2025,14.2\n';
  const checked = await check(await read(file));
  expect(checked.speciesNames).toEqual([{ name: 'constructor', rows: 1, speciesId: null }]);
  expect(checked.unknownPlaces).toEqual([{ name: 'toString', rows: 1 }]);
});

test('a table whose board was added by hand since it was checked is refused whole', async () => {
  const file =
    'Board,Species,Thickness,Date,MC\nQ-1,walnut,8/4,5/3/2025,14.2\nQ-2,walnut,8/4,5/3/2025,15.1\n';
  const checked = await check(await read(file));
  const board = {
    ...unknownOfBoard,
    code: 'Q-2',
    stackId: yard.stack.id,
    speciesId: 'oak-white',
    thicknessMm: 27,
  };
  await yard.command('boards.add', [newBoardSchema.parse(board)]);
  expect(await yard.refusal('imports.save', { plan: checked.plan })).toBe(
    say({ code: 'import.refused-changed', facts: { boardCode: 'Q-2' } }),
  );
  expect(await total()).toBe(3);
});

test('a copy cut within its last letter keeps its accents', async () => {
  const whole = Buffer.from('Board,Species,Thickness,Date,MC\nÄ-2,walnut,8/4,5/3/2025,14.2\n,,,,ü');
  const { sample } = await read(whole.subarray(0, -1));
  expect(sample[0]?.cells[0]).toBe('Ä-2');
});

test('a text that is too long is refused, so that no two names become one', async () => {
  const name = 'a'.repeat(81);
  const checked = await check(
    await read(`Board,Species,Thickness,Stack,Note\nN-1,walnut,8/4,${name},${'b'.repeat(3000)}\n`),
  );
  expect(problemsOf(checked)).toEqual([
    [2, ...[80, 2000].map((mostLetters) => say({ code: 'import.too-long', facts: { mostLetters } }))],
  ]);
});

test('boards for a closed stack open it again, which is said before', async () => {
  const boardIds = yard.boards.map(({ id }) => id);
  await yard.command('boards.archive', { boardIds, why: 'sold', at: yard.now() });
  await yard.command('stacks.close', { id: yard.stack.id, basedOn: 1 });
  await yard.command('places.close', { id: yard.place.id, basedOn: 1 });
  const checked = await check(
    await read('Board,Stack,Species,Thickness,Date,MC\nW-9,walnut,walnut,1,5/1/2026,14.0\n'),
  );
  expect(checked.counts).toMatchObject({ stacks: 0, boards: 1 });
  expect(checked.remarks.map(say)).toContain('The stack Walnut is closed. The import reopens it.');
  await save(checked.plan);
  expect(await yard.query('stacks.list', {})).toMatchObject([{ name: 'Walnut', boards: 1 }]);
  expect(await yard.query('places.list', {})).toMatchObject([{ name: 'Shop' }]);
});

describe('days that cross', () => {
  const noon = '2026-05-20T17:00:00.000Z';
  const file = (rows: string) => `Board,Species,Thickness,Date,Sawn on,MC\n${rows}\n`;
  const boardOf = async () => yard.query('boards.get', { id: yard.boards[0]!.id });

  test('readings of before a board was sold are its own; later ones and a later sawing are refused', async () => {
    await yard.command('boards.archive', { boardIds: [yard.boards[0]!.id], why: 'sold', at: noon });
    const rows = [
      'WAL-01,walnut,16 mm,5/19/2026,,14',
      'WAL-01,walnut,16 mm,5/21/2026,,13',
      'WAL-01,walnut,16 mm,,5/25/2026,',
    ];
    const checked = await check(await read(file(rows.join('\n'))));
    const why = 'Correct the date, or give another board another ID.';
    expect(problemsOf(checked)).toEqual([
      [3, `Read on May 21, 2026, after the board of that ID left the yard on May 20, 2026. ${why}`],
      [4, `Sawn on May 25, 2026, after the board of that ID left the yard on May 20, 2026. ${why}`],
    ]);
    expect(checked.counts).toMatchObject({ boards: 0, readings: 1 });
    expect(checked.remarks.map(say)).toContain(
      '1 board of this table left the yard: WAL-01. Only readings from before that are added. Give another board another ID.',
    );
    await save(checked.plan);
    expect((await boardOf()).readings).toMatchObject([{ raw: 14 }]);
    expect((await check(await read(file(rows[0]!)))).knownReadings).toBe(1);
  });

  test.each(['moved-first', 'probed-first'] as const)(
    'boards moved on a day of their readings are asked about once: %s',
    async (order) => {
      const { version: _, id: __, ...place } = yard.place;
      const shed = await yard.command('places.add', { ...place, name: 'Shed' });
      const boardIds = yard.boards.map(({ id }) => id);
      const { moves } = await boardOf();
      const changed = { when: { since: '2026-05-01T12:00:00.000Z', isDayOnly: true } };
      await yard.command('moves.edit', { id: moves[0]!.id, basedOn: 1, changed, together: true });
      const move = { boardIds, placeId: shed.id, since: noon };
      await yard.command('boards.move', { ...move, isInserted: true, isDayOnly: true });
      const before = (await boardOf()).moves;
      const open = await read(
        file(
          'WAL-01,walnut,16 mm,5/20/2026,,14\nWAL-02,walnut,16 mm,5/20/2026 13:30,,13\nN-1,walnut,16 mm,5/20/2026,,12',
        ),
      );
      const asked = await check(open);
      expect(asked.problems.map(say)).toEqual([
        '2 boards were moved on a day of their readings: WAL-01 and WAL-02. Choose which came first.',
      ]);
      expect(asked).toMatchObject({ isOrderAsked: true, rows: 0, counts: { boards: 0, readings: 0 } });

      const checked = await check({ ...open, choices: { ...open.choices, order } });
      expect(checked).toMatchObject({ isOrderAsked: true, problems: [], counts: { boards: 1, readings: 3 } });
      const { act } = await save(checked.plan);
      for (const id of boardIds) {
        const { moves, readings } = await yard.query('boards.get', { id });
        const [movedMs, readMs] = [moves.at(-1)!.since, readings[0]!.takenAt].map((at) => Date.parse(at));
        expect(order === 'moved-first' ? movedMs! <= readMs! : readMs! < movedMs!).toBe(true);
      }
      await yard.command('acts.undo', { act });
      expect((await boardOf()).moves.map(({ since }) => since)).toEqual(before.map(({ since }) => since));
      // What the yard has of that day is not asked about.
      await save((await check({ ...open, choices: { ...open.choices, order } })).plan);
      expect(await check(open)).toMatchObject({ isOrderAsked: false, knownReadings: 3 });
    },
  );
});

describe('columns of other habits', () => {
  // Common practice, no source; the values are invented.
  const rolesOf = async (file: string) => (await read(file)).choices.columns.map(({ role }) => role);
  const readingsOf = async (code: string) => {
    const { rows } = await yard.query('boards.list', { stackId: null, search: code, offset: 0, limit: 1 });
    return (await yard.query('boards.get', { id: rows[0]!.id })).readings;
  };

  test('a temperature, and numbers under a name that says something else, are no readings', async () => {
    const file = 'Board,Species,Date,Distance from end (in),moisture_pct,temp_c\n';
    expect(
      await rolesOf(`${file}H-1,walnut,5/3/2025,23.6,14.2,18.5\nH-2,walnut,5/3/2025,24.6,15.2,19.5\n`),
    ).toEqual(['code', 'species', 'day', 'unused', 'reading', 'wood-temp']);
  });
  test('what is like readings and is not imported is told', async () => {
    const file =
      'Board,Species,Thickness,Sawn on,Jan 5\nH-1,walnut,8/4,5/3/2024,23.6\nH-2,walnut,8/4,5/3/2024,24.6\n';
    const { remarks } = await check(await read(file));
    expect(remarks.map(say)).toContain(
      say({ code: 'import.numbers-unused', facts: { columnName: 'Jan 5' } }),
    );
  });
  test('what the meter showed goes before what was corrected of it, each in its unit', async () => {
    const file = 'Board,Species,Thickness,Taken at,Meter showed,Meter unit,Meter,MC (%)\n';
    const open = await read(
      `${file}H-1,walnut,8/4,2025-05-03T14:20:00.000Z,16,%,Garage meter,14.2\nH-1,walnut,8/4,2025-05-03T14:21:00.000Z,14000000,ohm,Garage meter,12.2\n`,
    );
    expect(open.choices.columns.map(({ role }) => role)).toEqual([
      'code',
      'species',
      'thickness',
      'day',
      'reading',
      'reading-unit',
      'unused',
      'unused',
    ]);
    await save((await check(open)).plan);
    expect((await readingsOf('H-1')).map(({ raw, unit, takenAt }) => [raw, unit, takenAt])).toEqual([
      [16, 'pct', '2025-05-03T14:20:00.000Z'],
      [14e6, 'ohm', '2025-05-03T14:21:00.000Z'],
    ]);
  });
  test('dates over shell and core hold for both', async () => {
    const file =
      'Board,Species,Thickness,5/3/2025,,6/7/2025,\n,,,Shell,Core,Shell,Core\nH-1,walnut,8/4,14.2,18.1,12.2,15.3\n';
    const open = await read(file);
    expect(open.choices.columns.slice(3).map(({ role, depth, on }) => [role, depth, on])).toEqual([
      ['reading', 'shell', '2025-05-03'],
      ['reading', 'core', '2025-05-03'],
      ['reading', 'shell', '2025-06-07'],
      ['reading', 'core', '2025-06-07'],
    ]);
    expect((await check(open)).counts).toMatchObject({ boards: 1, readings: 4 });
  });
  test('boards across are turned, so that each has a row', async () => {
    const open = await read('Date,A-1,A-2,A-3\n5/3/2025,14.2,15.1,16\n6/7/2025,13.2,14.1,15\n');
    expect(open.reshaped).toBe('turned');
    const choices = { ...open.choices, speciesId: 'walnut-black', thicknessMm: 52 };
    expect((await check({ ...open, choices })).counts).toMatchObject({ boards: 3, readings: 6 });
  });
  const found = async (file: string, chosen: Partial<ImportChoices> = {}) => {
    const { choices, ...open } = await read(file);
    return check({ ...open, choices: { ...choices, ...chosen } });
  };
  test('lists side by side come below each other', async () => {
    const file =
      'Board,Species,Thickness,Date,MC,,Board,Species,Thickness,Date,MC\nA-1,walnut,8/4,5/3/2025,14.2,,B-1,cherry,4/4,5/3/2025,15.2\nA-2,walnut,8/4,5/3/2025,14.2,,,,,,\n';
    expect((await read(file)).reshaped).toBe('below');
    expect((await found(file)).counts).toMatchObject({ boards: 3, readings: 3 });
  });
  test('labels over the header hold for all lines', async () => {
    const file =
      'Moisture readings,,\nStack:,North 2,\nSpecies: Red oak,Thickness: 8/4,\nDate,5/3/2025,\n\nBoard,Reading 1,Reading 2\nL-1,12.1,13.2\n';
    await save((await found(file)).plan);
    const { rows } = await yard.query('boards.list', { stackId: null, search: 'L-1', offset: 0, limit: 9 });
    expect(rows).toContainEqual(
      expect.objectContaining({ code: 'L-1', stackName: 'North 2', thicknessMm: 50.8 }),
    );
    expect((await readingsOf('L-1')).map(({ raw, takenAt }) => [raw, takenAt.slice(0, 10)])).toEqual([
      [12.1, '2025-05-03'],
      [13.2, '2025-05-03'],
    ]);
  });
  test('what stands over the lines of one stack ends with it', async () => {
    const file = 'Board,Date,MC\nStack A,,\nWalnut 8/4,,\nA-1,5/3/2025,14.2\nStack B,,\nB-1,5/3/2025,14.2\n';
    const checked = await found(file);
    expect(checked.counts).toMatchObject({ stacks: 1, boards: 1 });
    expect(problemsOf(checked)).toEqual([[6, say({ code: 'import.no-species', facts: {} })]]);
  });
  test('a line among the rows that says nothing known is shown, and is no stack', async () => {
    const file =
      'Board,Species,Thickness,Date,MC\nH-1,walnut,8/4,5/3/2025,14.2\nRained all week,,,,\nH-2,walnut,8/4,5/3/2025,14.2\n';
    const checked = await found(file);
    expect(checked.counts).toMatchObject({ boards: 2, stacks: 1 });
    expect(checked.refusedRows.map(({ row }) => row)).toEqual([2]);
  });
  test('the temperature beside each reading is of that reading', async () => {
    const file =
      'Board,Species,Thickness,5/3/2025,,6/7/2025,\n,,,MC,Temp,MC,Temp\nH-1,walnut,8/4,14.2,50,12.1,68\n';
    await save((await found(file)).plan);
    expect((await readingsOf('H-1')).map(({ raw, woodTempC }) => [raw, woodTempC])).toEqual([
      [12.1, 20],
      [14.2, 10],
    ]);
  });
  test('a board number that starts over with each log is refused, or joined with the log', async () => {
    const file =
      'Log,Board,Species,Thickness,Date,MC\n1,1,walnut,8/4,5/3/2025,14.2\n1,2,walnut,8/4,5/3/2025,14.2\n2,1,walnut,8/4,5/3/2025,15.2\n';
    expect(problemsOf(await found(file))).toEqual([
      [4, say({ code: 'import.other-log', facts: { line: 2 } })],
    ]);
    const { choices } = await read(file);
    const columns = choices.columns.map((column, at) =>
      at === 0 ? { ...column, role: 'code' as const } : column,
    );
    expect((await found(file, { columns })).counts).toMatchObject({ boards: 3, readings: 3 });
  });
  test('a board in two stacks on one day is refused; on two days that is told', async () => {
    const head = 'Stack,Board,Species,Thickness,Date,MC\nA,1,walnut,8/4,5/3/2025,14.2\n';
    expect(problemsOf(await found(`${head}B,1,walnut,8/4,5/3/2025,15.2\n`))).toEqual([
      [3, say({ code: 'import.other-stack', facts: { line: 2 } })],
    ]);
    const moved = await found(`${head}B,1,walnut,8/4,6/3/2025,15.2\n`);
    expect(moved.counts).toMatchObject({ boards: 1, readings: 2 });
    expect(moved.remarks.map(say)).toContain(say({ code: 'import.in-two-stacks', facts: { boards: 1 } }));
  });
  test.each([
    ['Resistance (ohm)', '14000000', 14e6],
    ['Resistance kΩ', '14000', 14e6],
    ['MC', '0.2 GΩ', 2e8],
  ])('%s of %s is a reading in ohms', async (head, cell, ohms) => {
    await save(
      (await check(await read(`Board,Species,Thickness,Date,${head}\nH-1,walnut,8/4,5/3/2025,${cell}\n`)))
        .plan,
    );
    expect((await readingsOf('H-1')).map(({ raw, unit }) => [raw, unit])).toEqual([[ohms, 'ohm']]);
  });
  test('an exported table of readings in ohms comes in again', async () => {
    const file =
      'Board,Species,Thickness (mm),Taken at,Meter showed,Meter unit,MC,UUID\nH-1,Black walnut,52,2025-05-03T14:20:00.000Z,14000000,ohm,12.2,6f9619ff-8b86-4d01-b42d-00cf4fc964ff\n';
    await save((await found(file)).plan);
    expect((await readingsOf('H-1')).map(({ raw, unit }) => [raw, unit])).toEqual([[14e6, 'ohm']]);
  });
  test('two sessions of a day keep their times', async () => {
    const file = 'Board,Species,Thickness,Date,Time,MC\n';
    const row = (time: string, mc: number) => `H-1,walnut,8/4,5/3/2025,${time},${mc}\n`;
    await save((await check(await read(file + row('8:00 AM', 14) + row('4:00 PM', 15)))).plan);
    expect((await readingsOf('H-1')).map(({ raw, takenAt }) => [raw, takenAt])).toEqual([
      [14, new Date('2025-05-03T08:00').toISOString()],
      [15, new Date('2025-05-03T16:00').toISOString()],
    ]);
  });
  test.each([
    ['4-Aug', 8],
    ['8-Apr', 8],
    ['Apr-6', 6],
    ['4-Apr', 4],
  ])('quarters that a spreadsheet took for a date: %s', async (cell, quarters) => {
    const open = await read(`Board,Species,Thickness\nH-1,walnut,${cell}\n`);
    await save((await check(open)).plan);
    const { rows } = await yard.query('boards.list', { stackId: null, search: 'H-1', offset: 0, limit: 1 });
    expect(rows[0]?.thicknessMm).toBeCloseTo(quarters * 6.35, 6);
  });
  test('weights out of the oven have their own dates, and the balance its own step', async () => {
    const file =
      'Piece,Species,Date,Reading,Wet weight (oz),Date 2,Dry weight 1,Date 3,Dry weight 2\nP1,walnut,5/3/2025,12.5,3.47,5/5/2025,3.15,5/6/2025,3.1\n';
    await save((await found(file)).plan);
    const [fit] = await yard.query('ovenChecks.ofSpecies', { speciesId: 'walnut-black' });
    const oven = fit?.checks[0];
    // An ounce is 28.349523125 g (NIST Handbook 44, appendix C); the weights are to hundredths of one.
    expect(oven?.balanceGrams).toBeCloseTo(0.2835, 4);
    expect(oven?.weights.map(({ grams, at }) => [grams.toFixed(2), at.slice(0, 10)])).toEqual([
      ['89.30', '2025-05-05'],
      ['87.88', '2025-05-06'],
    ]);
    const early = await found(file.replace('5/5/2025', '5/2/2025'));
    expect(problemsOf(early)).toEqual([[2, say({ code: 'import.dry-before', facts: {} })]]);
  });
  test('the units of an oven table are minded, and a second check of a piece is another', async () => {
    const head = 'Piece,Species,Date,Reading,Wet weight,Dry weight\n';
    const bad = await check(
      await read(`${head}P1,walnut,5/3/2025,12.5,98.5 kg,88.1 g\nP2,walnut,5/3/2025,12.5 °C,98.5,88.1\n`),
    );
    expect(problemsOf(bad)).toEqual([
      [2, say({ code: 'import.weights-impossible', facts: {} })],
      [3, say({ code: 'import.no-reading', facts: { cellTypedText: '12.5 °C' } })],
    ]);
    const two = await check(
      await read(`${head}P1,walnut,5/3/2025,12.5,98.5,88.1\nP1,walnut,5/3/2025,11.5,98.5,88.9\n`),
    );
    expect((await save(two.plan)).counts.ovenChecks).toBe(2);
  });
});
