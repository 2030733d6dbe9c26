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
