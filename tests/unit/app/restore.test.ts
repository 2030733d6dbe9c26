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
import { afterEach, describe, expect, test } from 'vitest';
import { finishRestore } from '../../../electron/store/restore.ts';
import { APPLICATION_ID } from '../../../electron/store/yard-identity.ts';
import { newestOfOwn } from '../../../shared-core/contract/newest-backup.ts';
import { copyOfLayout } from '../store/layout-copy.ts';
import { endOthers, startAnother } from './other-process.ts';
import { withYardOfTwo, yard, yardOfTwo } from './yard-of-two.ts';

// Real threads on a busy computer.
withYardOfTwo();

const stacks = async () => (await yard.query('stacks.list', {})).map(({ name }) => name);
/** Restores or undoes, and goes on in the yard that is open then. */
async function change(name: 'backups.restore' | 'backups.undoRestore', input: object) {
  await yard.command(name, input as never);
  return yard.query('yard.info', {});
}
const ownFile = () => join(yard.dataDir, 'yard.sqlite');
const leftovers = () => readdirSync(yard.dataDir).filter((name) => /restor/.test(name));
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
      // The place by the name that it has now; a round has none.
      names: ['Loft'],
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
    missing: {
      readings: 1,
      boards: 1,
      places: 1,
      rounds: 1,
      corrections: 1,
      edits: 1,
      stacks: 0,
      names: ['WAL-03', 'Shed', 'Loft'],
    },
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
    ['undo', 0, false],
    ['restore', 1, false],
    ['asked', 0, false],
  ]);
});

test('the undo of a second restore brings back the way to undo the first', async () => {
  const file = await backupAndMore();
  await change('backups.restore', { file });
  const first = (await yard.query('backups.state', {})).restored;
  await rename('Attic');
  await change('backups.restore', { file });
  await change('backups.undoRestore', {});
  expect(await placeNames()).toEqual(['Attic']);
  expect((await yard.query('backups.state', {})).restored).toEqual(first);
  await change('backups.undoRestore', {});
  expect(await placeNames()).toEqual(['Loft']);
  expect((await yard.query('backups.state', {})).restored).toBeNull();
});

test('the only copy of readings stays, however many restores and backups follow', async () => {
  const file = await backupAndMore();
  await change('backups.restore', { file });
  const only = (await yard.query('backups.list', {})).find(({ contents }) => contents?.readings === 1)!;
  for (let times = 0; times < 5; times++) {
    yard.later(24 * 3_600_000);
    await change('backups.restore', { file });
  }
  const list = await yard.query('backups.list', {});
  expect(list.map((each) => each.file)).toContain(only.file);
  // Those that have nothing of their own take their turn.
  expect(list.filter(({ why }) => why === 'restore')).toHaveLength(4);
});

test('what a restore lacks is counted as the person did it: the date of a round is one thing', async () => {
  const round = await yard.beginRound();
  yard.later(3_600_000);
  await yard.command('rounds.finish', { roundId: round.id });
  await yard.command('backups.make', {});
  const [backup] = await yard.query('backups.list', {});
  const [saved] = await yard.query('rounds.ofBoard', { boardId: yard.boards[0]!.id });
  const dayBefore = new Date(Date.parse(saved!.startedAt) - 24 * 3_600_000).toISOString();
  await yard.command('rounds.edit', {
    id: round.id,
    basedOn: saved!.version,
    changed: { startedAt: dayBefore, isYearRight: true },
  });
  const { missing } = await yard.query('backups.look', { file: backup!.file });
  expect(missing).toMatchObject({ roundDates: 1, corrections: 0, edits: 0, readings: 0 });
});

