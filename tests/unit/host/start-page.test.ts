import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { beforeEach, expect, test } from 'vitest';
import { writeStartPage } from '../../../electron/start-page.ts';

const address = `http://127.0.0.1:4321/?open=${'a'.repeat(64)}`;
let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pintally-home-'));
});

test('the page leads to the link, and its own name says nothing of it', () => {
  const { file } = writeStartPage(address, folder);
  expect(readFileSync(file, 'utf8')).toContain(`content="0; url=${address}"`);
  expect(file).not.toContain('aaaa');
});

test('only its owner can read it, in a folder that is in sight', () => {
  const { file } = writeStartPage(address, folder);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(statSync(dirname(file)).mode & 0o777).toBe(0o700);
  expect(basename(dirname(file))).not.toMatch(/^\./);
});

test('removed, nothing of it is left', () => {
  writeStartPage(address, folder).remove();
  expect(readdirSync(folder)).toEqual([]);
});

test('what a killed process left is removed, what belongs to a running one stays', () => {
  // Above the largest process number that Linux gives (proc(5)).
  const [killed, running] = [4_194_305, process.ppid].map((pid) => join(folder, `pintally-start-${pid}`));
  for (const each of [killed, running]) mkdirSync(each!);
  writeStartPage(address, folder);
  expect([killed, running].map((each) => existsSync(each!))).toEqual([false, true]);
});
