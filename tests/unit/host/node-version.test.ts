import { expect, test } from 'vitest';
import { isNodeNewEnough } from '../../../electron/node-version.ts';

test('Node 22 and newer will do, an older one will not', () => {
  for (const version of ['22.0.0', '24.21.0', '100.1.0'])
    expect(isNodeNewEnough(version), version).toBe(true);
  for (const version of ['20.20.2', '9.0.0']) expect(isNodeNewEnough(version), version).toBe(false);
});
