import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ensureNativeSocket, nativeSocketLoads } from '../../electron/meter/native-socket.ts';

const here = { execPath: process.execPath, electronVersion: null };

// npm builds it for the Node that runs npm; the app runs on another. A build takes some seconds to a minute.
test('the native socket loads in the Node that runs the app, built for it if need be', {
  timeout: 240_000,
}, async () => {
  expect(await ensureNativeSocket(here)).toEqual({ ready: true, built: expect.any(Boolean) });
  expect(await nativeSocketLoads(here)).toEqual({ loads: true, detail: '' });
  expect(await ensureNativeSocket(here)).toEqual({ ready: true, built: false });
});

/** Another Node on this machine, with another binary interface for native modules. */
const systemNode = '/usr/bin/node';
const interfaceOf = (node: string) =>
  execFileSync(node, ['-p', 'process.versions.modules'], { encoding: 'utf8' }).trim();
const another =
  process.platform === 'linux' &&
  existsSync(systemNode) &&
  interfaceOf(systemNode) !== process.versions.modules;
test.skipIf(!another)(
  'in a runtime of another version it is found not to load, with the reason for the fault log',
  async () => {
    const there = await nativeSocketLoads({ execPath: systemNode, electronVersion: null });
    expect(there).toEqual({ loads: false, detail: expect.stringMatching(/NODE_MODULE_VERSION/) });
  },
);

test('a runtime that is not there gives a reason and no throw', async () => {
  const state = await ensureNativeSocket({ execPath: '/nowhere/node', electronVersion: null });
  expect(state).toMatchObject({
    ready: false,
    detail: expect.stringMatching(/ENOENT/),
  });
});
