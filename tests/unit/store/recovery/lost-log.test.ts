import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { createApp } from '../../../../electron/app/app.ts';
import { threadSources } from '../../../../electron/app/thread-files.ts';
import { salvage } from '../../../../electron/store/salvage/salvage.ts';
import { readWal } from '../../../../electron/store/wal-frames.ts';
import { openWindow } from '../../app/a-window.ts';
import { noMeter } from '../../app/no-meter.ts';
import { withYardOfTwo, yard } from '../../app/yard-of-two.ts';

withYardOfTwo();

/** The files as they are on disk now, as after a kill. */
function asKilled(): string {
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-lost-wal-'));
  cpSync(yard.dataDir, dataDir, { recursive: true });
  return dataDir;
}

/** What a window of another Pintally hears of that yard. */
async function notesIn(dataDir: string) {
  const app = createApp({
    dataDir,
    links: noMeter,
    threads: threadSources,
  });
  const window = openWindow(app);
  const info = await window.query('yard.info', {});
  const notes = await window.query('recovery.notes', {});
  return { app, window, info, notes };
}

test('a yard whose WAL was deleted after a kill says which changes are missing, until that is dismissed', async () => {
  const dataDir = asKilled();
  rmSync(join(dataDir, 'yard.sqlite-wal'));
  const { app, window, notes } = await notesIn(dataDir);
  expect(notes).toEqual([
    { code: 'yard-note.changes-missing', facts: { changes: 3, newestAt: expect.any(String) } },
  ]);
  await window.command('recovery.dismissNote', { code: 'yard-note.changes-missing' });
  expect(await window.query('recovery.notes', {})).toEqual([]);
  await app.close();
});

test('a yard that was killed and has its WAL has nothing to say', async () => {
  const { app, info, notes } = await notesIn(asKilled());
  expect(info.boards).toBe(2);
  expect(notes).toEqual([]);
  await app.close();
});

test('a yard whose WAL had one bit wrong has all its boards, and says what was repaired', async () => {
  const dataDir = asKilled();
  const wal = readFileSync(join(dataDir, 'yard.sqlite-wal'));
  const first = readWal(wal)!.frames[2]!.offset;
  wal.writeUInt8(wal.readUInt8(first + 40) ^ 1, first + 40);
  writeFileSync(join(dataDir, 'yard.sqlite-wal'), wal);
  const { app, info, notes } = await notesIn(dataDir);
  expect(info.boards).toBe(2);
  expect(notes).toMatchObject([{ code: 'yard-note.changes-repaired' }]);
  await app.close();
});

test('a yard whose WAL has a page overwritten is not opened, so that nothing overwrites what follows', async () => {
  const dataDir = asKilled();
  const wal = readFileSync(join(dataDir, 'yard.sqlite-wal'));
  const first = readWal(wal)!.frames[2]!.offset;
  wal.fill(0xa5, first, first + 4096);
  writeFileSync(join(dataDir, 'yard.sqlite-wal'), wal);
  const { app, window, info } = await notesIn(dataDir);
  expect(info).toMatchObject({ problem: { code: 'refusal.yard-changes-unreadable' }, canStartAfresh: true });
  expect(readFileSync(join(dataDir, 'yard.sqlite-wal')).equals(wal)).toBe(true);

  expect(await window.command('recovery.salvage', {})).toMatchObject({ problem: null, boards: 2 });
  expect(await window.query('recovery.notes', {})).toMatchObject([
    { code: 'yard-note.salvaged', facts: { boards: 2, readings: 0 } },
  ]);
  expect((await window.query('recovery.report', {}))?.kinds).toContainEqual({
    kind: 'boards',
    saved: 2,
    lost: 0,
  });
  const day = new Date().toISOString().slice(0, 10);
  expect(readFileSync(join(dataDir, `yard.sqlite.damaged-${day}-wal`)).equals(wal)).toBe(true);
  await app.close();
});

test('a finished round is in the file itself, and the WAL is empty', async () => {
  const { id: roundId } = await yard.command('rounds.start', { stackId: yard.stack.id, woodTempC: 20 });
  await yard.command('rounds.finish', { roundId });
  // What follows from it, as judging, may write again; the round's own commits are no more in the WAL.
  expect(statSync(join(yard.dataDir, 'yard.sqlite-wal')).size).toBeLessThan(100_000);
  const dataDir = asKilled();
  rmSync(join(dataDir, 'yard.sqlite-wal'));
  const { app, notes } = await notesIn(dataDir);
  expect(notes).toEqual([]);
  await app.close();
});

