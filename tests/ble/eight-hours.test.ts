import { execFile } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const bench = fileURLToPath(new URL('../bench/eight-hours.bench.ts', import.meta.url));

// In a process of its own: what the test runner keeps must not count. One value a second, a push every two hours.
test('eight hours with a loss every half hour: no value that arrived is lost, pushes are saved, memory is flat', {
  timeout: 300_000,
}, async () => {
  const { code, said } = await new Promise<{ code: number | null; said: string }>((resolve) => {
    const child = execFile(process.execPath, [bench, '1', '4'], (_, out, errors) =>
      resolve({ code: child.exitCode, said: `${out}${errors}` }),
    );
  });
  expect({ code, said }).toEqual({ code: 0, said: expect.stringContaining('between arrival and host 0 ') });
});
