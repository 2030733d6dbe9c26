/** What can be typed as a path of a backup folder, a copy or a yard file, and what then happens to what lies there. */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  linkSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Real threads on a busy computer.

// Before any thread is started: each has the environment of then.
const homeBefore = process.env.HOME;
const home = mkdtempSync(join(tmpdir(), 'pintally-home-'));
process.env.HOME = home;
afterAll(() => {
  process.env.HOME = homeBefore;
});
withYardOfTwo();

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pintally-paths-'));
});
const pipe = (name: string): string => {
  const path = join(folder, name);
  execFileSync('mkfifo', [path]);
  return path;
};

const setFolder = (path: string) => yard.refusal('backups.setFolder', { folder: path });
const saveCopy = (path: string) => yard.refusal('backups.saveCopy', { file: path, replaces: true });
const look = (path: string) => yard.refusal('backups.look', { file: path });
const restore = (path: string) => yard.refusal('backups.restore', { file: path });
const all = [setFolder, saveCopy, look, restore];

describe('what is no path says so, wherever it is typed, and changes nothing', () => {
  test.each([
    ['a relative path', 'backups/yard.sqlite', 'Give the full path.'],
    ['nothing', '', 'Give a path.'],
    ['blanks', '   ', 'Give a path.'],
    ['a line break', '/tmp/one\ntwo', 'cannot have line breaks'],
    ['a NUL', '/tmp/one\0two', 'cannot have line breaks or control characters'],
    ['4,000 letters', `/tmp/${'a'.repeat(3995)}`, 'too long'],
    ['5,000 letters', `/tmp/${'a/'.repeat(2500)}`, 'too long'],
    ['the home of somebody else', '~nobody/yard.sqlite', 'Give the full path.'],
  ])('%s', async (_, path, sentence) => {
    for (const ask of all) expect(await ask(path)).toContain(sentence);
  });
});

test('~ is the home folder', async () => {
  expect(await yard.command('backups.setFolder', { folder: '~/backups of the yard' })).toMatchObject({
    chosenFolder: join(home, 'backups of the yard'),
    isAway: false,
  });
  await yard.command('backups.saveCopy', { file: '~/copy.sqlite', replaces: false });
  expect(await yard.query('backups.look', { file: '~/copy.sqlite' })).toMatchObject({
    file: join(home, 'copy.sqlite'),
    contents: { boards: 2 },
  });
});

