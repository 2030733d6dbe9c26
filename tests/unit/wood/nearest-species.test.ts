/** What a name that is nearly right is asked about. Spellings as hands make them: common practice, no source. */
import { expect, test } from 'vitest';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { findSpecies, nearestSpecies } from '../../../shared-core/wood/species/find-species.ts';

test.each([
  ['red oke', /red oak/i],
  ['wallnut', /walnut/i],
  ['black chery', /black cherry/i],
  ['hickery', /hickory/i],
  ['doglas fir', /douglas-fir/i],
  ['basswod', /basswood/i],
])('"%s" is nearly a name', (typed, name) => {
  expect(findSpecies(typed, builtInSpecies)).toEqual([]);
  const near = nearestSpecies(typed, builtInSpecies);
  expect([near?.name, ...(near?.aliases ?? [])].join()).toMatch(name);
});

test.each(['', 'x', 'oke', 'zebrawood', 'my own wood', 'qwertyuiop', '123456'])(
  '"%s" is near none',
  (typed) => {
    expect(nearestSpecies(typed, builtInSpecies)).toBeNull();
  },
);
