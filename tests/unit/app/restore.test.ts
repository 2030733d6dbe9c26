/** Restoring a backup of a real yard file, and undoing that. */
import { execFileSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { finishRestore } from '../../../electron/store/restore.ts';
import { copyOfLayout } from '../store/layout-copy.ts';
import { endOthers, startAnother } from './other-process.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Real threads on a busy computer.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 });
withYardOfTwo();

const stacks = async () => (await yard.query('stacks.list', {})).map(({ name }) => name);
/** Restores or undoes, and goes on in the yard that is open then. */
async function change(name: 'backups.restore' | 'backups.undoRestore', input: object) {
  await yard.command(name, input as never);
  return yard.query('yard.info', {});
}
const rename = (name: string) =>
  yard.command('places.edit', { id: yard.place.id, basedOn: 1, changed: { name } });
const placeNames = async () => (await yard.query('places.list', {})).map(({ name }) => name);

/** A backup, then a reading and a new name of the place, which it does not have. */
async function backupAndMore(): Promise<string> {
  await yard.command('backups.make', {});
  const [backup] = await yard.query('backups.list', {});
  await yard.beginRound();
  await rename('Loft');
  return backup!.file;
}

test('a look inside says what it holds and how many readings it leaves out, and changes nothing', async () => {
  const file = await backupAndMore();
  expect(await yard.query('backups.look', { file })).toMatchObject({
    contents: { stacks: 1, boards: 2, readings: 0 },
    missing: {
      readings: 1,
      rounds: 1,
      edits: 1,
      stacks: 0,
      boards: 0,
      places: 0,
      ovenChecks: 0,
      corrections: 0,
    },
  });
  expect(await placeNames()).toEqual(['Loft']);
});

test('a look inside says what else is newer in the current yard, one kind at a time', async () => {
  const file = await backupAndMore();
  await yard.command('boards.add', [yard.board('WAL-03')]);
  await yard.command('places.add', { name: 'Shed', kind: 'open-shed', air: yard.place.air });
  const { readings } = await yard.query('boards.get', { id: yard.boards[0]!.id });
  await yard.command('readings.exclude', { readingId: readings[0]!.id, why: { code: 'knot' } });
  expect(await yard.query('backups.look', { file })).toMatchObject({
    missing: { readings: 1, boards: 1, places: 1, rounds: 1, corrections: 1, edits: 1, stacks: 0 },
  });
});

test('a backup of an earlier layout is compared by what it has', async () => {
  for (const layout of [1, 9, 10]) {
    expect(await yard.query('backups.look', { file: copyOfLayout(layout) })).toMatchObject({
      missing: { boards: expect.any(Number), corrections: 0 },
    });
  }
});

test('the yard is as it was then; undone, it is as it was before, with every reading', async () => {
  const file = await backupAndMore();
  const before = await yard.query('yard.info', {});
  const restored = await change('backups.restore', { file });
  expect(restored).toMatchObject({ problem: null, kind: 'own', boards: 2 });
  // Windows that show the yard as it was notice by it that this is another.
  expect(restored.uuid).not.toBe(before.uuid);
  expect(await placeNames()).toEqual(['Shop']);
  expect(await yard.query('backups.state', {})).toMatchObject({
    restored: { backedUpAt: '2026-06-01T08:00:00.000Z', missing: { readings: 1, rounds: 1 } },
  });
  const undone = await change('backups.undoRestore', {});
  expect(undone.uuid).toBe(before.uuid);
  expect(await placeNames()).toEqual(['Loft']);
  expect(await yard.query('backups.state', {})).toMatchObject({ restored: null });
  const list = await yard.query('backups.list', {});
  expect(list.map(({ why, contents, isOfOtherYard }) => [why, contents?.readings, isOfOtherYard])).toEqual([
    ['restore', 0, false],
    ['restore', 1, false],
    ['asked', 0, false],
  ]);
});

test('what another window does meanwhile is saved before, or refused, and never lost', async () => {
  const file = await backupAndMore();
  const { version } = (await yard.query('places.list', {}))[0]!;
  const restoring = yard.command('backups.restore', { file });
  const refused = yard.answer('places.edit', {
    id: yard.place.id,
    basedOn: version,
    changed: { name: 'Attic' },
  });
  await restoring;
  const answer = await refused;
  await change('backups.undoRestore', {});
  expect(await placeNames()).toEqual([answer.ok ? 'Attic' : 'Loft']);
});

test('a file of an older layout is brought to the newest', async () => {
  const info = await change('backups.restore', { file: copyOfLayout(3) });
  expect(info.problem).toBeNull();
  expect(await stacks()).not.toEqual(['Walnut']);
});

/** Each file of a folder with its bytes. */
const bytesIn = (folder: string) =>
  new Map(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), 'base64')]));

