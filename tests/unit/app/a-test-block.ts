import type { NewTestBlock } from '../../../shared-core/contract/meter-checks.ts';

/** A test block on which a meter should show 12 %. */
export const aTestBlock = (meterId: number): NewTestBlock => ({
  meterId,
  name: 'Block',
  expected: 12,
  unit: 'pct',
  tolerance: 0.5,
  checkEvery: 'day',
});
