import { copyFileSync, openSync, readFileSync, statSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { createApp } from '../../../electron/app/app.ts';
import { threadSources } from '../../../electron/app/thread-files.ts';
import { openWindow } from './a-window.ts';
import { noMeter } from './no-meter.ts';
import { yardOfTwo } from './yard-of-two.ts';

/** A file larger than what is looked through before it is opened: a yard of two boards beside 20 MB of anything. */
async function largeFile(): Promise<string> {
  const yard = await yardOfTwo();
  await yard.app.close();
  const file = join(yard.dataDir, 'yard.sqlite');
  const db = new Database(file);
  db.exec('CREATE TABLE ballast (bytes BLOB); INSERT INTO ballast VALUES (randomblob(20000000))');
  db.close();
  return yard.dataDir;
}

/** Ten pages in the middle of the file, which hold nothing that a call reads, are overwritten. */
function damage(dataDir: string): Buffer {
  const file = join(dataDir, 'yard.sqlite');
  const at = Math.floor(statSync(file).size / 2 / 4096) * 4096;
  writeSync(openSync(file, 'r+'), Buffer.alloc(40_960, 0xa5), 0, 40_960, at);
  return readFileSync(file);
}

function open(dataDir: string, checkThread = threadSources.check) {
  const faults: unknown[] = [];
  const app = createApp({
    dataDir,
    links: noMeter,
    simulatesInOwnYard: true,
    threads: { ...threadSources, check: checkThread },
    reportFault: (fault) => faults.push(fault),
  });
  opened.push(app);
  return { app, faults, ...openWindow(app) };
}
let opened: { close(): Promise<void> }[] = [];
beforeEach(() => {
  opened = [];
});
afterEach(async () => {
  for (const app of opened) await app.close();
});

const place = (name: string) => ({
  name,
  kind: 'open-shed' as const,
  air: Array.from({ length: 12 }, () => ({ tempC: 12, rh: 0.7 })),
});

describe('a large yard file that is sound', () => {
  test('is there at once, and what is written meanwhile is written when it was looked through', async () => {
    const { answer, faults } = open(await largeFile());
    const added = answer('places.add', place('Lean-to'));
    expect(await answer('yard.info', {})).toMatchObject({ output: { problem: null, boards: 2 } });
    expect(await added).toMatchObject({ ok: true, output: { name: 'Lean-to' } });
    expect(await answer('places.list', {})).toMatchObject({
      output: [{ name: 'Shop' }, { name: 'Lean-to' }],
    });
    expect(faults).toEqual([]);
  });

  test('the simulated meter, connected meanwhile, sends values as soon as it may be remembered', async () => {
    const { answer, heard, faults } = open(await largeFile());
    expect(await answer('meter.simulate', {})).toMatchObject({ output: { phase: 'live' } });
    await expect.poll(() => heard('meter.live').length > 0, { timeout: 15_000 }).toBe(true);
    expect(faults).toEqual([]);
  });

  test('may be closed at once', async () => {
    const { app, faults } = open(await largeFile());
    opened = [];
    await app.close();
    expect(faults).toEqual([]);
  });
});

describe('a large yard file that is damaged', () => {
  test('is closed again before anything was written to it; the window is told, and a new yard can be begun', async () => {
    const dataDir = await largeFile();
    const before = damage(dataDir);
    const { answer, heard } = open(dataDir);
    expect(await answer('yard.info', {})).toMatchObject({ output: { problem: null } });
    expect(await answer('places.add', place('Lean-to'))).toMatchObject({
      ok: false,
      problem: { code: 'refusal.yard-damaged' },
    });
    expect(heard('changed')).toHaveLength(1);
    expect(await answer('yard.info', {})).toMatchObject({
      output: { problem: { code: 'refusal.yard-damaged' }, canStartAfresh: true, boards: 0 },
    });
    expect(readFileSync(join(dataDir, 'yard.sqlite')).equals(before)).toBe(true);
    expect(await answer('yard.startAfresh', {})).toMatchObject({ output: { problem: null, boards: 0 } });
  });

  test('opens again once a backup was put in its place', async () => {
    const dataDir = await largeFile();
    const file = join(dataDir, 'yard.sqlite');
    copyFileSync(file, join(dataDir, 'backup'));
    damage(dataDir);
    const { answer } = open(dataDir);
    await answer('places.add', place('Lean-to'));
    copyFileSync(join(dataDir, 'backup'), file);
    expect(await answer('yard.openOwn', {})).toMatchObject({ output: { problem: null, boards: 2 } });
    expect(await answer('places.add', place('Lean-to'))).toMatchObject({ ok: true });
  });

  test('is found out all the same when the thread that looks through it fails', async () => {
    const dataDir = await largeFile();
    const before = damage(dataDir);
    const { answer, faults } = open(dataDir, join(dataDir, 'no-such-thread.ts'));
    expect(await answer('places.add', place('Lean-to'))).toMatchObject({
      problem: { code: 'refusal.yard-damaged' },
    });
    expect(faults).toHaveLength(1);
    expect(readFileSync(join(dataDir, 'yard.sqlite')).equals(before)).toBe(true);
  });

  test('of an older layout is refused before it is brought to the new one', async () => {
    const dataDir = await largeFile();
    const db = new Database(join(dataDir, 'yard.sqlite'));
    db.pragma('user_version = 1');
    db.close();
    const before = damage(dataDir);
    const { answer } = open(dataDir);
    expect(await answer('yard.info', {})).toMatchObject({
      output: { problem: { code: 'refusal.yard-damaged' }, canStartAfresh: true },
    });
    expect(readFileSync(join(dataDir, 'yard.sqlite')).equals(before)).toBe(true);
  });

  test('at its first pages is refused at once', async () => {
    const dataDir = await largeFile();
    writeSync(openSync(join(dataDir, 'yard.sqlite'), 'r+'), Buffer.alloc(4000, 0xa5), 0, 4000, 96);
    const { answer } = open(dataDir);
    expect(await answer('stacks.list', {})).toMatchObject({
      ok: false,
      problem: { code: 'refusal.yard-damaged' },
    });
  });
});
