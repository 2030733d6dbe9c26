/** Hosts in their own processes, as `npm start` starts them. */
import { type ChildProcess, spawn } from 'node:child_process';
import { randomUUID } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { WebSocket } from 'ws';
import { runningHost } from '../../../electron/running-host.ts';

const hosts: ChildProcess[] = [];
afterEach(async () => {
  const ended = hosts.map((host) => once(host, 'exit'));
  for (const host of hosts.splice(0)) host.kill('SIGTERM');
  await Promise.all(ended);
});

/** Its output, once it says where it is. */
async function start(dataDir: string): Promise<{ says: () => string }> {
  const host = spawn(process.execPath, [join(import.meta.dirname, 'a-host.ts')], {
    env: { ...process.env, PINTALLY_DATA: dataDir },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  hosts.push(host);
  let said = '';
  for (const stream of [host.stdout, host.stderr]) stream.on('data', (part) => (said += part));
  await expect.poll(() => said, { timeout: 60_000 }).toContain('The address works once.');
  return { says: () => said };
}

/** Its yard was opened by then: windows wait for it. */
async function enter(says: string): Promise<void> {
  const link = new URL(/http:\S+/.exec(says)![0]);
  const socket = new WebSocket(`ws://${link.host}/ws`, { headers: { Origin: link.origin } });
  await once(socket, 'open');
  socket.send(JSON.stringify({ window: randomUUID(), ticket: link.searchParams.get('open') }));
  await once(socket, 'message');
  socket.close();
}

test('of two that start at the same moment, only the one that has the yard is left for the next', {
  timeout: 120_000,
}, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-starts-'));
  const first = await start(folder);
  // Also before its yard is open.
  const { startLink } = (await runningHost(folder))!;
  expect(first.says()).toContain(startLink);
  // As before the first had written it.
  rmSync(join(folder, 'running-host.json'));
  const second = await start(folder);
  await enter(second.says());
  await expect
    .poll(async () => [undefined, startLink].includes((await runningHost(folder))?.startLink))
    .toBe(true);
});

test('one that is stopped before its yard is open makes no yard', { timeout: 120_000 }, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-starts-'));
  await start(folder);
  const host = hosts.pop()!;
  host.kill('SIGTERM');
  expect(await once(host, 'exit')).toEqual([0, null]);
  expect(readdirSync(folder)).toEqual(['running-host.json']);
});

test('one that may not write to its folder says so in a sentence, and serves its window', {
  timeout: 120_000,
}, async () => {
  // Nobody can make a folder there, whatever their rights.
  const { says } = await start('/proc/pintally');
  await expect
    .poll(says)
    .toContain('Pintally cannot write to /proc/pintally. Check that you may write there');
  expect(says()).not.toMatch(/^ +at /m);
});
