import { execFileSync } from 'node:child_process';
import { chmodSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { hostFlags } from '../../../electron/host-flags.ts';

/** A Node that knows these flags of V8 and does nothing else. */
function nodeThatKnows(...flags: string[]): string {
  const file = join(mkdtempSync(join(tmpdir(), 'pintally-node-')), 'node');
  writeFileSync(file, `#!/bin/sh\n${flags.map((flag) => `echo "  ${flag} (what it is for)"`).join('\n')}\n`);
  chmodSync(file, 0o755);
  return file;
}

test('the host runs without the guard that ends processes of many threads', () => {
  expect(hostFlags(nodeThatKnows('--jit-fuzzing', '--memory-protection-keys'))).toEqual([
    '--no-memory-protection-keys',
  ]);
  expect(hostFlags(nodeThatKnows('--jit-fuzzing'))).toEqual([]);
  expect(hostFlags('/nowhere/node')).toEqual([]);
});

test('this Node starts with the flags of the host, in its threads too', () => {
  const says = `new (require('node:worker_threads').Worker)('console.log(process.execArgv.join())', { eval: true })`;
  const printed = execFileSync(process.execPath, [...hostFlags(), '-e', says], { encoding: 'utf8' });
  for (const flag of hostFlags()) expect(printed).toContain(flag);
});
