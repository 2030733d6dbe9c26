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

test.each([
  ['a script of ours', ['electron/run.mjs', 'no-such-file.ts']],
  ['vitest', ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', 'no-such-test']],
  [
    'Playwright',
    ['node_modules/@playwright/test/cli.js', 'test', '--config', 'tests/e2e/playwright.config.ts', 'no-such'],
  ],
])('%s tells an older one what to do, in one sentence, before it runs anything', (_, args) => {
  const asIfOld = `Object.defineProperty(process.versions, 'node', { value: '20.20.2' });`;
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', `data:text/javascript,${encodeURIComponent(asIfOld)}`, ...args],
    // A terminal's colors and the runner's own settings are no part of the sentence.
    { cwd: root, encoding: 'utf8', env: { PATH: process.env.PATH } },
  );
  expect({ status, stdout }).toEqual({ status: 1, stdout: '' });
  expect(stderr).toBe(
    'Pintally needs Node 22.18.0 or newer, and this is Node 20.20.2: "npm ci" brings the right one, and "npm run" and "npx node" use it.\n',
  );
});

test.each(['electron/loopback.ts'])(
  '%s imports nothing by name that an older one has not, before it says so',
  (file) => {
    const source = readFileSync(resolve(root, file), 'utf8');
    // A name that is missing ends it with a SyntaxError before its first line: `enableCompileCache` came with Node 22.1.
    expect(source).not.toMatch(/import \{[^}]*\} from 'node:module'/);
    expect(source.indexOf('isNodeNewEnough(')).toBeLessThan(source.indexOf('await import('));
  },
);

test('every npm script goes by way of that check, but for tools that run on an older one', () => {
  const { scripts } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };
  const parts = Object.values(scripts).flatMap((script) => script.split(' && '));
  const checked = /^(node electron\/run\.mjs |(vitest|playwright) .*--config tests\/|npm run )/;
  // Biome and TypeScript 7 are native programs; tried with Node 20.19 and 22.17.
  const native = /^(biome|tsc) /;
  expect(parts.filter((part) => checked.test(part)).length).toBeGreaterThan(10);
  expect(parts.filter((part) => !checked.test(part) && !native.test(part))).toEqual([]);
});
