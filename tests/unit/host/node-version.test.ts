import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { isNodeNewEnough, runsSources } from '../../../electron/node-version.mjs';

const root = resolve(import.meta.dirname, '../../..');

test('Node 22 and newer will do for the built app, an older one will not', () => {
  for (const version of ['22.0.0', '24.21.0', '100.1.0'])
    expect(isNodeNewEnough(version), version).toBe(true);
  for (const version of ['20.20.2', '9.0.0']) expect(isNodeNewEnough(version), version).toBe(false);
});

test('for the sources it is Node 22.18 and newer', () => {
  for (const version of ['22.18.0', '22.18.1', '22.20.0', '24.0.0', '100.1.0'])
    expect(runsSources(version), version).toBe(true);
  for (const version of ['22.17.9', '22.6.0', '20.20.2', '9.30.0'])
    expect(runsSources(version), version).toBe(false);
});

test('an older one is told what to do, in one sentence, before it reads any TypeScript', () => {
  const asIfOld = `Object.defineProperty(process.versions, 'node', { value: '20.20.2' });`;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [
      '--import',
      `data:text/javascript,${encodeURIComponent(asIfOld)}`,
      'electron/run.mjs',
      'no-such-file.ts',
    ],
    { cwd: root, encoding: 'utf8' },
  );
  expect({ status, stdout }).toEqual({ status: 1, stdout: '' });
  expect(stderr).toBe(
    'Pintally needs Node 22.18.0 or newer, and this is Node 20.20.2: "npm ci" brings the right one, and "npm run" and "npx node" use it.\n',
  );
});

test('every npm script that runs a file of TypeScript does so by way of that check', () => {
  const { scripts } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };
  const running = Object.values(scripts).flatMap((script) => script.match(/node \S+/g) ?? []);
  expect(running.length).toBeGreaterThan(3);
  expect(new Set(running)).toEqual(new Set(['node electron/run.mjs']));
});
