/** What the yard holds as CSV, from a window and from the command line. */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { exportByCommand } from '../../../electron/exchange/export-by-command.ts';
import type { CsvKind } from '../../../shared-core/contract/exchange.ts';
import { outlooksMade, withYardOfTwo, yard } from '../app/yard-of-two.ts';
import { rowsOf } from './a-csv.ts';
import { savePastRound } from './a-past-round.ts';
import { downloaded } from './downloaded.ts';

// Real threads on a busy computer.
withYardOfTwo();

const region = { locale: 'en-US', timeZone: 'America/Chicago' };

async function exported(kind: CsvKind | 'tally'): Promise<Record<string, string>[]> {
  const offered = await yard.command('exchange.beginExport', { kind, region, work: null });
  expect(offered.fileName).toBe(`pintally-${kind}-2026-06-01.csv`);
  return rowsOf((await downloaded(yard, offered)).toString('utf8'));
}

async function saveReadings(): Promise<number> {
  const { id: roundId } = await yard.beginRound();
  const boardId = yard.boards[1]!.id;
  await yard.command('rounds.saveTyped', { roundId, boardId, spotIndex: 0, newestReadingId: null, raw: 9.8 });
  return roundId;
}

test('boards have their names, sizes in the units chosen, and their calls', async () => {
  await yard.command('settings.edit', { units: 'imperial' });
  await yard.command('boards.edit', {
    id: yard.boards[0]!.id,
    basedOn: 1,
    changed: { note: '=HYPERLINK("x"), über', widthMm: 254 },
  });
  const [first, second] = await exported('boards');
  expect(first).toMatchObject({
    Board: 'WAL-01',
    Stack: 'Walnut',
    Place: 'Shop',
    'Thickness (in)': '0.6299',
    'Width (in)': '10',
    Note: '\'=HYPERLINK("x"), über',
    Call: '',
  });
  expect(second).toMatchObject({ Board: 'WAL-02', Note: '' });
});

test('readings are as shown and as on screen, with how they were corrected, and why they are excluded', async () => {
  await saveReadings();
  const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
  const [assessed] = readings;
  await yard.command('readings.exclude', { readingId: assessed!.id, why: { code: 'wrong-spot' } });
  const [first, second] = await exported('readings');
  expect(first).toMatchObject({
    Board: 'WAL-01',
    Raw: '12.4',
    'Meter unit': '%',
    'Wood temperature (°F)': '68',
    'Depth known by': 'plan',
    Corrections: assessed!.corrected.steps.map(({ step }) => step).join('; '),
    Excluded: 'yes',
    'Why excluded': 'Wrong board or spot',
  });
  expect(Number(first!['MC (%)'])).toBeCloseTo(assessed!.corrected.mcPct!, 3);
  expect(second).toMatchObject({
    Board: 'WAL-02',
    Raw: '9.8',
    Excluded: 'no',
    'Why excluded': '',
  });
});

test('a corrected reading is as corrected, with what it was before', async () => {
  await saveReadings();
  const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
  await yard.command('readings.correct', {
    readingId: readings[0]!.id,
    corrected: { raw: 14.2 },
    shown: { raw: 12.4, unit: 'pct', woodTempC: 20 },
  });
  const [first, second] = await exported('readings');
  expect(first).toMatchObject({ Raw: '14.2', 'Raw before edit': '12.4' });
  expect(second).toMatchObject({ Raw: '9.8', 'Raw before edit': '' });
});

test('a reading that is above the scale of its meter says so', async () => {
  const roundId = await saveReadings();
  const at = { roundId, boardId: yard.boards[1]!.id, spotIndex: 1, newestReadingId: null };
  await yard.command('rounds.saveTyped', { ...at, raw: 28, isAbove: true });
  expect((await exported('readings')).map((row) => [row.Raw, row['Above scale']])).toEqual([
    ['12.4', 'no'],
    ['9.8', 'no'],
    ['28', 'yes'],
  ]);
});

test('of a round of which only the day is known, the day is written', async () => {
  await savePastRound(['unknown', 'unknown'], [14, 15]);
  const dated = { 'Round started': '2026-05-02', 'Taken at': '2026-05-02' };
  const unknown = { ...dated, Spot: '', 'Meant for': '', 'Depth (in)': '', 'Depth known by': 'unknown' };
  expect(await exported('readings')).toMatchObject([unknown, unknown]);
  await expect
    .poll(async () => (await exported('calls'))[0], { timeout: 15_000 })
    .toMatchObject({ 'Round started': '2026-05-02', 'Shell (%)': '', 'Core (%)': '' });
  expect((await exported('boards'))[0]).toMatchObject({ 'Probed at': '2026-05-02' });
});

test('of a reading whose place nobody gave, the depth is written and no place', async () => {
  await savePastRound([3], [14]);
  const there = { Spot: '', 'Meant for': 'shell', 'Depth (in)': '0.1181', 'Depth known by': 'person' };
  expect(await exported('readings')).toMatchObject([{ ...there, 'Distance from end (in)': '' }]);
});

test('of a board that left, it is written when, why, and to whom', async () => {
  const leaving = { why: 'sold', at: yard.now(), note: 'Marta, for shelves' } as const;
  await yard.command('boards.archive', { boardIds: [yard.boards[1]!.id], ...leaving });
  expect(await exported('boards')).toMatchObject([
    { 'Left the yard at': '', 'Why it left': '', 'To whom or what for': '' },
    { 'Left the yard at': yard.now(), 'Why it left': 'Sold', 'To whom or what for': 'Marta, for shelves' },
  ]);
});

