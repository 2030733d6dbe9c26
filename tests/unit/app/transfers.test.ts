/** A yard file that a browser downloads or uploads, part by part, and what is left of it. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, readlinkSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { TRANSFER_PART_BYTES } from '../../../shared-core/contract/backups.ts';
import { openWindow } from './a-window.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// Real threads on a busy computer.
withYardOfTwo();

const folder = () => join(yard.dataDir, 'transfers');
const left = () => readdirSync(folder());

async function downloaded(): Promise<Buffer> {
  const { download, sizeBytes } = await yard.command('backups.beginDownload', {});
  const parts: Buffer[] = [];
  for (let offset = 0; offset < sizeBytes; offset += TRANSFER_PART_BYTES) {
    const { base64 } = await yard.command('backups.nextOfDownload', { download, offset });
    parts.push(Buffer.from(base64, 'base64'));
  }
  return Buffer.concat(parts);
}

/** @returns where the machine has it */
async function uploaded(
  bytes: Buffer,
  partBytes = TRANSFER_PART_BYTES,
  { command }: Pick<typeof yard, 'command'> = yard,
): Promise<string> {
  const { upload, file } = await command('backups.beginUpload', { sizeBytes: bytes.length });
  for (let offset = 0; offset < bytes.length; offset += partBytes) {
    const base64 = bytes.subarray(offset, offset + partBytes).toString('base64');
    await command('backups.addToUpload', { upload, offset, base64 });
  }
  return file;
}

/** Files of the folder that this process has open. */
function descriptors(): string[] {
  const links = readdirSync('/proc/self/fd').flatMap((name) => {
    try {
      return [readlinkSync(`/proc/self/fd/${name}`)];
    } catch {
      return [];
    }
  });
  return links.filter((link) => link.startsWith(folder()));
}

test('what was downloaded is uploaded, looked into and restored; nothing of it is left', async () => {
  const bytes = await downloaded();
  expect(left()).toEqual([]);
  await yard.command('places.edit', { id: yard.place.id, basedOn: 1, changed: { name: 'Loft' } });
  const file = await uploaded(bytes, 10_000);
  expect(readFileSync(file).equals(bytes)).toBe(true);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(await yard.query('backups.look', { file })).toMatchObject({
    contents: { boards: 2 },
    missing: { edits: 1, readings: 0 },
  });
  await yard.command('backups.restore', { file });
  await yard.query('yard.info', {});
  expect((await yard.query('places.list', {})).map(({ name }) => name)).toEqual(['Shop']);
  await yard.command('backups.dropUpload', {});
  expect(left()).toEqual([]);
});

