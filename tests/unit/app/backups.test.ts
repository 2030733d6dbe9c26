/** Backups of a real yard file, by the app as it runs. */
import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  rmSync,
  statfsSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { createOwnThread } from '../../../electron/app/own-thread.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { createBackupFolder } from '../../../electron/app/yard/backup-folder.ts';
import { readBackupName } from '../../../electron/store/backup-name.ts';
import { openYard } from '../../../electron/store/yard.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { copyOfLayout } from '../store/layout-copy.ts';
import { say } from './a-window.ts';
import { withYardOfTwo, yard, yardOfTwo } from './yard-of-two.ts';

vi.mock('node:fs', async (original) => {
  const fs = await original<typeof import('node:fs')>();
  return { ...fs, statfsSync: vi.fn(fs.statfsSync) };
});

// Real threads on a busy computer.
withYardOfTwo();

const usual = (): string => join(yard.dataDir, 'backups');
const namesIn = (folder: string): string[] => readdirSync(folder).filter((name) => readBackupName(name));

/** Each backup with why it was made, oldest first. */
const reasonsIn = (folder: string) => namesIn(folder).map((name) => readBackupName(name)?.why);

/** The folder that a later start finds chosen. */
const chosenIn = (dataDir: string) =>
  createBackupFolder(dataDir, createOwnThread(threadSources.backup), 1000).chosen();

async function finishRound(): Promise<void> {
  const { id } = await yard.beginRound();
  await yard.command('rounds.finish', { roundId: id });
}
const backupsMade = (count: number, folder = usual()) =>
  expect.poll(() => namesIn(folder).length, { timeout: 15_000 }).toBe(count);

test('a finished round is backed up: one checked file that only its user can read, with all that was acknowledged', {
  tags: 'core',
}, async () => {
  await finishRound();
  await backupsMade(1);
  const [backup] = await yard.query('backups.list', {});
  expect(backup).toMatchObject({
    why: 'round',
    at: '2026-06-01T08:00:00.000Z',
    contents: { stacks: 1, boards: 2, readings: 1, isOlderLayout: false },
    isOfOtherYard: false,
  });
  expect(readdirSync(usual())).toHaveLength(1);
  expect(statSync(usual()).mode & 0o777).toBe(0o700);
  expect(statSync(backup!.file).mode & 0o777).toBe(0o600);
  const db = new Database(backup!.file, { readonly: true });
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(db.pragma('journal_mode', { simple: true })).toBe('delete');
  db.close();
});

test('the first opening of a day makes one, a second opening that day none', async () => {
  await yard.command('yard.openOwn', {});
  await backupsMade(1);
  await yard.command('yard.openOwn', {});
  yard.later(24 * 3_600_000);
  await yard.command('yard.openOwn', {});
  await backupsMade(2);
  expect(reasonsIn(usual())).toEqual(['day', 'day']);
});

test('the demo yard is not backed up', async () => {
  await yard.command('yard.openDemo', {});
  expect(await yard.refusal('backups.make', {})).toContain('Your own yard is not open.');
  expect(await yard.query('backups.list', {})).toEqual([]);
});

