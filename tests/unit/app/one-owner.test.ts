import { writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test, vi } from 'vitest';
import { say } from './a-window.ts';
import { endOthers, startAnother } from './other-process.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// A process takes its time to start on a busy computer.
vi.setConfig({ testTimeout: 20_000 });
withYardOfTwo();
afterEach(endOthers);

const problem = async () => {
  const info = await yard.query('yard.info', {});
  return info.problem && say(info.problem);
};

test('a second process opens nothing, and says which one has the yard', async () => {
  const file = join(yard.dataDir, 'yard.sqlite');
  const other = await startAnother(yard.dataDir);
  expect(other.uuid).toBeNull();
  expect(other.says).toBe(
    `The yard file ${file} is already open. It was opened Jun 1, 2026, 3:00 AM in a browser, ` +
      `on computer ${hostname()}. Nothing was changed. Close Pintally there, then try again. ` +
      `If you cannot find it, end process ${process.pid}.`,
  );
});

test('once the process that had it was killed, “Try again” opens the yard', async () => {
  const { uuid } = await yard.query('yard.info', {});
  await yard.command('yard.openDemo', {});
  const other = await startAnother(yard.dataDir);
  expect(other.uuid).toBe(uuid);
  await yard.command('yard.openOwn', {});
  expect(await problem()).toContain(`process ${other.pid}`);
  await other.kill();
  expect(await yard.command('yard.openOwn', {})).toMatchObject({ uuid, problem: null, boards: 2 });
});

test('the yard can be taken as soon as it was closed', async () => {
  await yard.app.close();
  expect(await startAnother(yard.dataDir)).toMatchObject({ says: null });
});

test('others can still read the yard', async () => {
  const reader = new Database(join(yard.dataDir, 'yard.sqlite'), { readonly: true });
  expect(reader.prepare('SELECT count(*) FROM board').pluck().get()).toBe(2);
  reader.close();
});

test('who has it is not known: it says so all the same', async () => {
  writeFileSync(join(yard.dataDir, 'yard.sqlite-owner.json'), '{"processId":');
  const { says } = await startAnother(yard.dataDir);
  expect(says).toContain('Another program is using the yard file');
});

test('the demo yard of another process is not shown', async () => {
  const other = await startAnother(yard.dataDir, 'demo');
  expect(other.says).toBeNull();
  expect(await yard.command('yard.openDemo', {})).toMatchObject({ uuid: null });
  expect(await problem()).toContain(`process ${other.pid}`);
});
