/** What README.md and DEVELOPERS.md name is there: files, folders, commands, and names in the code. */
import { globSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const read = (file: string): string => readFileSync(join(root, file), 'utf8');
const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

const files = [
  ...globSync('{electron,renderer,shared-core,seeds,tests,.github}/**/*', { cwd: root }),
  ...globSync('{package.json,tsconfig.json,.nvmrc,.editorconfig}', { cwd: root }),
].map((file) => `/${file.replaceAll('\\', '/')}`);
const isText = /\.(tsx?|mjs|css|json|yml|py|c|sh|html)$/;
const sources = files
  .filter((file) => isText.test(file) && !file.startsWith('/seeds/') && file !== '/tests/unit/docs.test.ts')
  .map((file) => read(file.slice(1)))
  .join('\n');

const isThere = (path: string): boolean => {
  const ending = `/${path.replace(/^\.?\//, '').replace(/\/$/, '')}`;
  return files.some((file) => file.endsWith(ending));
};
/** What the app makes where it runs is named in its code. */
const isMade = (name: string): boolean =>
  /(\.json|\/)$/.test(name) && sources.includes(name.replace(/\/$/, '').replace('yard.sqlite', ''));
/** `Corrected.steps` is a field of a type, `rounds.leave` a request. */
const isInCode = (name: string): boolean =>
  /^[A-Z]/.test(name) ? name.split('.').every((part) => sources.includes(part)) : sources.includes(name);
/** A name to be filled in: `NAME.ts`, `00NN-….ts`, `words/en/AREA.ts`. */
const isPattern = (span: string): boolean => /…|[A-Z]{2,}|[*{]/.test(span.replace(/README|DEVELOPERS/, ''));

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (doc) => {
  const text = read(doc);
  const spans = [...text.matchAll(/`([^`\n]+)`/g)].map(([, span]) => span!);

  test('names files and folders that are there', () => {
    const named = spans.filter((span) => /^[\w./@-]+(\.(tsx?|mjs|json|css|yml|md|py|c)|\/)$/.test(span));
    expect(named.length).toBeGreaterThan(0);
    const missing = named.filter((span) => !isPattern(span) && !isThere(span) && !isMade(span));
    expect([...new Set(missing)]).toEqual([]);
  });

  test('links to files that are there', () => {
    const links = [...text.matchAll(/\]\(([^)\s]+)\)/g)].map(([, link]) => link!);
    expect(
      links.filter((link) => !/^https?:/.test(link) && !isThere(link) && link !== 'DEVELOPERS.md'),
    ).toEqual([]);
  });

  test('names functions, types, requests and codes that the code has', () => {
    const named = spans.filter((span) => /^[A-Za-z][\w-]*(\.[A-Za-z][\w-]*)*(\(\))?$/.test(span));
    const missing = named.filter(
      (span) => !isPattern(span) && !isThere(span) && !isInCode(span.replace('()', '')),
    );
    expect([...new Set(missing)]).toEqual([]);
  });

  test('gives commands that can be run as they are written', () => {
    const runs = [...text.matchAll(/\bnpm run ([\w:-]+)|\bnpm (start|test)\b/g)].map(
      ([, run, short]) => run ?? short!,
    );
    expect(runs.length).toBeGreaterThan(3);
    expect(runs.filter((run) => scripts[run] === undefined)).toEqual([]);
    const started = [...text.matchAll(/\b(?:npx )?node ([\w./-]+\.(?:ts|mjs))/g)].map(([, file]) => file!);
    expect(started.filter((file) => !isPattern(file) && !files.includes(`/${file}`))).toEqual([]);
  });

  test('has lines of at most 120 characters', () => {
    const long = text.split('\n').filter((line) => line.length > 120 && !line.startsWith('|'));
    expect(long).toEqual([]);
  });
});