describe('where backups go', () => {
  let other: string;
  beforeEach(() => {
    other = join(mkdtempSync(join(tmpdir(), 'pintally-backups-')), 'of the yard');
  });

  test('a folder of the person’s choice is made, and remembered beside the yard file', async () => {
    const state = await yard.command('backups.setFolder', { folder: other });
    expect(state).toMatchObject({ chosenFolder: other, isAway: false });
    await yard.command('backups.make', {});
    expect(reasonsIn(other)).toEqual(['asked', 'asked']);
    expect(chosenIn(yard.dataDir)).toBe(other);
  });

  test('a folder that has no backup of the yard gets one at once, and says so', async () => {
    expect(await yard.command('backups.setFolder', { folder: other })).toMatchObject({ isBackedUp: true });
    expect(reasonsIn(other)).toEqual(['asked']);
    // It has one: another is made after a round, and when asked.
    expect(await yard.command('backups.setFolder', { folder: other })).toMatchObject({ isBackedUp: true });
    expect(reasonsIn(other)).toEqual(['asked']);
    expect(await yard.command('backups.setFolder', { folder: null })).toMatchObject({ isBackedUp: false });
  });

  test('that the newest one is elsewhere is said after the next start as well', async () => {
    await yard.command('backups.setFolder', { folder: other });
    rmSync(other, { recursive: true });
    await yard.command('backups.make', {});
    const again = createBackupFolder(yard.dataDir, createOwnThread(threadSources.backup), 1000);
    expect([again.chosen(), again.insteadFor()]).toEqual([other, 'away']);
  });

  test('while its disk is away they go to the default folder, and the window says so', async () => {
    await yard.command('backups.setFolder', { folder: other });
    // As where a disk is usually mounted: the folder is there, and empty.
    rmSync(other, { recursive: true });
    mkdirSync(other);
    const state = await yard.command('backups.make', {});
    expect(state).toMatchObject({ isAway: true, problem: null });
    expect(say(state.elsewhere!)).toBe(
      `The backup folder ${other} could not be used. The newest backup is in ${usual()}.`,
    );
    expect(reasonsIn(usual())).toEqual(['asked']);
    expect(readdirSync(other)).toEqual([]);
    // It is back: that is said no longer, and the next number goes on.
    await yard.command('backups.setFolder', { folder: other });
    expect(await yard.command('backups.make', {})).toMatchObject({ isAway: false, elsewhere: null });
    expect(namesIn(other).map((name) => readBackupName(name)?.number)).toEqual([3, 4]);
  });

  test.each(['backups', './backups'])('a path that is not whole is refused: %s', async (folder) => {
    expect(await yard.refusal('backups.setFolder', { folder })).toContain('Give the full path.');
  });

  test('a folder that cannot be made is refused, and the choice stays', async () => {
    await yard.command('backups.setFolder', { folder: other });
    writeFileSync(join(yard.dataDir, 'a-file'), '');
    const refused = await yard.refusal('backups.setFolder', {
      folder: join(yard.dataDir, 'a-file', 'in it'),
    });
    expect(refused).toContain('That is not a folder.');
    expect(await yard.query('backups.state', {})).toMatchObject({ chosenFolder: other });
  });

  test('backups of another yard in the same folder are listed as such, and never deleted', async () => {
    const stranger = 'pintally-2020-01-01T08-00-00Z-day-00001-abcdef01.sqlite';
    mkdirSync(usual());
    writeFileSync(join(usual(), stranger), 'of another yard');
    for (let made = 0; made < 4; made++) await yard.command('backups.make', {});
    expect(namesIn(usual())).toContain(stranger);
    expect(namesIn(usual())).toHaveLength(5);
    expect(await yard.query('backups.list', {})).toContainEqual(
      expect.objectContaining({ isOfOtherYard: true, contents: null }),
    );
  });

  test('a yard restored on another computer does not rotate away those of the first', async () => {
    await yard.command('backups.setFolder', { folder: other });
    for (let made = 0; made < 3; made++) await yard.command('backups.make', {});
    const first = namesIn(other);
    const second = await yardOfTwo();
    try {
      await second.command('backups.setFolder', { folder: other });
      await second.command('backups.restore', { file: join(other, first[0]!) });
      await second.query('yard.info', {});
      // Many days later.
      for (let day = 0; day < 20; day++) {
        second.later(24 * 3_600_000);
        await second.command('backups.make', {});
      }
      expect(namesIn(other)).toEqual(expect.arrayContaining(first));
    } finally {
      await second.app.close();
    }
  });

  test('a choice that cannot be read counts as none', () => {
    writeFileSync(join(yard.dataDir, 'backups.json'), '{"folder": 7}');
    expect(chosenIn(yard.dataDir)).toBeNull();
  });
});

test('one that fails says why, disturbs nothing, leaves the newest one, and is tried again', async () => {
  await yard.command('backups.make', {});
  const before = namesIn(usual());
  // A file of the next backup's name, as a folder that cannot be replaced: whoever runs the tests may be root.
  const blocked = 'pintally-2026-06-01T08-00-00Z-round-00002-';
  const own = readBackupName(before[0]!)!.yardId;
  mkdirSync(join(usual(), `${blocked}${own}.sqlite.part`, 'in it'), { recursive: true });
  await finishRound();
  await expect
    .poll(async () => (await yard.query('backups.state', {})).problem, { timeout: 15_000 })
    .not.toBeNull();
  expect(namesIn(usual())).toEqual(before);
  expect(await yard.query('boards.get', { id: yard.boards[0]!.id })).toMatchObject({});
  rmSync(join(usual(), `${blocked}${own}.sqlite.part`), { recursive: true });
  expect(await yard.command('backups.make', {})).toMatchObject({ problem: null });
  expect(namesIn(usual())).toHaveLength(2);
  yard.faults.length = 0;
});

test('what a killed backup left is removed by the next one of its yard', async () => {
  await yard.command('backups.make', {});
  const own = readBackupName(namesIn(usual())[0]!)!.yardId;
  const leftBy = (yardId: string) => `pintally-2026-05-01T08-00-00Z-day-00007-${yardId}.sqlite.part`;
  // The other may be under way: a folder on the network can have backups of several computers.
  for (const yardId of [own, 'abcdef01']) writeFileSync(join(usual(), leftBy(yardId)), 'half of a yard');
  await yard.command('backups.make', {});
  expect(readdirSync(usual()).filter((name) => name.endsWith('.part'))).toEqual([leftBy('abcdef01')]);
});

