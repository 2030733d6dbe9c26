/** A disk that damaged the text of an entry: SQLite finds nothing wrong with the file, and the text is no JSON any more. */
import { cpSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { openWindow, say } from './a-window.ts';
import { noMeter } from './no-meter.ts';
import { yardOfTwo } from './yard-of-two.ts';

// Real threads on a busy computer.

let apps: { close(): Promise<void> }[] = [];
afterEach(async () => {
  for (const app of apps) await app.close();
  apps = [];
});
function open(dataDir: string) {
  const app = createApp({ dataDir, links: noMeter, threads: threadSources });
  apps.push(app);
  return openWindow(app);
}
type Opened = ReturnType<typeof open>;
const notesOf = async ({ query }: Opened) => (await query('recovery.notes', {})).map((note) => say(note));

let saved: string;
beforeAll(async () => {
  saved = await savedYard();
});

/** Another folder with that yard, of which the disk returns other bytes: no rule of the file holds it up. */
function damagedYard(sql: string): string {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-damaged-'));
  cpSync(saved, dataDir, { recursive: true });
  damage(dataDir, sql);
  return dataDir;
}

/** A yard, closed again: walnut boards, of which one was read, with an own species and use, and settings. */
async function savedYard(): Promise<string> {
  const yard = await yardOfTwo();
  const [walnut] = (await yard.query('species.list', {})).filter(({ id }) => id === 'walnut-black');
  const { version: _v, builtIn: _b, ...species } = walnut!;
  await yard.command('species.add', { ...species, id: 'walnut-hill', name: 'Hill walnut' });
  const use = {
    minPct: 9,
    maxPct: 12,
    tolerancePoints: 2,
    minIsAdvice: false,
    maxShellCorePct: 3,
    cautions: [],
    note: '',
    source: '',
  };
  await yard.command('endUses.add', { ...use, id: 'sheds', name: 'Sheds' });
  await yard.command('stacks.edit', { id: yard.stack.id, basedOn: 1, changed: { endUseId: 'sheds' } });
  await yard.command('boards.edit', {
    id: yard.boards[0]!.id,
    basedOn: 1,
    changed: { speciesId: 'walnut-hill' },
  });
  await yard.command('settings.edit', { units: 'metric', sound: false });
  const { id: roundId } = await yard.beginRound();
  await yard.command('rounds.finish', { roundId });
  await yard.app.close();
  return yard.dataDir;
}

function damage(dataDir: string, sql: string): void {
  const db = new Database(join(dataDir, 'yard.sqlite'));
  db.pragma('ignore_check_constraints = ON');
  const triggers = db.prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'").all() as {
    name: string;
    sql: string;
  }[];
  for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`);
  db.exec(sql);
  for (const trigger of triggers) db.exec(trigger.sql);
  db.close();
}

async function everyList({ query }: Opened) {
  const { rows } = await query('boards.list', {
    stackId: null,
    search: '',
    sort: 'species',
    offset: 0,
    limit: 9,
  });
  await query('boards.get', { id: rows[0]!.id });
  return {
    boards: rows,
    stacks: await query('stacks.list', {}),
    places: await query('places.list', {}),
    species: await query('species.list', {}),
    uses: await query('endUses.list', {}),
    settings: await query('settings.get', {}),
  };
}

const ENTRY = 'Default values are used instead. Open it, check it, and save it. Or restore a backup.';

test('a place whose air is damaged is shown with average air, and is right again once it is saved', async () => {
  const dataDir = damagedYard(`UPDATE place SET air = substr(air, 2)`);
  const opened = open(dataDir);
  expect(await notesOf(opened)).toEqual([`A disk error damaged the air of Shop. ${ENTRY}`]);
  const { places, boards } = await everyList(opened);
  expect(places).toMatchObject([{ name: 'Shop', isDamaged: true }]);
  // Forecasts are wide.
  expect(places[0]?.air.every(({ emcSdPct = 0 }) => emcSdPct > 2)).toBe(true);
  expect(boards).toHaveLength(2);

  const { id, version: basedOn } = places[0]!;
  const air = Array.from({ length: 12 }, () => ({ tempC: 20, rh: 0.4 }));
  const saved = await opened.command('places.edit', { id, basedOn, changed: { air, airSource: null } });
  expect(saved).toMatchObject({ air });
  expect(saved).not.toHaveProperty('isDamaged');
  await opened.command('yard.openOwn', {});
  expect(await notesOf(opened)).toEqual([]);
});

test('a place is shown where only the source of its air is damaged: its months stay', async () => {
  const dataDir = damagedYard(`UPDATE place SET air_source = '{'`);
  const { places } = await everyList(open(dataDir));
  expect(places).toMatchObject([{ name: 'Shop', isDamaged: true }]);
  expect(places[0]?.air[0]).toEqual({ tempC: 20, rh: 0.4 });
});

test('an own species that is damaged has its name and no figures, and is right again once it is saved', async () => {
  const dataDir = damagedYard(`UPDATE species SET record = substr(record, 2) WHERE id = 'walnut-hill'`);
  const opened = open(dataDir);
  expect(await notesOf(opened)).toEqual([
    'A disk error damaged the species Hill walnut. Blank values were lost. ' +
      'Open it, check it, and save it. Or restore a backup.',
  ]);
  const { species, boards } = await everyList(opened);
  const damaged = species.find(({ id }) => id === 'walnut-hill')!;
  expect(damaged).toMatchObject({ name: 'Hill walnut', isDamaged: true, radialPct: null, curveId: null });
  expect(species.filter(({ isDamaged }) => isDamaged)).toHaveLength(1);
  expect(boards.map(({ speciesName }) => speciesName)).toEqual(['Black walnut', 'Hill walnut']);

  const { id, version: basedOn } = damaged;
  await opened.command('species.edit', { id, basedOn, changed: { radialPct: 5.5 } });
  await opened.command('yard.openOwn', {});
  expect(await notesOf(opened)).toEqual([]);
});

test('of a species with one damaged figure the others stay', async () => {
  const dataDir = damagedYard(
    `UPDATE species SET record = replace(record, 'radialPct', 'radiblPct') WHERE id = 'walnut-hill'`,
  );
  const { species } = await everyList(open(dataDir));
  const damaged = species.find(({ id }) => id === 'walnut-hill')!;
  expect(damaged).toMatchObject({ isDamaged: true, radialPct: null });
  expect(damaged.tangentialPct).toBeGreaterThan(0);
});

test('an own use that is damaged has its name and usual limits, and its stack is shown', async () => {
  const dataDir = damagedYard(`UPDATE end_use SET record = substr(record, 2) WHERE id = 'sheds'`);
  const opened = open(dataDir);
  expect(await notesOf(opened)).toEqual([`A disk error damaged the use Sheds. ${ENTRY}`]);
  const { uses, stacks } = await everyList(opened);
  expect(uses.find(({ id }) => id === 'sheds')).toMatchObject({ name: 'Sheds', isDamaged: true });
  expect(stacks).toMatchObject([{ endUseName: 'Sheds' }]);
});

test('a built-in species that was edited and is damaged has its built-in figures', async () => {
  const dataDir = damagedYard(`UPDATE species SET record = '{', built_in = 0 WHERE id = 'walnut-black'`);
  const { species } = await everyList(open(dataDir));
  const walnut = species.find(({ id }) => id === 'walnut-black')!;
  expect(walnut).toMatchObject({ isDamaged: true });
  expect(walnut.radialPct).toBeGreaterThan(0);
});

test('damaged settings have default values, which the note says until it is dismissed', async () => {
  const dataDir = damagedYard(`UPDATE setting SET value = substr(value, 2) WHERE key = 'settings'`);
  const opened = open(dataDir);
  expect(await notesOf(opened)).toEqual([
    'A disk error damaged the settings. Default values are used instead. Check the settings. Or restore a backup.',
  ]);
  expect((await everyList(opened)).settings).toMatchObject({ units: null, sound: true });
  await opened.command('recovery.dismissNote', { code: 'yard-note.entries-damaged' });
  await opened.command('yard.openOwn', {});
  expect(await notesOf(opened)).toEqual([]);
});

test('a meter whose description is damaged is named, and is described again', async () => {
  const dataDir =
    damagedYard(`INSERT INTO meter (uuid, kind, device_id, name) VALUES ('m', 'bluetooth', 'aa', 'Pin meter');
     INSERT INTO meter_profile (uuid, meter_id, version, record, made_at)
       SELECT 'p', id, 1, '{', '2026-01-01T00:00:00.000Z' FROM meter WHERE uuid = 'm'`);
  expect(await notesOf(open(dataDir))).toEqual([
    'A disk error damaged the description of the meter Pin meter. ' +
      'Describe the meter again on the Meter page. Or restore a backup.',
  ]);
});

test('a reading is excluded where its exclusion is damaged, until it is included', async () => {
  const dataDir = damagedYard('');
  const first = open(dataDir);
  const { boards } = await everyList(first);
  const id = boards.find(({ code }) => code === 'WAL-01')!.id;
  const readingOf = async ({ query }: Opened) => (await query('boards.get', { id })).readings[0]!;
  const { id: readingId } = await readingOf(first);
  await first.command('readings.exclude', { readingId, why: { code: 'defect' } });
  await apps.pop()?.close();
  damage(dataDir, "UPDATE amendment SET value = '{'");

  const opened = open(dataDir);
  expect(await readingOf(opened)).toMatchObject({ excluded: { code: 'damaged' }, counts: false });
  await opened.command('readings.include', { readingId });
  expect(await readingOf(opened)).toMatchObject({ excluded: null, counts: true });
});

test('a yard with a damaged entry is backed up all the same', async () => {
  const dataDir = damagedYard(`UPDATE place SET air = substr(air, 2)`);
  const { command, query } = open(dataDir);
  await command('backups.make', {});
  expect((await query('backups.list', {})).some(({ contents }) => contents?.boards === 2)).toBe(true);
});
