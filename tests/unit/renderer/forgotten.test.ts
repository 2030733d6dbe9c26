import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../../..');
const stores = readdirSync(join(root, 'renderer/stores')).flatMap((file) =>
  [
    ...readFileSync(join(root, 'renderer/stores', file), 'utf8').matchAll(
      /^export const (use\w+) = create[<(]/gm,
    ),
  ].map(([, name]) => name!),
);

test.each(stores)('before each test of the window, %s is as at the start', (store) => {
  const machine = readFileSync(join(root, 'tests/unit/renderer/shell/machine.ts'), 'utf8');
  expect(machine.match(/const stores: unknown\[\] = \[([^\]]+)\]/)![1]).toContain(`${store},`);
});
