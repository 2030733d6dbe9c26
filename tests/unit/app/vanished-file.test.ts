import { execFileSync } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import {
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { type App, createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { openWindow } from './a-window.ts';
import { noMeter } from './no-meter.ts';
import { yardOfTwo } from './yard-of-two.ts';

/** A yard with a round and its backup, as Pintally left it. */
let left: Awaited<ReturnType<typeof yardOfTwo>>;
let folder: string;
let app: App | null = null;
const file = () => join(folder, 'yard.sqlite');

/** Opens that folder, as at the next start. */
async function open() {
  await app?.close();
  const clock = () => new Date(left.now());
  app = createApp({ dataDir: folder, links: noMeter, threads: threadSources, clock });
  return openWindow(app);
}

beforeAll(async () => {
  left = await yardOfTwo();
  const { id: roundId } = await left.beginRound();
  await left.command('rounds.finish', { roundId });
  await left.app.close();
});
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pintally-vanished-'));
  cpSync(left.dataDir, folder, { recursive: true });
});
afterEach(async () => {
  await app?.close();
  app = null;
});

const missing = { uuid: null, canStartAfresh: true, problem: { code: 'refusal.yard-vanished' } };

const ways: [string, () => void][] = [
  ['deleted', () => rmSync(file())],
  ['renamed', () => renameSync(file(), join(folder, 'my-yard.sqlite'))],
  ['emptied', () => truncateSync(file())],
];

describe.each(ways)('a yard file that was %s while Pintally was closed', (how, lose) => {
  beforeEach(() => lose());

  test('is said to be missing, at each opening, and no empty yard takes its place', async () => {
    const before = readdirSync(folder).filter((name) => name.startsWith('yard'));
    for (let opening = 1; opening <= 2; opening++) {
      const window = await open();
      expect(await window.query('yard.info', {})).toMatchObject(missing);
      expect(await window.answer('boards.add', [left.board('WAL-03')])).toMatchObject({ ok: false });
    }
    await app?.close();
    app = null;
    expect(readdirSync(folder).filter((name) => name.startsWith('yard') && !/lock/.test(name))).toEqual(
      before.filter((name) => !/lock/.test(name)),
    );
  });

  test('makes way for a new yard once the person wants one, and stays under its other name', async () => {
    const window = await open();
    expect(await window.command('yard.startAfresh', {})).toMatchObject({ problem: null, boards: 0 });
    const again = await open();
    expect(await again.query('yard.info', {})).toMatchObject({ problem: null, boards: 0 });
    if (how !== 'emptied') expect(await again.query('recovery.notes', {})).toEqual([]);
    expect(existsSync(join(folder, 'my-yard.sqlite'))).toBe(how === 'renamed');
  });
});

test('a backup takes the place of a yard file that is missing', async () => {
  rmSync(file());
  const window = await open();
  const [backup] = await window.query('backups.list', {});
  const restored = await window.command('backups.restore', { file: backup!.file });
  expect(restored).toMatchObject({ problem: null, boards: 2 });
  expect(await (await open()).query('yard.info', {})).toMatchObject({ problem: null, boards: 2 });
});

test('a yard file that is put back opens as it was', async () => {
  renameSync(file(), join(folder, 'my-yard.sqlite'));
  const window = await open();
  renameSync(join(folder, 'my-yard.sqlite'), file());
  expect(await window.command('yard.openOwn', {})).toMatchObject({ problem: null, boards: 2 });
  expect(await window.query('recovery.notes', {})).toEqual([]);
});

test.each([
  ['the newest change remembered beside it', () => rmSync(join(folder, 'backups'), { recursive: true })],
  ['its backups', () => rmSync(`${file()}-newest`)],
])('a yard file that is gone is known by %s', async (_which, remove) => {
  rmSync(file());
  remove();
  expect(await (await open()).query('yard.info', {})).toMatchObject(missing);
});

test('or by the number of a backup in a chosen folder, whether its disk is there or not', async () => {
  for (const path of [file(), `${file()}-newest`, join(folder, 'backups')]) rmSync(path, { recursive: true });
  const chosen = { folder: join(folder, 'away'), mark: randomUUID(), highest: 3 };
  writeFileSync(join(folder, 'backups.json'), JSON.stringify(chosen));
  expect(await (await open()).query('yard.info', {})).toMatchObject(missing);
});

test('where nothing shows that there was a yard, a new one is made', async () => {
  for (const name of readdirSync(folder)) rmSync(join(folder, name), { recursive: true });
  expect(await (await open()).query('yard.info', {})).toMatchObject({ problem: null, boards: 0 });
});

test('one byte that is left of it is damaged, and stays under another name', async () => {
  truncateSync(file(), 1);
  const window = await open();
  expect(await window.query('yard.info', {})).toMatchObject({
    uuid: null,
    canStartAfresh: true,
    problem: { code: 'refusal.yard-damaged' },
  });
  await window.command('yard.startAfresh', {});
  expect(readFileSync(`${file()}.damaged-2026-06-01`, 'utf8')).toBe('S');
});

test.each(['-newest', '-rescued-copies', '-owner.json'])(
  'a pipe at the name %s is not waited for',
  async (suffix) => {
    rmSync(file() + suffix, { force: true });
    execFileSync('mkfifo', [file() + suffix]);
    const window = await open();
    expect(await window.query('yard.info', {})).toMatchObject({ problem: null, boards: 2 });
    expect(await window.answer('boards.add', [left.board('WAL-03')])).toMatchObject({ ok: true });
  },
);