test('a backup made while many boards were changed says so, and not that Pintally was closed', async () => {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-restore-')), 'chosen.sqlite');
  await yard.command('backups.saveCopy', { file, replaces: false });
  const db = new Database(file);
  db.exec('INSERT INTO unfinished_act (act_id) SELECT max(id) FROM act');
  db.close();
  await change('backups.restore', { file });
  expect((await yard.query('recovery.notes', {})).map(({ code }) => code)).toEqual([
    'yard-note.taken-back-restored',
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
    ['all zeros', (file: string) => writeFileSync(file, Buffer.alloc(40_960)), 'is not a yard'],
    [
      'of another program, with our mark and a layout of ours',
      (file: string) => {
        const db = new Database(file).exec('CREATE TABLE song (id)');
        db.pragma(`application_id = ${APPLICATION_ID}`);
        db.pragma('user_version = 11');
        db.close();
      },
      'is not a yard',
    ],
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

  /** A whole copy of the yard that is open, and then changed. */
  async function changedCopy(sql: string): Promise<string> {
    const file = join(folder(), 'chosen.sqlite');
    await yard.command('backups.saveCopy', { file, replaces: false });
    const db = new Database(file);
    db.pragma('foreign_keys = OFF');
    db.exec(sql);
    db.close();
    return file;
  }

  test.each([
    ['with a column that the app reads under another name', 'ALTER TABLE board RENAME COLUMN code TO kode'],
    ['without a table', 'DROP TABLE reading'],
    ['without the row that says which yard it is', 'DELETE FROM yard'],
    ['with boards of a stack that is gone', 'DELETE FROM stack'],
    ['with a layout that it does not have', 'PRAGMA user_version = 11'],
  ])('a yard %s', async (_, sql) => {
    const file = await changedCopy(sql);
    const { uuid } = await yard.query('yard.info', {});
    expect(await yard.refusal('backups.restore', { file })).toBe(
      'That file is damaged. Your yard is unchanged. Choose another file or backup.',
    );
    expect(await yard.query('yard.info', {})).toMatchObject({ uuid, problem: null, boards: 2 });
    expect(leftovers()).toEqual([]);
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
    // Undone, the damaged file is back, and the other way on can be taken.
    expect(await yard.query('backups.state', {})).toMatchObject({ restored: { wasDamaged: true } });
    expect(await change('backups.undoRestore', {})).toMatchObject({ uuid: null, canStartAfresh: true });
    expect(readFileSync(ownFile()).equals(damaged)).toBe(true);
    expect(leftovers()).toEqual([]);
    expect(await yard.query('backups.state', {})).toMatchObject({ restored: null });
    expect((await yard.query('backups.list', {}))[0]).toMatchObject({ why: 'undo', isOfOtherYard: false });
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

  test('backups of another yard in the same folder are known as such, and one is restored as a new state of this', async () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'pintally-backups-')), 'shared');
    await yard.command('backups.setFolder', { folder });
    await yard.command('backups.make', {});
    const other = await yardOfTwo();
    try {
      // It is backed up there at once.
      await other.command('backups.setFolder', { folder });
    } finally {
      await other.app.close();
    }
    await reopenAfter(damage);
    const list = await yard.query('backups.list', {});
    expect(list.filter(({ isOfOtherYard }) => isOfOtherYard)).toHaveLength(1);
    expect(newestOfOwn(list)).toMatchObject({ isOfOtherYard: false, isOfPresent: true });
    const { file } = list.find(({ isOfOtherYard }) => isOfOtherYard)!;
    expect(await yard.query('backups.look', { file })).toMatchObject({ isOfOtherYard: true });
    await change('backups.restore', { file });
    await yard.command('backups.make', {});
    // It goes on as this yard, and never deletes a backup of the other.
    expect((await yard.query('backups.list', {})).map(({ isOfOtherYard }) => isOfOtherYard)).toEqual(
      expect.arrayContaining([true, false, false]),
    );
    expect(await change('backups.undoRestore', {})).toMatchObject({ uuid: null, canStartAfresh: true });
  });

  test('after a restore that was undone, the backup of the fuller yard is offered', async () => {
    const file = await backupAndMore();
    await yard.command('backups.make', {});
    await change('backups.restore', { file });
    await change('backups.undoRestore', {});
    await reopenAfter(damage);
    const list = await yard.query('backups.list', {});
    expect(list[0]).toMatchObject({ why: 'undo', isOfPresent: false, contents: { readings: 0 } });
    expect(newestOfOwn(list)).toMatchObject({ isOfPresent: true, contents: { readings: 1 } });
  });

  test('a restored one that cannot be opened is undone', async () => {
    const file = await backupAndMore();
    await change('backups.restore', { file });
    const info = await reopenAfter((own) =>
      new Database(own).exec('ALTER TABLE board RENAME COLUMN code TO kode').close(),
    );
    expect(info).toMatchObject({ uuid: null });
    expect(info.problem).not.toBeNull();
    expect(await change('backups.undoRestore', {})).toMatchObject({ problem: null });
    expect(await placeNames()).toEqual(['Loft']);
  });

  test('one of a newer Pintally is not replaced, and nothing is copied', async () => {
    const file = await backupAndMore();
    await reopenAfter((own) => {
      const db = new Database(own);
      db.pragma('user_version = 900');
      db.close();
    });
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
