import { globSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';

const renderer = resolve(import.meta.dirname, '../../../renderer');

test('every store of the window is where each test puts it back: exported from renderer/stores', () => {
  const files = globSync('**/*.{ts,tsx}', { cwd: renderer });
  const made = files.flatMap((file) =>
    [...readFileSync(resolve(renderer, file), 'utf8').matchAll(/^.*\buse\w+ = create[<(]/gm)].map(
      ([line]) => `${file}: ${line}`,
    ),
  );
  expect(made.length).toBeGreaterThan(10);
  expect(made.filter((each) => !/^stores\/[^/]+: export const /.test(each))).toEqual([]);
});