test('what a killed backup left is removed at the next opening, and nothing else', async () => {
  await yard.command('backups.make', {});
  const own = readBackupName(namesIn(usual())[0]!)!.yardId;
  const leftBy = (yardId: string) => `pintally-2026-05-01T08-00-00Z-day-00007-${yardId}.sqlite.part`;
  const others = ['mine.part', 'yard.sqlite.part', leftBy('abcdef01')];
  // Of a migration, an old yard has no id yet.
  const left = [leftBy(own), `${leftBy(own)}-journal`, leftBy('00000000')];
  for (const name of [...others, ...left]) writeFileSync(join(usual(), name), 'half of a yard');
  await yard.command('yard.openOwn', {});
  await expect
    .poll(
      () =>
        readdirSync(usual())
          .filter((name) => name.includes('.part'))
          .sort(),
      { timeout: 15_000 },
    )
    .toEqual([...others].sort());
});

test('a folder of backups that is a file is said, and disturbs nothing', async () => {
  writeFileSync(usual(), 'in the way');
  expect(await yard.refusal('backups.make', {})).toContain('Nothing could be saved in');
  expect(await yard.query('backups.list', {})).toEqual([]);
  expect(await yard.query('backups.state', {})).toMatchObject({
    problem: { code: 'refusal.backup-folder-refused' },
  });
});

describe('a yard file of an earlier layout', () => {
  /** Opens it in the place of the own one, which no app has open meanwhile. */
  async function openLayout(layout: number): Promise<{ readings: unknown; info: YardInfo }> {
    await yard.command('yard.openDemo', {});
    const own = join(yard.dataDir, 'yard.sqlite');
    for (const suffix of ['', '-wal', '-shm', '-newest']) rmSync(own + suffix, { force: true });
    copyFileSync(copyOfLayout(layout), own);
    const db = new Database(own, { readonly: true });
    const readings = db.prepare('SELECT count(*) FROM reading').pluck().get();
    db.close();
    return { readings, info: await yard.command('yard.openOwn', {}) };
  }

  test.each([1, 9, 11])(
    'layout %i is backed up as it was before it is brought to the newest',
    async (layout) => {
      const { readings, info } = await openLayout(layout);
      expect(info.problem).toBeNull();
      const backup = (await yard.query('backups.list', {})).find(({ why }) => why === 'migration');
      expect(backup).toMatchObject({
        contents: { readings, layout, isOlderLayout: true },
        isOfOtherYard: false,
      });
      expect(
        readdirSync(usual()).filter((name) => /migration.*(-(wal|shm|journal)|\.part)/.test(name)),
      ).toEqual([]);
      const db = new Database(backup!.file, { readonly: true });
      expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
      db.close();
      // It opens as a yard again, and the second opening of the own one made none.
      openYard(backup!.file).close();
      await yard.command('yard.openOwn', {});
      expect(reasonsIn(usual()).filter((why) => why === 'migration')).toHaveLength(1);
    },
  );

  test('is backed up beside it where the folder of backups does not take it', async () => {
    rmSync(usual(), { recursive: true, force: true });
    writeFileSync(usual(), 'in the way');
    const { readings, info } = await openLayout(9);
    expect(info).toMatchObject({ problem: null, kind: 'own' });
    expect(reasonsIn(yard.dataDir)).toEqual(['migration']);
    const [backup] = await yard.query('backups.list', {});
    expect(backup).toMatchObject({ why: 'migration', contents: { readings, layout: 9 } });
  });

  test('one that nothing takes a backup of is updated all the same, and that is what is said', async () => {
    rmSync(usual(), { recursive: true, force: true });
    writeFileSync(usual(), 'in the way');
    vi.mocked(statfsSync).mockReturnValueOnce({ bavail: 0, bsize: 4096 } as never);
    const { readings, info } = await openLayout(9);
    expect(info).toMatchObject({ problem: null, kind: 'own' });
    const { problem } = await yard.query('backups.state', {});
    expect(say(problem!)).toContain('Pintally updated your yard file without a backup');
    const db = new Database(info.file, { readonly: true });
    expect(db.prepare('SELECT count(*) FROM reading').pluck().get()).toBe(readings);
    db.close();
  });

  test('its backup goes beside the yard, whose disk answers, and is the newest of all', async () => {
    const chosen = join(mkdtempSync(join(tmpdir(), 'pintally-backups-')), 'of the yard');
    await yard.command('backups.setFolder', { folder: chosen });
    for (let made = 0; made < 2; made++) await yard.command('backups.make', {});
    const { info } = await openLayout(1);
    expect(info.problem).toBeNull();
    const migration = namesIn(usual())
      .map(readBackupName)
      .find((name) => name?.why === 'migration');
    // One when the folder was chosen, and two when asked.
    expect(migration?.number).toBe(4);
  });
});
