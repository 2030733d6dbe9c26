/** One bit of the list of tables, indexes and triggers was changed by the disk, while Pintally was closed. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test, vi } from 'vitest';
import { type App, createApp } from '../../../../electron/app/app.ts';
import { threadSources } from '../../../../electron/app/thread-files.ts';
import { openWindow } from '../../app/a-window.ts';
import { noMeter } from '../../app/no-meter.ts';
import { withYardOfTwo, yard } from '../../app/yard-of-two.ts';

// Real threads on a busy computer.
withYardOfTwo();

let app: App | null = null;
afterEach(async () => {
  await app?.close();
  app = null;
});

/** The folder of the yard with one bit of its list changed, and a backup of when it was sound. */
async function flipped(was: string, becomes: string): Promise<string> {
  await yard.beginRound();
  await yard.command('backups.make', {});
  await yard.app.close();
  const dataDir = mkdtempSync(join(tmpdir(), 'pintally-schema-'));
  cpSync(yard.dataDir, dataDir, { recursive: true });
  const file = join(dataDir, 'yard.sqlite');
  const sound = readFileSync(file);
  const listed = listOf(file);
  const changed = [...was].map((letter, index) => letter.charCodeAt(0) ^ becomes.charCodeAt(index));
  expect(changed.filter((bits) => bits !== 0).map((bits) => bits & (bits - 1))).toEqual([0]);
  // What was deleted is still in the file, and makes no difference.
  for (let at = sound.indexOf(was); at >= 0; at = sound.indexOf(was, at + 1)) {
    const bytes = Buffer.from(sound);
    bytes.write(becomes, at, 'latin1');
    writeFileSync(file, bytes);
    if (listOf(file) !== listed) return dataDir;
  }
  throw new RangeError(`The list does not have ${was}.`);
}

function listOf(file: string): string {
  const db = new Database(file, { readonly: true });
  try {
    return JSON.stringify(db.prepare('SELECT name, tbl_name, sql FROM sqlite_schema').all());
  } catch {
    return 'not to be read';
  } finally {
    db.close();
  }
}

function openIn(dataDir: string) {
  app = createApp({ dataDir, links: noMeter, threads: threadSources });
  return { ...openWindow(app), dataDir };
}
const boardsIn = async ({ query }: ReturnType<typeof openIn>) =>
  (await query('boards.list', { stackId: null, search: '', offset: 0, limit: 9 })).rows;

test.each([
  ['a trigger that calls a function that there is not', 'json_group_object', 'json_group_objact'],
  ['a trigger that reads a column that there is not', 'old.bark_side', 'old.cark_side'],
  ['a trigger that leaves a field out of undo', "'bark_side', new.", "'bark_si`e', new."],
  ['a trigger that cannot be read', 'CREATE TRIGGER board_edited', 'CREATE TRIGGES board_edited'],
  ['a trigger by another name', 'triggerboard_edited', 'triggerboard_edi4ed'],
  ['an index of another column', 'ON reading (board_id', 'ON reading (board_i`'],
  ['an index that cannot be read', 'CREATE INDEX reading_by_round', 'CREATE INDEY reading_by_round'],
])('%s is repaired, with a sentence', async (_, was, becomes) => {
  const window = openIn(await flipped(was, becomes));
  expect(await window.query('yard.info', {})).toMatchObject({ problem: null, boards: 2 });
  expect(await window.query('recovery.notes', {})).toEqual([
    { code: 'yard-note.rules-repaired', facts: { rules: 1 } },
  ]);
  const [board] = await boardsIn(window);
  const { id, version } = board!;
  await window.command('boards.edit', { id, basedOn: version, changed: { barkSide: 'up' } });
  const boards = [{ id, basedOn: version + 1 }];
  const { act } = await window.command('boards.editTogether', { boards, changed: { barkSide: 'down' } });
  await window.command('acts.undo', { act });
  expect((await window.query('boards.get', { id })).board).toMatchObject({ barkSide: 'up' });
  expect((await window.query('boards.get', { id })).readings).toHaveLength(1);

  // That is said once.
  await app?.close();
  expect(await openIn(window.dataDir).query('recovery.notes', {})).toEqual([]);
});

const ofTable = ['CREATE TABLE reading (', 'CREATE TABLE seading ('] as const;

test('a table that the disk changed is damage, and everything in it is recovered', async () => {
  const window = openIn(await flipped(...ofTable));
  expect(await window.query('yard.info', {})).toMatchObject({
    problem: { code: 'refusal.yard-damaged' },
    canStartAfresh: true,
  });
  await window.command('recovery.salvage', {});
  expect(await window.query('yard.info', {})).toMatchObject({ problem: null, boards: 2 });
  const [board] = await boardsIn(window);
  expect((await window.query('boards.get', { id: board!.id })).readings).toHaveLength(1);
  // It has all triggers from the start, so that what is edited now can be undone.
  expect((await window.query('recovery.notes', {})).map(({ code }) => code)).toEqual(['yard-note.salvaged']);
  await expect
    .poll(async () => (await window.query('backups.list', {})).map(({ why }) => why), { timeout: 15_000 })
    .toContain('recovered');
});

test('a backup is restored in its place, and the damaged file stays under another name', async () => {
  const window = openIn(await flipped(...ofTable));
  const [backup] = await window.query('backups.list', {});
  await window.command('backups.restore', { file: backup!.file });
  expect(await window.query('yard.info', {})).toMatchObject({ problem: null, boards: 2 });
  expect(readdirSync(window.dataDir).filter((name) => /damaged-[\d-]+$/.test(name))).toHaveLength(1);
});

test('a backup is restored where the disk does not let the yard be read at all', async () => {
  const dataDir = await flipped('old.bark_side', 'old.cark_side');
  const { ino } = statSync(join(dataDir, 'yard.sqlite'));
  const { pragma } = Database.prototype;
  vi.spyOn(Database.prototype, 'pragma').mockImplementation(function (this: Database.Database, ...asked) {
    if (this.name.endsWith('/yard.sqlite') && statSync(this.name).ino === ino) {
      throw new Database.SqliteError('The disk of this test failed.', 'SQLITE_IOERR_READ');
    }
    return pragma.apply(this, asked);
  });
  const window = openIn(dataDir);
  expect(await window.query('yard.info', {})).toMatchObject({ problem: { code: 'refusal.yard-unreadable' } });
  const [backup] = await window.query('backups.list', {});
  await window.command('backups.restore', { file: backup!.file });
  expect(await window.query('yard.info', {})).toMatchObject({ problem: null, boards: 2 });
  vi.restoreAllMocks();
});
