import { execFileSync } from 'node:child_process';
import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { startLoopbackHost } from '../../../electron/loopback-host.ts';
import { forgetRunningHost, lastPort, runningHost, saveRunningHost } from '../../../electron/running-host.ts';

let folder: string;
let host: Awaited<ReturnType<typeof startLoopbackHost>>;
const file = () => join(folder, 'running-host.json');
const start = (port = 0) =>
  startLoopbackHost({
    rendererDir: folder,
    port,
    connect: () => ({ answer: async () => ({ ok: true, output: null }), close: () => undefined }),
  });

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'pintally-running-'));
  host = await start();
  saveRunningHost(folder, { startLink: host.address(), proof: host.proof });
});
afterEach(() => host.close());

test('a second start finds the host that runs, with a link that opens its window', async () => {
  expect((await runningHost(folder))?.startLink).toBe(host.address());
});

test('one that gives up what it saved is not found, and leaves what another saved', async () => {
  forgetRunningHost(folder, 'a'.repeat(64));
  expect(await runningHost(folder)).not.toBeNull();
  forgetRunningHost(folder, host.proof);
  expect(existsSync(file())).toBe(false);
});

test('only this user can read where it is', () => {
  expect(statSync(file()).mode & 0o777).toBe(0o600);
});

test('what another user could have written is not believed', async () => {
  chmodSync(file(), 0o666);
  expect(await runningHost(folder)).toBeNull();
});

test.each(['', '{}', '{"startLink":"http://evil.example/?open=0","proof":"0"}'])(
  'nor is %j',
  async (content) => {
    writeFileSync(file(), content);
    expect(await runningHost(folder)).toBeNull();
    expect(lastPort(folder)).toBe(0);
  },
);

test.each([66_285, 99_999])('a port that there cannot be is as no file: %i', async (port) => {
  const link = `http://127.0.0.1:${port}/?open=${'a'.repeat(64)}`;
  writeFileSync(file(), JSON.stringify({ startLink: link, proof: 'a'.repeat(64) }));
  expect(await runningHost(folder)).toBeNull();
  expect(lastPort(folder)).toBe(0);
});

test('nor is a pipe waited for', async () => {
  rmSync(file());
  execFileSync('mkfifo', ['-m', '600', file()]);
  expect(await runningHost(folder)).toBeNull();
  expect(lastPort(folder)).toBe(0);
});

test('of an answer without end, only the beginning is read', async () => {
  const port = lastPort(folder);
  await host.close();
  let sent = 0;
  const other = createServer((_, response) => {
    const part = Buffer.alloc(64 * 1024);
    const send = () => {
      while (!response.destroyed && response.write(part)) sent += part.length;
    };
    response.on('drain', send);
    send();
  });
  await new Promise<void>((listening) => other.listen(port, '127.0.0.1', listening));
  expect(await runningHost(folder)).toBeNull();
  expect(sent).toBeLessThan(50 * 1024 * 1024);
  other.closeAllConnections();
  other.close();
  host = await start();
});

test('one that ended is not found, and the next takes its port', async () => {
  const port = lastPort(folder);
  await host.close();
  expect(await runningHost(folder)).toBeNull();
  host = await start(port);
  expect(new URL(host.address()).port).toBe(String(port));
});

test('where its port is taken, another one will do', async () => {
  const second = await start(lastPort(folder));
  expect(new URL(second.address()).port).not.toBe(new URL(host.address()).port);
  await second.close();
});

test('another program at its port is not taken for it, and learns nothing', async () => {
  const port = lastPort(folder);
  await host.close();
  const asked: (string | undefined)[] = [];
  const other = createServer(({ url }, response) => {
    asked.push(url);
    response.end('0'.repeat(64));
  });
  await new Promise<void>((listening) => other.listen(port, '127.0.0.1', listening));
  expect(await runningHost(folder)).toBeNull();
  expect(asked).toHaveLength(1);
  const { startLink, proof } = JSON.parse(readFileSync(file(), 'utf8'));
  for (const secret of [proof, new URL(startLink).searchParams.get('open')]) {
    expect(asked[0]).not.toContain(secret);
  }
  other.close();
  host = await start();
});
