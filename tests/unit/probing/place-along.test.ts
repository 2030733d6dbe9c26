import { expect, test } from 'vitest';
import { placeAlong } from '../../../shared-core/probing/readings/place-along.ts';
import { PAIRS } from '../../../shared-core/probing/readings/plan-basis.ts';
import { extraSpots, planSpots } from '../../../shared-core/probing/readings/spots.ts';

const places = (lengthMm: number | null, core: 'fresh-cut' | 'fresh-rip' | null = null) => {
  const planBasis = core === null ? PAIRS : { ...PAIRS, faces: 'shell' as const, core };
  return planSpots({ lengthMm, thicknessMm: 50, planBasis }).plan.map((spot) => placeAlong(spot, lengthMm));
};

test('a board of known length is read a third of it from either end', () => {
  expect(places(1800).map((share) => share?.toFixed(2))).toEqual(['0.33', '0.33', '0.67', '0.67']);
});

test('a short board is read in its middle', () => {
  expect(places(500)).toEqual([0.5, 0.5]);
});

test('places of a board of unknown length are parts of it', () => {
  expect(places(null)).toEqual([0.33, 0.33, 0.67, 0.67]);
});

test('a fresh crosscut is where the saw stands, a rip where its sentence says', () => {
  expect(places(2000, 'fresh-cut').slice(-2)).toEqual([0.25, 0.25]);
  expect(places(1800, 'fresh-rip').at(-1)?.toFixed(2)).toBe('0.67');
});

test('a spot elsewhere on the board has no place', () => {
  const board = { lengthMm: 1800, thicknessMm: 50, planBasis: PAIRS };
  for (const [, spot] of extraSpots(board)) expect(placeAlong(spot, 1800)).toBeNull();
});

test('of four places of a board of unknown length the inner ones are parts of it as well', () => {
  const planBasis = { faces: 'average', core: null, pins: null } as const;
  const { plan } = planSpots({ lengthMm: null, thicknessMm: 25, planBasis, places: 4 });
  expect(plan.map((spot) => placeAlong(spot, null))).toEqual([0.2, 0.4, 0.6, 0.8]);
});

test('a place at a distance is no part of a board whose length is not known, but for the half where the saw stands', () => {
  const [left, , right] = planSpots({ lengthMm: 1800, thicknessMm: 50, planBasis: PAIRS }).plan;
  expect([left!, right!].map((spot) => placeAlong(spot, null))).toEqual([null, null]);
  expect(places(null, 'fresh-cut').slice(-2)).toEqual([0.25, 0.25]);
  const unknown = { ...left!, spot: { ...left!.spot, fromEndMm: null } };
  expect(placeAlong(unknown, 1800)).toBeNull();
});
