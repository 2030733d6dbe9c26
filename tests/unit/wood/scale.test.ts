/** What a % on a meter's scale is of. */
import { describe, expect, test } from 'vitest';
import type { MeterScale } from '../../../shared-core/wood/moisture/corrected.ts';
import { basisOfScale, showsSpecies, USUAL_SCALE } from '../../../shared-core/wood/moisture/scale.ts';
import { spotScatterPct } from '../../../shared-core/wood/moisture/spot-scatter.ts';

const setTo = (speciesId: string | null, curveId: string | null): MeterScale => ({
  kind: 'species',
  speciesId,
  curveId,
  tempC: 18,
});

// Meters are generally calibrated on Douglas-fir (W. L. James, FPL-GTR-6, 1988, from memory).
test('a % is of the species that the meter is set to, else of Douglas-fir', () => {
  expect(basisOfScale(setTo('walnut-black', 'walnut-black'))).toEqual({ curveId: 'walnut-black', tempC: 18 });
  expect(basisOfScale(setTo('cherry-black', null))).toEqual({ curveId: null, tempC: 18 });
  for (const kind of ['usual', 'ohms', 'unknown'] as const) expect(basisOfScale({ kind })).toBe(USUAL_SCALE);
  expect(USUAL_SCALE.curveId).toBe('douglas-fir-coast');
});

describe('a meter shows the MC of a species itself', () => {
  const walnut = { id: 'walnut-black', curveId: 'walnut-black' };
  const cherry = { id: 'cherry-black', curveId: null };

  test('where it is set to it, or to its curve', () => {
    expect(showsSpecies(setTo('walnut-black', null), walnut)).toBe(true);
    expect(showsSpecies(setTo(null, 'walnut-black'), walnut)).toBe(true);
    expect(showsSpecies(setTo('cherry-black', null), cherry)).toBe(true);
    expect(showsSpecies({ kind: 'usual' }, { id: 'fir', curveId: 'douglas-fir-coast' })).toBe(true);
  });

  test('and of no other', () => {
    expect(showsSpecies(setTo('walnut-black', 'walnut-black'), cherry)).toBe(false);
    expect(showsSpecies(setTo('cherry-black', null), { id: 'pear', curveId: null })).toBe(false);
    expect(showsSpecies({ kind: 'usual' }, walnut)).toBe(false);
    expect(showsSpecies({ kind: 'usual' }, cherry)).toBe(false);
  });
});

// Common practice, no source.
test('readings on one board scatter by half a point in dry wood, in proportion where it is wetter', () => {
  expect([6, 12.5, 25].map(spotScatterPct)).toEqual([0.5, 0.5, 1]);
});
