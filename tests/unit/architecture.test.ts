import { globSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { expect, test } from 'vitest';

/** The design's rules of who may know whom, read from the import lines. */
const root = resolve(import.meta.dirname, '../..');

interface Import {
  file: string;
  /** A folder of ours (`shared-core/wood`), or a package. */
  target: string;
}

const importLine = /(?:from|import)\s*\(?\s*'([^']+)'/g;

function importsUnder(folder: string): Import[] {
  return globSync(`${folder}/**/*.{ts,tsx}`, { cwd: root }).flatMap((file) =>
    [...readFileSync(join(root, file), 'utf8').matchAll(importLine)].map((match) => {
      const name = match[1] as string;
      const target = name.startsWith('.') ? relative(root, resolve(root, dirname(file), name)) : name;
      return { file, target };
    }),
  );
}

const outside = (folder: string, allowed: RegExp): string[] =>
  importsUnder(folder)
    .filter(({ target }) => !allowed.test(target))
    .map(({ file, target }) => `${file} imports ${target}`);

test('the core knows only itself, its seeds, and pure libraries', () => {
  expect(importsUnder('shared-core').length).toBeGreaterThan(50);
  expect(
    outside(
      'shared-core',
      /^(shared-core\/|seeds\/|zod$|qrcode-generator$|intl-messageformat$|@formatjs\/icu-messageformat-parser)/,
    ),
  ).toEqual([]);
});

test('the window knows the core and its own libraries, never the side that touches the world', () => {
  expect(importsUnder('renderer').length).toBeGreaterThan(50);
  const allowed =
    /^(shared-core\/|renderer\/|react$|react\/|react-dom$|react-dom\/client$|zod$|zustand|@tanstack\/react-(query|virtual)$|react-aria-components|@internationalized\/date$|@fontsource|jsqr$|vite\/client$|virtual:licenses$)/;
  expect(outside('renderer', allowed)).toEqual([]);
});

test('the side that touches the world never knows the window', () => {
  expect(outside('electron', /^(?!renderer\/)/)).toEqual([]);
});

test('the store knows nothing of use cases, and the meter nothing of either', () => {
  expect(outside('electron/store', /^(?!electron\/(app|meter|print))/)).toEqual([]);
  expect(outside('electron/meter', /^(?!electron\/(app|store|print))/)).toEqual([]);
});

test('a thread that opens yard files loads SQLite with itself', () => {
  const imports = importsUnder('electron');
  const reached = (file: string, seen = new Set<string>([file])): Set<string> => {
    for (const { target } of imports.filter((each) => each.file === file)) {
      if (!seen.has(target)) reached(target, seen.add(target));
    }
    return seen;
  };
  const threads = globSync('electron/**/*-worker.ts', { cwd: root });
  const openYards = threads.filter((thread) => reached(thread).has('electron/store/yard-file.ts'));
  expect(openYards.length).toBeGreaterThan(3);
  expect(openYards.filter((thread) => !reached(thread).has('electron/store/load-sqlite.ts'))).toEqual([]);
});

test("the core's physics knows only itself, and codes of sentences", () => {
  const allowed = /^(shared-core\/(wood\/|words\/message|outcome|time|measures)|seeds\/|zod$)/;
  expect(outside('shared-core/wood', allowed)).toEqual([]);
});

test('probing knows only the physics, and codes of sentences', () => {
  const allowed = /^(shared-core\/(probing\/|wood\/|words\/message|outcome|time|measures)|zod$)/;
  expect(outside('shared-core/probing', allowed)).toEqual([]);
});

test('no folder of the core knows one that knows it, by whatever way round', () => {
  const known = new Map<string, Set<string>>();
  /** Wood and probing by their subfolders; any other folder is one. */
  const folderOf = (file: string): string =>
    /^shared-core\/((wood|probing)\/[^/]+|[^/]+)/.exec(file)?.[0] ?? file;
  for (const { file, target } of importsUnder('shared-core')) {
    const [from, to] = [folderOf(file), folderOf(target)];
    if (to.startsWith('shared-core') && from !== to) known.set(from, (known.get(from) ?? new Set()).add(to));
  }
  const reaches = (from: string, goal: string, seen = new Set<string>()): boolean =>
    [...(known.get(from) ?? [])].some((next) => {
      if (next === goal) return true;
      if (seen.has(next)) return false;
      seen.add(next);
      return reaches(next, goal, seen);
    });
  expect(known.size).toBeGreaterThan(10);
  expect([...known.keys()].filter((folder) => reaches(folder, folder))).toEqual([]);
});

test('what lasts is measured by a clock that nobody sets', () => {
  const files = globSync('{shared-core,electron,renderer}/**/*.{ts,tsx}', { cwd: root });
  expect(files.length).toBeGreaterThan(300);
  expect(files.filter((file) => readFileSync(join(root, file), 'utf8').includes('Date.now'))).toEqual([]);
});

test('instants are compared by the time they tell, never as texts', () => {
  const instant = '(takenAt|startedAt|finishedAt|givenAt|lastProbedAt|since|[nN]ow\\(\\))';
  const compared = new RegExp(
    `\\b${instant}\\)* [<>]=? |[^=] [<>]=? [\\w.?!()]*\\b${instant}(?!\\w)|${instant}\\W{0,8}\\.localeCompare`,
  );
  const files = globSync('{shared-core,electron,renderer}/**/*.{ts,tsx}', { cwd: root });
  const found = files.flatMap((file) =>
    readFileSync(join(root, file), 'utf8')
      .split('\n')
      .filter((line) =>
        compared.test(line.replaceAll(/Date\.parse\([^()]*(\(\))?\)|performance\.now\(\)/g, '0')),
      )
      .map((line) => `${file}: ${line.trim()}`),
  );
  expect(found).toEqual([]);
});

test('what makes sentences knows nothing of what they are about', () => {
  const allowed =
    /^(shared-core\/((words|units)\/|time|measures)|zod$|intl-messageformat$|@formatjs\/icu-messageformat-parser)/;
  expect(outside('shared-core/words', allowed)).toEqual([]);
});