test('a file in WAL mode is read with what lies beside it, and is left as it was to the byte', async () => {
  await backupAndMore();
  const folder = mkdtempSync(join(tmpdir(), 'pintally-restore-'));
  const file = join(folder, 'chosen.sqlite');
  const { file: own } = await yard.query('yard.info', {});
  // By another program: to close a file that SQLite has open drops its locks.
  for (const suffix of ['', '-wal']) execFileSync('cp', [own + suffix, file + suffix]);
  const before = bytesIn(folder);
  expect(before.get('chosen.sqlite-wal')).not.toBe('');
  expect(await yard.query('backups.look', { file })).toMatchObject({
    contents: { boards: 2, readings: 1 },
    missing: { readings: 0, boards: 0, edits: 0 },
  });
  expect(bytesIn(folder)).toEqual(before);
  await yard.command('places.edit', { id: yard.place.id, basedOn: 2, changed: { name: 'Attic' } });
  await change('backups.restore', { file });
  expect(await placeNames()).toEqual(['Loft']);
  expect(bytesIn(folder)).toEqual(before);
});

test('a file whose last transaction was cut off is read as it was before that one', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-restore-'));
  const file = join(folder, 'chosen.sqlite');
  copyFileSync(copyOfLayout(11), file);
  const whole = await yard.query('backups.look', { file });
  const cut = new Database(file);
  cut.pragma('journal_mode = PERSIST');
  cut.pragma('cache_size = 1');
  cut.exec('BEGIN IMMEDIATE; UPDATE board SET note = hex(randomblob(3000)); DELETE FROM finding;');
  for (const suffix of ['', '-journal']) {
    execFileSync('cp', [file + suffix, join(folder, `cut.sqlite${suffix}`)]);
  }
  cut.exec('ROLLBACK');
  cut.close();
  const before = bytesIn(folder);
  const found = await yard.query('backups.look', { file: join(folder, 'cut.sqlite') });
  expect(found.contents).toEqual(whole.contents);
  expect(bytesIn(folder)).toEqual(before);
});

describe('a file that cannot be restored is refused, and nothing is changed', () => {
  const folder = () => mkdtempSync(join(tmpdir(), 'pintally-restore-'));

  test.each([
    ['no file', (_file: string) => undefined, 'That file cannot be opened.'],
    [
      'no SQLite file',
      (file: string) => writeFileSync(file, 'a letter to a friend'.repeat(500)),
      'is not a yard',
    ],
    [
      'of another program',
      (file: string) => new Database(file).exec('CREATE TABLE song (id)').close(),
      'is not a yard',
    ],
    ['empty', (file: string) => writeFileSync(file, ''), 'is not a yard'],
    [
      'of another program, with tables of our names',
      (file: string) => {
        copyFileSync(copyOfLayout(11), file);
        const db = new Database(file);
        db.pragma('application_id = 7');
        db.close();
      },
      'is not a yard',
    ],
    [
      'of a newer Pintally',
      (file: string) => {
        copyFileSync(copyOfLayout(11), file);
        const db = new Database(file);
        db.pragma('user_version = 900');
        db.close();
      },
      'A newer Pintally',
    ],
  ])('%s', async (_, make, sentence) => {
    const file = join(folder(), 'chosen.sqlite');
    make(file);
    const before = bytesIn(dirname(file));
    expect(await yard.refusal('backups.look', { file })).toContain(sentence);
    expect(await yard.refusal('backups.restore', { file })).toContain(sentence);
    expect(bytesIn(dirname(file))).toEqual(before);
    expect(await stacks()).toEqual(['Walnut']);
    expect(readdirSync(yard.dataDir).filter((name) => /restor/.test(name))).toEqual([]);
  });

  test('the file that is open', async () => {
    const { file } = await yard.query('yard.info', {});
    const link = join(folder(), 'by another name');
    linkSync(file, link);
    for (const named of [file, link]) {
      for (const request of ['backups.look', 'backups.restore'] as const) {
        expect(await yard.refusal(request, { file: named })).toContain('That is the yard that is open.');
      }
    }
  });
});

const ownFile = () => join(yard.dataDir, 'yard.sqlite');
const leftovers = () => readdirSync(yard.dataDir).filter((name) => /restor/.test(name));

/** Something happens to the own yard's file while it is closed; then it is opened. */
async function reopenAfter(fault: (file: string) => unknown) {
  await yard.command('yard.openDemo', {});
  await fault(ownFile());
  return yard.command('yard.openOwn', {});
}

function damage(file: string): void {
  const bytes = readFileSync(file);
  bytes.fill(0xff, 4096, 20_480);
  writeFileSync(file, bytes);
}

