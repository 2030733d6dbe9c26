import {
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test } from 'vitest';
import { createYards } from '../../../electron/app/yard/yards.ts';
import { say } from './a-window.ts';
import { endOthers, startAnother } from './other-process.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// A process takes its time to start on a busy computer.
withYardOfTwo();
afterEach(endOthers);

const problem = async () => {
  const info = await yard.query('yard.info', {});
  return info.problem && say(info.problem);
};

test('a second process opens nothing, and says which one has the yard', async () => {
  const file = join(yard.dataDir, 'yard.sqlite');
  const other = startAnother(yard.dataDir);
  expect(other.uuid).toBeNull();
  expect(other.says).toBe(
    `Pintally opened ${file} Jun 1, 2026, 3:00 AM in a browser, ` +
      `on computer ${hostname()}. Nothing was changed. Close Pintally there, then try again. ` +
      `If you cannot find it, end process ${process.pid}.`,
  );
});

test('once the process that had it was killed, “Try again” opens the yard', async () => {
  const { uuid } = await yard.query('yard.info', {});
  await yard.command('yard.openDemo', {});
  const other = startAnother(yard.dataDir);
  expect(other.uuid).toBe(uuid);
  await yard.command('yard.openOwn', {});
  expect(await problem()).toContain(`process ${other.pid}`);
  await other.kill();
  expect(await yard.command('yard.openOwn', {})).toMatchObject({ uuid, problem: null, boards: 2 });
});

test('the yard can be taken as soon as it was closed', async () => {
  await yard.app.close();
  expect(startAnother(yard.dataDir)).toMatchObject({ says: null });
});

test('others can still read the yard', async () => {
  const reader = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  expect(reader.prepare('SELECT count(*) FROM board').pluck().get()).toBe(2);
  reader.close();
});

test('who has it is not known: it says so all the same', async () => {
  writeFileSync(join(yard.dataDir, 'yard.sqlite-owner.json'), '{"processId":');
  const { says } = startAnother(yard.dataDir);
  expect(says).toContain('Another program is using the yard file');
});

test('the demo yard of another process is not shown', async () => {
  const other = startAnother(yard.dataDir, 'demo');
  expect(other.says).toBeNull();
  expect(await yard.command('yard.openDemo', {})).toMatchObject({ uuid: null });
  expect(await problem()).toContain(`process ${other.pid}`);
});

const notChecked = { ask: async () => ({ damage: null, damagedReadings: [] }), close: async () => undefined };
const file = () => join(yard.dataDir, 'yard.sqlite');
const lockFile = () => `${file()}-lock`;
const rename = (name: string) =>
  yard.answer('places.edit', { id: yard.place.id, basedOn: 1, changed: { name } });

/** What this process makes of a data folder. */
function openHere(folder: string) {
  const yards = createYards(folder, yard.now, notChecked, console.error, () => undefined);
  const { uuid, problem: found } = yards.info();
  yards.close();
  return { uuid, says: found && say(found) };
}

test('a file with two names is opened under neither: two could then write to it', async () => {
  await yard.app.close();
  const other = join(yard.dataDir, 'elsewhere');
  mkdirSync(other);
  linkSync(file(), join(other, 'yard.sqlite'));
  const before = readFileSync(file());
  for (const folder of [yard.dataDir, other]) {
    const { uuid, says } = openHere(folder);
    expect(uuid).toBeNull();
    expect(says).toBe(
      `The yard file ${join(folder, 'yard.sqlite')} has a second name on this disk, a hard link. ` +
        'Two programs could then write to it at once. The file was not changed. Delete the second name, then try again.',
    );
  }
  expect(readFileSync(file()).equals(before)).toBe(true);
  rmSync(join(other, 'yard.sqlite'));
  expect(openHere(yard.dataDir)).toMatchObject({ says: null });
});

test('a file that gets a second name while it is open is not opened by that', async () => {
  const other = join(yard.dataDir, 'elsewhere');
  mkdirSync(other);
  linkSync(file(), join(other, 'yard.sqlite'));
  expect(startAnother(other)).toMatchObject({ uuid: null });
  expect(await rename('Loft')).toMatchObject({ ok: true });
});

const inTheWay: [string, (path: string) => void][] = [
  ['a folder', (path) => mkdirSync(path)],
  ['another program’s file', (path) => writeFileSync(path, 'song, artist, album\n'.repeat(400))],
];
test.each(inTheWay)('%s in the place of the lock’s file is named, and left as it is', async (_what, put) => {
  await yard.app.close();
  rmSync(lockFile());
  put(lockFile());
  expect(openHere(yard.dataDir)).toMatchObject({
    uuid: null,
    says:
      `Pintally needs the name ${lockFile()} to open the yard file ${file()}. Something else has that name. ` +
      `Nothing was changed. Move what is called ${lockFile()} to another folder, then try again.`,
  });
  renameSync(lockFile(), `${lockFile()}.moved`);
  expect(openHere(yard.dataDir)).toMatchObject({ says: null });
});

test('a folder in the place of the file that says who has the yard keeps nobody from it', async () => {
  await yard.app.close();
  mkdirSync(`${file()}-owner.json`);
  expect(startAnother(yard.dataDir)).toMatchObject({ says: null });
  const second = openHere(yard.dataDir);
  expect(second).toMatchObject({ uuid: null });
  expect(second.says).toContain('Another program is using the yard file');
});

test('a folder in the place of the yard file is left as it is', async () => {
  await yard.app.close();
  renameSync(file(), `${file()}.old`);
  mkdirSync(file());
  const { says } = openHere(yard.dataDir);
  expect(says).toContain('was not made by Pintally');
  expect(readdirSync(file())).toEqual([]);
});

test('a new yard has one lock by whatever name its folder is opened', async () => {
  const folder = join(yard.dataDir, 'new');
  mkdirSync(folder);
  symlinkSync(folder, join(yard.dataDir, 'linked'));
  const [one, other] = [startAnother(folder), startAnother(join(yard.dataDir, 'linked'))] as const;
  expect([one.uuid, other.uuid].filter((uuid) => uuid !== null)).toHaveLength(1);
});
