import { expect, test } from 'vitest';
import { isGradientOfDrying } from '../../../shared-core/probing/calls/gradient-of-drying.ts';

// A point above the use's limit: common practice, no source.
test.each([
  ['too wet, its core much wetter', 20, 14, 27, 2, true],
  ['too wet, its core a little above the limit', 20, 18.5, 21.5, 2, false],
  ['too wet, its shell wetter', 20, 27, 14, 2, false],
  ['dry enough, its core much wetter', 8, 4, 12, 2, false],
  ['of which the shell was not read', 20, null, 27, 2, false],
  ['of which the core was not read', 20, 14, null, 2, false],
  ['for a use that asks nothing of it', 20, 14, 27, null, false],
])('a board %s', (_, averagePct, shellPct, corePct, maxShellCorePct, isGradient) => {
  expect(isGradientOfDrying({ averagePct, shellPct, corePct }, { maxPct: 10, maxShellCorePct })).toBe(
    isGradient,
  );
});
