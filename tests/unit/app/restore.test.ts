/** Restoring a backup of a real yard file, and undoing that. */
import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test, vi } from 'vitest';
import { finishRestore } from '../../../electron/store/restore.ts';
import { copyOfLayout } from '../store/layout-copy.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Real threads on a busy computer.
vi.setConfig({ testTimeout: 30_000 });
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
  const { id } = await yard.command('rounds.start', {
    stackId: yard.stack.id,
    woodTempC: 20,
    startedOn: null,
  });
  await yard.command('rounds.saveTyped', {
    roundId: id,
    boardId: yard.boards[0]!.id,
    spotIndex: 0,
    newestReadingId: null,
    raw: 12.4,
  });
  await rename('Loft');
  return backup!.file;
}

test('a look inside says what it holds and how many readings it leaves out, and changes nothing', async () => {
  const file = await backupAndMore();
  expect(await yard.query('backups.look', { file })).toMatchObject({
    contents: { stacks: 1, boards: 2, readings: 0 },
    readingsLeftOut: 1,
  });
  expect(await placeNames()).toEqual(['Loft']);
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
    restored: { backedUpAt: '2026-06-01T08:00:00.000Z', readingsLeftOut: 1 },
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

describe('a file that cannot be restored is refused, and nothing is changed', () => {
  const folder = () => mkdtempSync(join(tmpdir(), 'pintally-restore-'));

  test.each([
    ['no file', (_file: string) => undefined, 'That backup cannot be read.'],
    [
      'no SQLite file',
      (file: string) => writeFileSync(file, 'a letter to a friend'.repeat(500)),
      'is damaged',
    ],
    [
      'of another program',
      (file: string) => new Database(file).exec('CREATE TABLE song (id)').close(),
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
    expect(await yard.refusal('backups.restore', { file })).toContain(sentence);
    expect(await stacks()).toEqual(['Walnut']);
    expect(readdirSync(yard.dataDir).filter((name) => /restor/.test(name))).toEqual([]);
  });

  test('the file that is open', async () => {
    const { file } = await yard.query('yard.info', {});
    expect(await yard.refusal('backups.restore', { file })).toContain('That is the yard that is open.');
  });
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

test('killed once a damaged yard was put beside, it is finished by the next opening', () => {
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