test('a downloaded copy is one checked file that opens by itself', async () => {
  const file = join(yard.dataDir, 'downloaded.sqlite');
  writeFileSync(file, await downloaded());
  const db = new Database(file, { readonly: true });
  expect(db.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(db.prepare('SELECT count(*) FROM board').pluck().get()).toBe(2);
  db.close();
});

test.each([
  ['no yard', Buffer.from('a letter to a friend'), 'is not a yard'],
  ['a yard that is cut short', null, 'damaged'],
])('an upload that is %s is refused before anything is touched', async (_, given, sentence) => {
  const bytes = given ?? (await downloaded()).subarray(0, 20_000);
  const file = await uploaded(bytes);
  expect(await yard.refusal('backups.look', { file })).toContain(sentence);
  expect(await yard.refusal('backups.restore', { file })).toMatch(
    /Nothing was changed|Your yard is unchanged/,
  );
  expect((await yard.query('places.list', {})).map(({ name }) => name)).toEqual(['Shop']);
});

describe('bounds', () => {
  const part = Buffer.from('part').toString('base64');

  test.each([
    ['that skips a part', 8, 4],
    ['that is larger than announced', 3, 0],
  ])('an upload %s is refused', async (_, sizeBytes, offset) => {
    const { upload } = await yard.command('backups.beginUpload', { sizeBytes });
    expect(await yard.refusal('backups.addToUpload', { upload, offset, base64: part })).toContain(
      'The upload did not finish.',
    );
  });

  test('a part sent twice, or after another upload began, is refused', async () => {
    const { upload } = await yard.command('backups.beginUpload', { sizeBytes: 8 });
    await yard.command('backups.addToUpload', { upload, offset: 0, base64: part });
    const again = { upload, offset: 0, base64: part };
    expect(await yard.refusal('backups.addToUpload', again)).toContain('did not finish');
    await yard.command('backups.beginUpload', { sizeBytes: 8 });
    expect(await yard.refusal('backups.addToUpload', { ...again, offset: 4 })).toContain('did not finish');
    expect(left()).toHaveLength(1);
  });

  test('a file larger than any yard is refused, and one that the disk has no room for', async () => {
    expect(await yard.refusal('backups.beginUpload', { sizeBytes: 5e9 })).toBe(
      'That file is larger than any yard. Choose another file. Nothing was saved.',
    );
    const answer = await yard.answer('backups.addToUpload', {
      upload: '7f1b0a3f-9d53-4c3b-8f55-0b5c1d4e8f10',
      offset: 0,
      base64: 'A'.repeat(2_000_000),
    });
    expect(answer.ok).toBe(false);
  });
});

describe('two windows', () => {
  const other = () => openWindow(yard.app, 'window-2');

  test('that begin uploads again and again at once have one each, and leave nothing behind', async () => {
    const second = other();
    const begun = [yard, second, yard, second, yard, second].map(({ command }) =>
      command('backups.beginUpload', { sizeBytes: 8 }),
    );
    const files = (await Promise.all(begun)).map(({ file }) => file);
    expect(left().sort()).toEqual(
      files
        .slice(-2)
        .map((file) => file.split('/').at(-1))
        .sort(),
    );
    for (const { command } of [yard, second]) await command('backups.dropUpload', {});
    expect(left()).toEqual([]);
    expect(descriptors()).toEqual([]);
  });

  test('that begin downloads at once each get a whole copy, and no part of the other’s', async () => {
    const second = other();
    const [mine, theirs] = await Promise.all(
      [yard, second].map(({ command }) => command('backups.beginDownload', {})),
    );
    const takesTheirs = { download: theirs!.download, offset: 0 };
    expect(await yard.refusal('backups.nextOfDownload', takesTheirs)).toContain('did not finish');
    for (const [{ command }, begun] of [
      [yard, mine!],
      [second, theirs!],
    ] as const) {
      const { base64 } = await command('backups.nextOfDownload', { download: begun.download, offset: 0 });
      expect(base64.startsWith(Buffer.from('SQLite format 3').toString('base64'))).toBe(true);
    }
  });

  test('upload a file each, both whole', async () => {
    const bytes = await downloaded();
    const files = await Promise.all([uploaded(bytes, 50_000), uploaded(bytes, 50_000, other())]);
    for (const file of files) expect(readFileSync(file).equals(bytes)).toBe(true);
  });
});

test('a restore has its upload to the end, although the window begins another one meanwhile', async () => {
  const file = await uploaded(await downloaded());
  await yard.command('places.edit', { id: yard.place.id, basedOn: 1, changed: { name: 'Loft' } });
  const restoring = yard.command('backups.restore', { file });
  const { file: next } = await yard.command('backups.beginUpload', { sizeBytes: 8 });
  await restoring;
  await yard.query('yard.info', {});
  expect((await yard.query('places.list', {})).map(({ name }) => name)).toEqual(['Shop']);
  expect(left()).toEqual([next.split('/').at(-1)]);
});

test('what a window was sending is deleted when it is closed, and all else when Pintally is', async () => {
  const connection = yard.app.connect('window-3', () => undefined);
  const answer = await connection.answer(
    'backups.beginUpload',
    { sizeBytes: 8 },
    { yard: null, act: randomUUID() },
  );
  expect([answer.ok, left().length]).toEqual([true, 1]);
  connection.close();
  await expect.poll(left, { timeout: 10_000 }).toEqual([]);
  await yard.command('backups.beginUpload', { sizeBytes: 8 });
  await yard.app.close();
  expect(left()).toEqual([]);
  expect(descriptors()).toEqual([]);
});

test('what an earlier process left is removed at the next opening, and nothing else', async () => {
  mkdirSync(folder(), { recursive: true });
  writeFileSync(join(folder(), '7f1b0a3f-9d53-4c3b-8f55-0b5c1d4e8f10.sqlite'), 'half of a yard');
  writeFileSync(join(folder(), 'mine.txt'), 'mine');
  const { file } = await yard.command('backups.beginUpload', { sizeBytes: 8 });
  await yard.command('yard.openOwn', {});
  await expect
    .poll(() => left().sort(), { timeout: 10_000 })
    .toEqual([file.split('/').at(-1), 'mine.txt'].sort());
});

test('a browser has no dialogs of the system', async () => {
  expect(await yard.query('backups.state', {})).toMatchObject({ hasDialogs: false });
  expect((await yard.answer('backups.chooseFile', { purpose: 'copy' })).ok).toBe(false);
});
