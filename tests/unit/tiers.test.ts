import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { coreBle, longTests, quickTests, tooLongForQuick } from '../tiers.ts';

const root = resolve(import.meta.dirname, '../..');
const unit = join(root, 'tests/unit');
const files = readdirSync(unit, { recursive: true, encoding: 'utf8' }).map((file) => `tests/unit/${file}`);

describe('what npm test leaves out', () => {
  test.each([...longTests, ...coreBle, ...tooLongForQuick])('%s is there', (file) => {
    expect(existsSync(join(root, file))).toBe(true);
  });

  test.each(quickTests)('%s, of the quick tests, names test files', (path) => {
    expect(path === 'tests/reference/' || files.some((file) => file.startsWith(path))).toBe(true);
  });

  test('is tagged core only in files that are left out: of the others all is run', () => {
    const tagged = files.filter(
      (file) => file.includes('.test.ts') && /tags: 'core'/.test(readFileSync(join(root, file), 'utf8')),
    );
    expect(tagged.length).toBeGreaterThan(10);
    expect(tagged.filter((file) => !longTests.includes(file) && !file.endsWith('/tiers.test.ts'))).toEqual(
      [],
    );
  });
});