test('a piece names the board that it was cut from, and boards have their board feet', async () => {
  const [first] = yard.boards;
  // 12 in wide, 8 ft long, under 1 in thick counts as 1 in: 8 board feet by definition, half as wide 4.
  const changed = { widthMm: 304.8, lengthMm: 2438.4 };
  await yard.command('boards.edit', { id: first!.id, basedOn: 1, changed });
  const pieces = ['A', 'B'].map((letter) => ({ code: `WAL-01${letter}`, widthMm: 152.4, lengthMm: 2438.4 }));
  await yard.command('boards.cut', { boardId: first!.id, how: 'ripped', at: yard.now(), pieces });
  expect(await exported('boards')).toMatchObject([
    { Board: 'WAL-01', 'Cut from board': '', 'Board feet': '8', 'Why it left': 'Ripped' },
    { Board: 'WAL-02', 'Cut from board': '' },
    { Board: 'WAL-01A', 'Cut from board': 'WAL-01', 'Board feet': '4' },
    { Board: 'WAL-01B', 'Cut from board': 'WAL-01', 'Board feet': '4' },
  ]);
});

test('boards that left go out as their list shows them', async () => {
  const [first, second] = yard.boards.map(({ id }) => id);
  const sell = (id: number, note: string) =>
    yard.command('boards.archive', { boardIds: [id], why: 'sold', note, at: yard.now() });
  await sell(first!, 'Miller');
  await sell(second!, 'Baker');
  const left = (search: string, soldTo: string | null) => ({
    stackId: null,
    search,
    left: { became: 'sold' as const, year: 2026, soldTo },
  });
  const exportedOf = async (which: ReturnType<typeof left>) => {
    const offered = await yard.command('exchange.beginExport', {
      kind: 'boards',
      left: which,
      region,
      work: null,
    });
    expect(offered.fileName).toBe('pintally-left-yard-2026-06-01.csv');
    return rowsOf((await downloaded(yard, offered)).toString('utf8'));
  };
  expect(await exportedOf(left('', 'Miller'))).toMatchObject([{ Board: 'WAL-01', 'Why it left': 'Sold' }]);
  expect((await exportedOf(left('', null))).map(({ Board }) => Board).sort()).toEqual(['WAL-01', 'WAL-02']);
  expect(await exportedOf(left('WAL-02', 'Miller'))).toEqual([]);
});

test('a tally is of the boards that are there, split by all that it can be split by', async () => {
  expect(await exported('tally')).toMatchObject([
    { Species: 'Black walnut', Call: '', Stack: 'Walnut', Boards: '2' },
  ]);
});

test('calls and forecasts are those that the file has', async () => {
  const roundId = await saveReadings();
  await yard.command('rounds.finish', { roundId });
  await outlooksMade();
  const [call] = await exported('calls');
  const { board } = await yard.query('boards.get', { id: yard.boards[0]!.id });
  expect(call).toMatchObject({ Board: 'WAL-01', Call: board.latest!.call ?? '' });
  expect(call!.Reason).not.toBe('');
  for (const forecast of await exported('forecasts')) {
    expect(forecast).toMatchObject({ Stack: 'Walnut', Place: 'Shop', 'There now': 'yes' });
  }
});

test('measured air has its source, and why it is not used', async () => {
  const type = (measuredOn: string, tempC: number) =>
    yard.command('air.type', { placeId: yard.place.id, measuredOn, tempC, rh: 0.6 });
  await type('2026-05-29', 21.11);
  await type('2026-05-30', 55);
  const [sound, unlike] = await exported('air');
  expect(sound).toMatchObject({ Place: 'Shop', 'RH (%)': '60', Source: 'typed', Sensor: '', Used: 'yes' });
  // Wood Handbook, Table 4-2: 70 °F and 60 %.
  expect(Number(sound!['EMC (%)'])).toBeCloseTo(11, 0);
  expect(unlike).toMatchObject({ Used: 'no', 'Why not used': 'unlike' });
});

test('one that is stopped leaves nothing', async () => {
  const work = randomUUID();
  const asked = yard.answer('exchange.beginExport', { kind: 'boards', region, work });
  await yard.command('work.cancel', { work });
  expect(await asked).toMatchObject({ ok: false, problem: { code: 'refusal.stopped' } });
  expect(readdirSync(join(yard.dataDir, 'transfers'))).toEqual([]);
});

test('the command line writes the same while the app is open, and replaces no file', async () => {
  await saveReadings();
  const folder = mkdtempSync(join(tmpdir(), 'pintally-export-test-'));
  const file = join(folder, 'readings.csv');
  vi.stubEnv('PINTALLY_DATA', yard.dataDir);
  expect(await exportByCommand([file, '--what', 'readings', '--units', 'metric'], process.env)).toBe(0);
  const rows = rowsOf(readFileSync(file, 'utf8'));
  expect(rows.map((row) => row.Raw)).toEqual(['12.4', '9.8']);
  expect(await exportByCommand([file, '--what', 'readings'], process.env)).toBe(1);
  expect(said.at(-1)).toContain('already exists');
  expect(await exportByCommand([join(folder, 'x.csv'), '--what', 'trees'], process.env)).toBe(1);
  expect(said.at(-1)).toContain('FILE.csv');
});

const said: string[] = [];
beforeEach(() => {
  vi.spyOn(console, 'log').mockImplementation((line) => said.push(line));
  vi.spyOn(console, 'error').mockImplementation((line) => said.push(line));
});
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllEnvs();
});
