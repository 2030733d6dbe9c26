/** A disk that returns other bits of a reading than were written, which no check of SQLite's notices. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test } from 'vitest';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { type AWindow, openWindow, say } from './a-window.ts';
import { noMeter } from './no-meter.ts';
import { yardOfTwo } from './yard-of-two.ts';

// Real threads on a busy computer.

const RAWS = [14, 15, 14.2, 15.1];
/** 15.1, as a flipped bit makes it. */
const FLIPPED = 31.1;

/** A yard, closed again: one board read at its four spots, the round finished and backed up. */
async function probedYard({ isBackedUp = true } = {}) {
  const yard = await yardOfTwo();
  const { id: boardId } = yard.boards[0]!;
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  for (const [spotIndex, raw] of RAWS.entries()) {
    await yard.command('rounds.saveTyped', { roundId, boardId, spotIndex, newestReadingId: null, raw });
  }
  if (isBackedUp) {
    yard.later(60_000);
    await yard.command('backups.make', {});
  }
  const averagePct = await averageIn(yard);
  await yard.app.close();
  return { dataDir: yard.dataDir, boardId, roundId, averagePct };
}

/** The first board's average, as lists show it. */
async function averageIn({ query }: Pick<AWindow, 'query'>): Promise<number> {
  const { rows } = await query('boards.list', { stackId: null, search: '', offset: 0, limit: 9 });
  return rows[0]?.latest?.averagePct ?? 0;
}

/** Flips bits of the reading of 15.1 in the file itself. */
function flip(dataDir: string): void {
  const file = join(dataDir, 'yard.sqlite');
  const bytes = readFileSync(file);
  const [written, read] = [15.1, FLIPPED].map((raw) => {
    const number = Buffer.alloc(8);
    number.writeDoubleBE(raw);
    return number;
  }) as [Buffer, Buffer];
  const at = bytes.indexOf(written);
  expect(at).toBeGreaterThan(0);
  expect(bytes.indexOf(written, at + 1)).toBe(-1);
  read.copy(bytes, at);
  writeFileSync(file, bytes);
}

let apps: { close(): Promise<void> }[] = [];
afterEach(async () => {
  for (const app of apps) await app.close();
  apps = [];
});
function open(dataDir: string) {
  const faults: unknown[] = [];
  const app = createApp({
    dataDir,
    links: noMeter,
    threads: threadSources,
    clock: () => new Date('2026-06-01T09:00:00.000Z'),
    reportFault: (fault) => faults.push(fault),
    forecastAfterMs: 600_000,
    verifyAfterMs: 20,
  });
  const opened = { app, faults, ...openWindow(app) };
  apps.push(app);
  return opened;
}
type Opened = ReturnType<typeof open>;

const notesOf = async ({ query }: Opened) => (await query('recovery.notes', {})).map((note) => say(note));
const noteOf = async (opened: Opened): Promise<string | undefined> => {
  await expect.poll(() => notesOf(opened), { timeout: 20_000 }).toHaveLength(1);
  return (await notesOf(opened))[0];
};
const readingsOf = async ({ query }: Opened, id: number) =>
  (await query('boards.get', { id })).readings.toSorted((one, other) => one.id - other.id);

test('a reading that the disk changed is not used, and the person is told on which board and which backup has it', async () => {
  const { dataDir, boardId, roundId, averagePct } = await probedYard();
  flip(dataDir);
  const opened = open(dataDir);
  expect(await noteOf(opened)).toBe(
    'A disk error changed 1 reading. It is not used. Probe again: WAL-01. Or restore the backup of Jun 1, 2026, 3:01 AM: it has it unchanged.',
  );

  const readings = await readingsOf(opened, boardId);
  expect(readings.map(({ raw, counts }) => [raw, counts])).toEqual([
    [14, true],
    [15, true],
    [14.2, true],
    [FLIPPED, false],
  ]);
  expect(readings[3]!.suspicions.map(({ why, whatToDo }) => `${say(why)} ${say(whatToDo)}`)).toEqual([
    'A disk error changed this reading. Probe this spot again, or restore a backup.',
  ]);

  // What lists show was made again without it.
  await expect.poll(() => averageIn(opened), { timeout: 20_000 }).toBeLessThan(averagePct);

  // The spot is open, and the new reading there is used.
  const at = { roundId, boardId, spotIndex: 3, newestReadingId: readings[3]!.id };
  await opened.command('rounds.saveTyped', { ...at, raw: 15 });
  expect((await readingsOf(opened, boardId))[4]).toMatchObject({ raw: 15, counts: true });
  expect(opened.faults).toEqual([]);
});

test('such a reading cannot be included by hand, and its row stays as the disk returns it', async () => {
  const { dataDir, boardId } = await probedYard();
  flip(dataDir);
  const opened = open(dataDir);
  const { id: readingId } = (await readingsOf(opened, boardId))[3]!;
  await opened.command('readings.exclude', { readingId, why: { code: 'defect' } });
  await opened.command('readings.include', { readingId });
  expect((await readingsOf(opened, boardId))[3]).toMatchObject({ counts: false, excluded: null });
  const db = new Database(join(dataDir, 'yard.sqlite'), { readonly: true });
  expect(db.prepare('SELECT raw FROM reading WHERE id = ?').pluck().get(readingId)).toBe(FLIPPED);
  db.close();
});

test('a note that was dismissed is not shown again at the next opening', async () => {
  const { dataDir } = await probedYard();
  flip(dataDir);
  const opened = open(dataDir);
  await noteOf(opened);
  await opened.command('recovery.dismissNote', { code: 'yard-note.readings-damaged' });
  expect(await notesOf(opened)).toEqual([]);
  await opened.command('yard.openOwn', {});
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect(await notesOf(opened)).toEqual([]);
});

test('where no backup has the reading as it was saved, the note says so', async () => {
  const { dataDir } = await probedYard({ isBackedUp: false });
  flip(dataDir);
  expect(await noteOf(open(dataDir))).toBe(
    'A disk error changed 1 reading. It is not used. Probe again: WAL-01. No backup has it unchanged.',
  );
});

test('of a yard whose readings are as they were saved, nothing is said', async () => {
  const { dataDir, boardId } = await probedYard();
  const opened = open(dataDir);
  await new Promise((resolve) => setTimeout(resolve, 500));
  expect(await notesOf(opened)).toEqual([]);
  expect((await readingsOf(opened, boardId)).every(({ counts }) => counts)).toBe(true);
  expect(opened.faults).toEqual([]);
});
