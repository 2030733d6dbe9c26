import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, expect, test } from 'vitest';
import { say } from './a-window.ts';
import { endOthers, startAnother } from './other-process.ts';
import { withYardOfTwo, yard } from './yard-of-two.ts';

// A process takes its time to start on a busy computer.
withYardOfTwo();
afterEach(endOthers);

const file = () => join(yard.dataDir, 'yard.sqlite');
const lockFile = () => `${file()}-lock`;
const rename = (name: string) =>
  yard.answer('places.edit', { id: yard.place.id, basedOn: 1, changed: { name } });
const rescuedCopies = () => readdirSync(yard.dataDir).filter((name) => /rescued-\d|damaged/.test(name));
const problem = async () => {
  const info = await yard.query('yard.info', {});
  return info.problem && say(info.problem);
};

test('a lock whose file is deleted is taken back before anybody else has it', async () => {
  rmSync(lockFile());
  expect(await rename('Loft')).toMatchObject({ ok: true });
  const { says } = startAnother(yard.dataDir);
  expect(says).toContain(`end process ${process.pid}`);
});

test('another that opened the yard once the lock’s file was deleted has it: nothing more is written here', async () => {
  const { uuid } = await yard.query('yard.info', {});
  rmSync(lockFile());
  const other = startAnother(yard.dataDir);
  expect(other.uuid).toBe(uuid);
  expect(await rename('Loft')).toMatchObject({ ok: false, problem: { code: 'refusal.yard-owned' } });
  expect(await problem()).toContain(`end process ${other.pid}`);
  // Who has it stays written down, and nothing was taken from that one.
  expect(readFileSync(`${file()}-owner.json`, 'utf8')).toContain(String(other.pid));
  expect(rescuedCopies()).toEqual([]);
  other.changeAndClose();
  expect(await yard.command('yard.openOwn', {})).toMatchObject({ uuid, problem: null, boards: 2 });
  expect(await yard.query('settings.get', {})).toMatchObject({ theme: 'dark' });
  expect(await rename('Loft')).toMatchObject({ ok: true });
});

test('what settles on a meter is not saved either once another has the yard', async () => {
  const { id: roundId } = await yard.beginRound();
  await yard.command('meter.scan', {});
  await yard.command('meter.connect', { deviceId: 'hand' });
  rmSync(lockFile());
  startAnother(yard.dataDir);
  yard.meter.show(11.8, 4);
  expect(yard.heard('round.notSaved').map(({ problem }) => problem.code)).toEqual(['refusal.yard-owned']);
  expect(yard.heard('changed').at(-1)).toEqual({ yard: null, topics: ['yard'] });
  endOthers();
  await expect.poll(() => yard.command('yard.openOwn', {})).toMatchObject({ problem: null });
  const { probed } = await yard.query('rounds.get', { roundId });
  expect(probed?.assessment?.readings.map(({ raw }) => raw)).toEqual([12.4]);
});

test('what another changed meanwhile is shown once the lock is taken back', async () => {
  rmSync(lockFile());
  startAnother(yard.dataDir).changeAndClose();
  expect(await yard.query('settings.get', {})).toMatchObject({ theme: 'dark' });
  expect(yard.heard('changed').at(-1)).toMatchObject({ topics: ['yard'] });
  expect(rescuedCopies()).toEqual([]);
  expect(await rename('Loft')).toMatchObject({ ok: true });
});

test('a folder that is deleted, and made again by another Pintally: all that was saved here is in a rescued copy', async () => {
  await yard.beginRound();
  rmSync(yard.dataDir, { recursive: true });
  const other = startAnother(yard.dataDir);
  expect(other.says).toBeNull();
  expect(await rename('Loft')).toMatchObject({
    ok: false,
    problem: { code: 'refusal.yard-moved', facts: { state: 'replaced' } },
  });
  const copy = new Database(`${file()}.rescued-2026-06-01`, { readonly: true });
  expect(copy.prepare('SELECT raw FROM reading').pluck().all()).toEqual([12.4]);
  copy.close();
  await yard.command('yard.openOwn', {});
  expect(await problem()).toContain(`end process ${other.pid}`);
});