/** As a kill leaves it: everything was read, and the damaged file is at one of its places. */
function salvageCutShort(dataDir: string, damagedIs: 'at its place' | 'renamed'): void {
  const file = join(dataDir, 'yard.sqlite');
  const target = `${file}-salvaged`;
  const report = salvage(file, target);
  writeFileSync(`${file}-salvaged.json`, JSON.stringify(report));
  writeFileSync(`${file}-salvaging`, 'left of an earlier one');
  if (damagedIs === 'at its place') writeFileSync(file, Buffer.alloc(8192, 0xa5));
  else
    for (const suffix of ['-wal', '-shm', ''])
      renameSync(file + suffix, `${file}.damaged-2026-06-01${suffix}`);
}

test.each(['at its place', 'renamed'] as const)(
  'a salvage that a kill ended with the damaged file %s is finished at the next opening',
  async (damagedIs) => {
    const dataDir = asKilled();
    salvageCutShort(dataDir, damagedIs);
    const { app, info, notes } = await notesIn(dataDir);
    expect(info).toMatchObject({ problem: null, boards: 2 });
    expect(notes).toContainEqual(
      expect.objectContaining({ code: 'yard-note.salvaged', facts: expect.objectContaining({ boards: 2 }) }),
    );
    const names = readdirSync(dataDir);
    expect(names.filter((name) => /-salvag(ing|ed)(-|$)/.test(name))).toEqual([]);
    expect(names.filter((name) => /^yard\.sqlite\.damaged-[\d-]+$/.test(name))).toHaveLength(1);
    expect(readFileSync(join(dataDir, 'logs', 'pintally.log'), 'utf8')).toContain('yard-salvaged');
    await app.close();
  },
);

test('a missing yard file with its WAL left is not salvaged, and a new yard leaves that under another name', async () => {
  const dataDir = asKilled();
  const wal = readFileSync(join(dataDir, 'yard.sqlite-wal'));
  rmSync(join(dataDir, 'yard.sqlite'));
  const { app, window, info } = await notesIn(dataDir);
  expect(info).toMatchObject({ problem: { code: 'refusal.yard-missing' } });
  await expect(window.command('recovery.salvage', {})).rejects.toThrow();
  expect(readdirSync(dataDir).filter((name) => name.includes('salvag'))).toEqual([]);
  expect(await window.command('yard.startAfresh', {})).toMatchObject({ problem: null, boards: 0 });
  const renamed = join(dataDir, `yard.sqlite.damaged-${new Date().toISOString().slice(0, 10)}`);
  expect(readFileSync(`${renamed}-wal`).equals(wal)).toBe(true);
  expect(readFileSync(join(dataDir, 'logs', 'pintally.log'), 'utf8')).toContain(
    'yard-not-usable refusal.yard-missing',
  );

  // There is no earlier file that a note could name.
  expect(await window.query('recovery.notes', {})).toEqual([]);
  await app.close();
});

test('a new yard begun in the place of a damaged one names that file, until the note is dismissed', async () => {
  const dataDir = asKilled();
  const wal = readFileSync(join(dataDir, 'yard.sqlite-wal'));
  const first = readWal(wal)!.frames[2]!.offset;
  writeFileSync(join(dataDir, 'yard.sqlite-wal'), wal.fill(0xa5, first, first + 4096));
  const { app, window } = await notesIn(dataDir);
  expect(await window.command('yard.startAfresh', {})).toMatchObject({ problem: null, boards: 0 });
  const file = join(dataDir, `yard.sqlite.damaged-${new Date().toISOString().slice(0, 10)}`);
  const note = { code: 'yard-note.started-new', facts: { file } };
  expect(await window.query('recovery.notes', {})).toEqual([note]);
  await app.close();
  const again = await notesIn(dataDir);
  expect(again.notes).toEqual([note]);
  await again.window.command('recovery.dismissNote', { code: note.code });
  await again.app.close();
  const last = await notesIn(dataDir);
  expect(last.notes).toEqual([]);
  await last.app.close();
});
