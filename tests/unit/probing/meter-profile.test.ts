/** What the values of a meter mean, and what its pins reach. */
import { expect, test } from 'vitest';
import {
  knownHere,
  type MeterProfile,
  meterProfileSchema,
  scaleOf,
  typedUnit,
  unknownProfile,
} from '../../../shared-core/probing/readings/meter-profile.ts';
import { pinsSchema } from '../../../shared-core/probing/readings/pins.ts';

const profile: MeterProfile = {
  scale: { kind: 'species', speciesId: 'walnut-black', curveId: 'walnut-black', tempC: 21 },
  compensatesTemp: true,
  pins: { lengthMm: 8, insulated: false },
  sdPct: 0.5,
};
const has =
  (...ids: string[]) =>
  (id: string) =>
    ids.includes(id);

test('a profile holds what it was given, or that nothing is known', () => {
  for (const each of [profile, unknownProfile]) expect(meterProfileSchema.parse(each)).toEqual(each);
  expect(unknownProfile).toEqual({
    scale: { kind: 'unknown' },
    compensatesTemp: null,
    pins: null,
    sdPct: null,
  });
});

test('no meter is surer than a laboratory’s or less sure than a toy, and no pins are longer than 20 cm', () => {
  const sdOf = (sdPct: number) => meterProfileSchema.safeParse({ ...profile, sdPct }).success;
  expect([0.1, 0.2, 4, 4.1].map(sdOf)).toEqual([false, true, true, false]);
  const pinsOf = (lengthMm: number) => pinsSchema.safeParse({ lengthMm, insulated: null }).success;
  expect([0, 1, 200, 201].map(pinsOf)).toEqual([false, true, true, false]);
  expect(pinsSchema.safeParse({}).success).toBe(false);
});

test('a species that the yard has stays; of any other, only its curve', () => {
  expect(knownHere(profile, has('walnut-black'))).toBe(profile);
  expect(knownHere(profile, has('oak')).scale).toEqual({ ...profile.scale, speciesId: null });
  const withoutCurve = { ...profile, scale: { ...profile.scale, curveId: null } as MeterProfile['scale'] };
  expect(knownHere(withoutCurve, has('oak'))).toEqual({ ...profile, scale: { kind: 'unknown' } });
});

test('a scale that names no species is known anywhere', () => {
  const curveAlone = { ...profile, scale: { ...profile.scale, speciesId: null } as MeterProfile['scale'] };
  expect(knownHere(curveAlone, has())).toBe(curveAlone);
  const usual: MeterProfile = { ...profile, scale: { kind: 'usual' } };
  expect(knownHere(usual, has())).toBe(usual);
});

test('values are typed in %, of a meter of ohms in ohms', () => {
  expect(typedUnit(profile)).toBe('pct');
  expect(typedUnit(null)).toBe('pct');
  expect(typedUnit({ ...profile, scale: { kind: 'ohms' } })).toBe('ohm');
});

test('values in ohms mean ohms, whatever the profile says; a % means what its scale does', () => {
  expect(scaleOf('ohm', profile)).toEqual({ kind: 'ohms' });
  expect(scaleOf('pct', profile)).toEqual(profile.scale);
  expect(scaleOf('pct', null)).toEqual({ kind: 'unknown' });
});
