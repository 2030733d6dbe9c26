import { describe, expect, test } from 'vitest';
import { type PriorNow, wettestBy } from '../../../shared-core/probing/readings/prior-now.ts';

// A check by the prior doubts what is 2.3 standard deviations off (Box 1980; from memory): here those double what the
// core is above its air, and add 2.3 points for the air.
const core = { pct: 20, logSd: Math.LN2 / 2.3, airSdPct: 1 };
const prior: PriorNow = { shell: core, average: core, core, emcPct: 12 };

describe('the wettest that a board can be before any reading', () => {
  test('is twice as far above its air as the core should be, and by the air on top', () => {
    expect(wettestBy(prior)).toBeCloseTo(12 + 2 * 8 + 2.3, 9);
  });

  test('is wetter by the damp side of the air, and where green wood held more water than the model', () => {
    expect(wettestBy({ ...prior, core: { ...core, damperSdPct: 2 } })).toBeCloseTo(12 + 2 * 8 + 4.6, 9);
    expect(wettestBy({ ...prior, unmodeledLog: Math.LN2 })).toBeCloseTo(12 + 4 * 8 + 2.3, 9);
  });

  test('of a board drier than its air, is by the air alone', () => {
    expect(wettestBy({ ...prior, core: { ...core, pct: 9 } })).toBeCloseTo(12 + 2.3, 9);
  });
});