describe('the own yard cannot be opened', () => {
  afterEach(endOthers);

  test('a damaged one is replaced by a backup and works; the damaged file is still there', async () => {
    const file = await backupAndMore();
    const info = await reopenAfter(damage);
    expect(info).toMatchObject({ uuid: null, canStartAfresh: true });
    const damaged = readFileSync(ownFile());
    expect(await yard.query('backups.look', { file })).toMatchObject({ missing: null });
    expect(await change('backups.restore', { file })).toMatchObject({ problem: null, boards: 2 });
    await rename('Attic');
    expect(await placeNames()).toEqual(['Attic']);
    expect(readFileSync(`${ownFile()}.damaged-2026-06-01`).equals(damaged)).toBe(true);
    expect(leftovers()).toEqual([]);
    // There is nothing that it could be undone to.
    expect(await yard.query('backups.state', {})).toMatchObject({ restored: null });
  });

  test.each([
    ['no yard', (file: string) => writeFileSync(file, 'a letter to a friend'), 'is not a yard'],
    ['gone', () => undefined, 'cannot be opened'],
  ])('a damaged one stays where it is when what is chosen is %s', async (_, make, sentence) => {
    await reopenAfter(damage);
    const damaged = readFileSync(ownFile());
    const file = join(mkdtempSync(join(tmpdir(), 'pintally-restore-')), 'chosen.sqlite');
    make(file);
    expect(await yard.refusal('backups.restore', { file })).toContain(sentence);
    expect(readFileSync(ownFile()).equals(damaged)).toBe(true);
    expect(leftovers()).toEqual([]);
    expect(await yard.query('yard.info', {})).toMatchObject({ canStartAfresh: true });
  });

  test('one of a newer Pintally is not replaced, and nothing is copied', async () => {
    const file = await backupAndMore();
    await reopenAfter((own) => new Database(own).pragma('user_version = 900'));
    const before = readFileSync(ownFile());
    expect(await yard.refusal('backups.restore', { file })).toContain('A newer Pintally wrote the yard file');
    expect(readFileSync(ownFile()).equals(before)).toBe(true);
    expect(leftovers()).toEqual([]);
  });

  test('one that another Pintally has open is not replaced, and nothing is copied', async () => {
    const file = await backupAndMore();
    await reopenAfter(() => startAnother(yard.dataDir));
    expect(await yard.refusal('backups.restore', { file })).toContain('Close Pintally there');
    expect(leftovers()).toEqual([]);
    endOthers();
    await expect.poll(async () => (await yard.command('yard.openOwn', {})).problem).toBeNull();
    expect(await placeNames()).toEqual(['Loft']);
  });
});

test('where the current yard cannot be backed up, nothing is restored and nothing is left', async () => {
  const file = await backupAndMore();
  const away = join(mkdtempSync(join(tmpdir(), 'pintally-restore-')), 'chosen.sqlite');
  renameSync(file, away);
  rmSync(join(yard.dataDir, 'backups'), { recursive: true });
  writeFileSync(join(yard.dataDir, 'backups'), 'in the way');
  expect(await yard.refusal('backups.restore', { file: away })).toContain('Nothing could be saved in');
  expect(leftovers()).toEqual([]);
  await yard.command('places.edit', { id: yard.place.id, basedOn: 2, changed: { name: 'Attic' } });
  expect(await placeNames()).toEqual(['Attic']);
});

test('killed before its last step, it has changed nothing; the next opening forgets it', async () => {
  const file = await backupAndMore();
  const { file: yardFile } = await yard.query('yard.info', {});
  copyFileSync(file, `${yardFile}.restored`);
  writeFileSync(`${yardFile}.restoring`, 'half of a yard');
  await yard.command('yard.openOwn', {});
  expect(await placeNames()).toEqual(['Loft']);
  expect(readdirSync(yard.dataDir).filter((name) => /restor/.test(name))).toEqual([]);
});

test('killed once a damaged yard was renamed, it is finished by the next opening', () => {
  const yardFile = join(mkdtempSync(join(tmpdir(), 'pintally-restore-')), 'yard.sqlite');
  writeFileSync(`${yardFile}.restored`, 'the whole yard');
  finishRestore(yardFile);
  expect(readFileSync(yardFile, 'utf8')).toBe('the whole yard');
  expect(existsSync(`${yardFile}.restored`)).toBe(false);
});

describe('a copy', () => {
  test('is a whole, checked yard file, and never saved over another without asking', async () => {
    const file = join(mkdtempSync(join(tmpdir(), 'pintally-copy-')), 'my yard.sqlite');
    expect(await yard.command('backups.saveCopy', { file, replaces: false })).toEqual({ isTaken: false });
    expect(await yard.query('backups.look', { file })).toMatchObject({ contents: { boards: 2 } });
    writeFileSync(file, 'mine');
    expect(await yard.command('backups.saveCopy', { file, replaces: false })).toEqual({ isTaken: true });
    expect(readFileSync(file, 'utf8')).toBe('mine');
    await yard.command('backups.saveCopy', { file, replaces: true });
    expect(await yard.query('backups.look', { file })).toMatchObject({ contents: { boards: 2 } });
  });

  test('is not saved among the files of Pintally', async () => {
    const file = join(yard.dataDir, 'yard.sqlite');
    expect(await yard.refusal('backups.saveCopy', { file, replaces: true })).toContain('Nothing was saved.');
  });
});