describe('a folder for backups', () => {
  test('in a part of the system where none can be made is refused, and everything goes on', async () => {
    // Node's own recursive way never came back from it.
    expect(await setFolder('/proc/x')).toContain('Backups cannot be saved in /proc/x');
    expect(await yard.query('backups.state', {})).toMatchObject({ chosenFolder: null });
  });

  test('that is the usual one, by whatever name, is no choice of another, and its backups are listed once', async () => {
    await yard.command('backups.make', {});
    symlinkSync(yard.dataDir, join(folder, 'link'));
    for (const usual of [join(yard.dataDir, 'backups'), join(folder, 'link', 'backups')]) {
      expect(await yard.command('backups.setFolder', { folder: usual })).toMatchObject({
        chosenFolder: null,
      });
    }
    expect(await yard.query('backups.list', {})).toHaveLength(1);
  });

  test('that is a pipe, a file, a link to itself, or in a file is no folder', async () => {
    const file = join(folder, 'file');
    writeFileSync(file, 'mine');
    const link = join(folder, 'link');
    symlinkSync(link, link);
    for (const path of [pipe('pipe'), file, link, join(file, 'in it')]) {
      expect(await setFolder(path)).toContain('That is not a folder.');
    }
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  test('that is one of Pintally’s own is refused, by whatever name, and none is made there', async () => {
    const link = join(folder, 'link');
    symlinkSync(yard.dataDir, link);
    const before = readdirSync(yard.dataDir);
    for (const path of [yard.dataDir, join(yard.dataDir, 'transfers'), join(link, 'new'), link]) {
      expect(await setFolder(path)).toContain('That folder is Pintally’s own.');
    }
    expect(readdirSync(yard.dataDir)).toEqual(before);
    expect(await yard.query('backups.state', {})).toMatchObject({ chosenFolder: null });
  });

  test('whose mark was made a pipe counts as away, and nobody waits for it', async () => {
    const chosen = join(folder, 'chosen');
    await yard.command('backups.setFolder', { folder: chosen });
    execFileSync('rm', [join(chosen, '.pintally-backups')]);
    execFileSync('mkfifo', [join(chosen, '.pintally-backups')]);
    expect(await yard.command('backups.make', {})).toMatchObject({ isAway: true, problem: null });
  });

  test('with pipes and links named as backups lists none of them', async () => {
    const chosen = join(folder, 'chosen');
    await yard.command('backups.setFolder', { folder: chosen });
    const names = [1, 2].map((n) => `pintally-2026-01-01T08-00-00Z-day-0000${n}-abcdef01.sqlite`);
    execFileSync('mkfifo', [join(chosen, names[0]!)]);
    symlinkSync(join(yard.dataDir, 'yard.sqlite'), join(chosen, names[1]!));
    const listed = (await yard.query('backups.list', {})).map(({ at }) => at);
    expect(listed).toEqual(['2026-06-01T08:00:00.000Z']);
  });
});

test('a yard file that is a pipe or a folder is not opened', async () => {
  for (const path of [pipe('pipe'), folder]) {
    expect(await look(path)).toContain('That is not a regular file.');
    expect(await restore(path)).toContain('That is not a regular file.');
  }
});

describe('a copy', () => {
  const own = () => join(yard.dataDir, 'yard.sqlite');
  /** Which file has each name: another one that took its place would have another number. */
  const files = () =>
    new Map(readdirSync(yard.dataDir).map((name) => [name, statSync(join(yard.dataDir, name)).ino]));

  test.each([
    'yard.sqlite',
    'yard.sqlite-wal',
    'yard.sqlite-lock',
    'demo-yard.sqlite',
    'backups/mine.sqlite',
    'new.sqlite',
  ])('never goes among Pintally’s own files through a linked folder: %s', async (name) => {
    mkdirSync(join(yard.dataDir, 'backups'), { recursive: true });
    symlinkSync(yard.dataDir, join(folder, 'link'));
    const before = files();
    expect(await saveCopy(join(folder, 'link', name))).toContain('That folder is Pintally’s own.');
    expect(files()).toEqual(before);
    expect(existsSync(join(yard.dataDir, 'backups', 'mine.sqlite'))).toBe(false);
  });

  test('never replaces a backup in the chosen folder', async () => {
    await yard.command('backups.setFolder', { folder: join(folder, 'chosen') });
    await yard.command('backups.make', {});
    const [backup] = await yard.query('backups.list', {});
    const before = readFileSync(backup!.file);
    expect(await saveCopy(backup!.file)).toContain('Pintally uses names like that itself.');
    expect(readFileSync(backup!.file).equals(before)).toBe(true);
  });

  test('never replaces what is no plain file: a pipe, a link to a file, a folder', async () => {
    const file = join(folder, 'mine.txt');
    writeFileSync(file, 'mine');
    const link = join(folder, 'link.sqlite');
    symlinkSync(file, link);
    for (const path of [pipe('pipe.sqlite'), link])
      expect(await saveCopy(path)).toContain('not a regular file');
    for (const path of [folder, `${folder}/`]) expect(await saveCopy(path)).toContain('That is a folder.');
    expect(readFileSync(file, 'utf8')).toBe('mine');
  });

  test('replaces a second name of the yard file by a copy of its own, and the yard stays', async () => {
    const second = join(folder, 'second.sqlite');
    linkSync(own(), second);
    const before = readFileSync(own());
    await yard.command('backups.saveCopy', { file: second, replaces: true });
    expect(readFileSync(own()).equals(before)).toBe(true);
    await yard.command('places.edit', { id: yard.place.id, basedOn: 1, changed: { name: 'Loft' } });
    expect((await yard.query('places.list', {}))[0]!.name).toBe('Loft');
  });

  test.each(['-wal', '-lock'])(
    'never goes where another program has a database open, by its %s',
    async (suffix) => {
      const file = join(folder, 'other.sqlite');
      writeFileSync(file, 'of another program');
      writeFileSync(file + suffix, 'its last changes');
      expect(await saveCopy(file)).toContain('in use');
      expect(readFileSync(file, 'utf8')).toBe('of another program');
    },
  );

  test('that two windows save under one name at once is saved once, and said to be there already', async () => {
    const file = join(folder, 'copy.sqlite');
    const both = [1, 2].map(() => yard.command('backups.saveCopy', { file, replaces: false }));
    expect(await Promise.all(both)).toEqual([{ isTaken: false }, { isTaken: true }]);
    const again = [1, 2].map(() => yard.command('backups.saveCopy', { file, replaces: true }));
    expect(await Promise.all(again)).toEqual([{ isTaken: false }, { isTaken: false }]);
    expect(readdirSync(folder)).toEqual(['copy.sqlite']);
  });

  test('into a folder that is not there says which', async () => {
    expect(await saveCopy(join(folder, 'none', 'copy.sqlite'))).toContain(
      `There is no folder ${join(folder, 'none')}`,
    );
  });

  test('leaves a file of the person’s own alone that is named like a part of it', async () => {
    writeFileSync(join(folder, 'copy.sqlite.part'), 'mine');
    await yard.command('backups.saveCopy', { file: join(folder, 'copy.sqlite'), replaces: false });
    expect(readFileSync(join(folder, 'copy.sqlite.part'), 'utf8')).toBe('mine');
    expect(readdirSync(folder).sort()).toEqual(['copy.sqlite', 'copy.sqlite.part']);
  });
});
