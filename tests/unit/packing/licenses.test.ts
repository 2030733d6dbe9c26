/** The licenses of all that people get: what the page shows, what the bill of materials lists. */
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { billOfMaterials } from '../../../electron/packing/bill-of-materials.ts';
import { licensed, licensedPackages } from '../../../electron/packing/licenses.ts';
import { nodeOf, type Package } from '../../../electron/packing/packages.ts';

const root = resolve(import.meta.dirname, '../../..');
const all = licensedPackages(root);

/** A package as npm would have installed it. */
function installed(files: Record<string, string>, license: string): [string, Package] {
  const folder = mkdtempSync(join(tmpdir(), 'pintally-license-'));
  mkdirSync(join(folder, 'a-part'));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, 'a-part', name), text);
  return [folder, { name: 'a-part', version: '1.0.0', license, folder: 'a-part' }];
}

test('each package that people get has a license text, with whoever holds the rights', () => {
  expect(all.length).toBeGreaterThan(50);
  const permission = /permission|granted|redistribut|license/i;
  expect(all.filter(({ text }) => text.length < 300 || !permission.test(text))).toEqual([]);
  expect(all.filter(({ text }) => !/copyright|©|the authors of|blue oak/i.test(text))).toEqual([]);
});

test('the packages of the window, the fonts and Node have their licenses on the page', () => {
  const names = all.map(({ name }) => name);
  for (const name of ['react', 'zustand', 'better-sqlite3', 'dejavu-fonts-ttf', 'Node.js']) {
    expect(names).toContain(name);
  }
  const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  expect(Object.keys(dependencies).filter((name) => !names.includes(name))).toEqual([]);
});

test('the bill of materials lists the same packages as the licenses page', () => {
  const { components } = billOfMaterials(root, nodeOf(root));
  const listed = components.map(({ name, version }) => `${name} ${version}`).sort();
  expect(listed).toEqual(all.map(({ name, version }) => `${name} ${version}`).sort());
});

describe('a package', () => {
  test('has every text that came with it', () => {
    const [root, part] = installed({ 'LICENSE.md': 'Do as you like.\n', NOTICE: 'By Ann Oak.\n' }, 'OWN-1.0');
    expect(licensed(root, part)).toMatchObject({
      license: 'OWN-1.0',
      text: 'Do as you like.\n\nBy Ann Oak.',
      isTextOwn: true,
    });
  });

  test('without a text has that of MIT, with its author', () => {
    const [root, part] = installed({ 'package.json': '{"author":"Ann Oak <ann@example.org>"}' }, 'MIT');
    const { text, isTextOwn } = licensed(root, part);
    expect(isTextOwn).toBe(false);
    expect(text).toContain('Copyright (c) Ann Oak\n');
    expect(text).toContain('to deal\nin the Software without restriction');
  });

  test('without a text and of another license stops the build', () => {
    const [root, part] = installed({ 'package.json': '{}' }, 'ISC');
    expect(() => licensed(root, part)).toThrow('a-part 1.0.0 (ISC) has no text of its license.');
  });
});
