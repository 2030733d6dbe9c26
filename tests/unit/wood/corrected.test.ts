import { expect, test } from 'vitest';
import { meterBasisSchema, meterScaleSchema } from '../../../shared-core/wood/moisture/corrected.ts';

const species = { kind: 'species', speciesId: 'red-oak', curveId: 'red-oak', tempC: 20 } as const;
const isScale = (changes: object) => meterScaleSchema.safeParse({ ...species, ...changes }).success;

test('a scale is the % of a species or of its curve, the usual one, ohms, or not known', () => {
  for (const scale of [
    species,
    { ...species, speciesId: null },
    { ...species, curveId: null },
    { kind: 'usual' },
    { kind: 'ohms' },
    { kind: 'unknown' },
  ])
    expect(meterScaleSchema.parse(scale)).toEqual(scale);
  expect(isScale({ kind: 'volts' })).toBe(false);
});

// Colder or hotter than that no meter's scale is made for: common practice, no source.
test('a scale is made for a temperature between −20 and 60 °C', () => {
  expect([-21, -20, 0, 60, 61].map((tempC) => isScale({ tempC }))).toEqual([false, true, true, true, false]);
  const isBasis = (tempC: number) => meterBasisSchema.safeParse({ curveId: 'red-oak', tempC }).success;
  expect([-21, -20, 0, 60, 61].map(isBasis)).toEqual([false, true, true, true, false]);
});

test('a name of a species or a curve has at most 60 characters', () => {
  const [longest, longer] = ['a'.repeat(60), 'a'.repeat(61)];
  expect([{ speciesId: longest }, { curveId: longest }].map(isScale)).toEqual([true, true]);
  expect([{ speciesId: longer }, { curveId: longer }].map(isScale)).toEqual([false, false]);
  const isBasis = (curveId: string) => meterBasisSchema.safeParse({ curveId, tempC: 20 }).success;
  expect([longest, longer].map(isBasis)).toEqual([true, false]);
  expect(meterBasisSchema.parse({ curveId: longest, tempC: 20 })).toEqual({ curveId: longest, tempC: 20 });
});
