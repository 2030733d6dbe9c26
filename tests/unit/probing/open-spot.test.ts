import { expect, test } from 'vitest';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import { PAIRS, type PlanBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { Depth, Spot } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';

const boardOf = (planBasis: PlanBasis) => ({ thicknessMm: 52, lengthMm: 3000, planBasis });
const pairs = boardOf(PAIRS);
const { plan } = planSpots(pairs);
const spotOf = (depth: Depth, face: Spot['face'] = 'face'): Spot => ({
  depth,
  face,
  depthMm: null,
  fromEndMm: null,
});
/** A reading as the plan of pairs has its spot. */
const at = (spotIndex: number, counts = true) => ({
  spotIndex,
  counts,
  spot: plan[spotIndex]!.spot,
  depthFrom: 'pins' as const,
});
/** Taken by another plan, or nowhere in it. */
const from = (spotIndex: number | null, spot: Spot) => ({
  spotIndex,
  counts: true,
  spot,
  depthFrom: 'pins' as const,
});

test('a board not read yet is begun at its first spot', () => {
  expect(openSpot(pairs, [])).toBe(0);
});

test('the next spot is the first from there on that has none which counts', () => {
  expect(openSpot(pairs, [at(0), at(1, false), at(2)])).toBe(1);
  expect(openSpot(pairs, [at(0), at(1, false), at(2)], 2)).toBe(3);
});

test('after the last spot it goes round to one that was passed over', () => {
  expect(openSpot(pairs, [at(0), at(2), at(3)], 4)).toBe(1);
});

test('with every spot read there is none; a reading elsewhere on the board fills no spot', () => {
  const read = [at(0), at(1), at(2)];
  expect(openSpot(pairs, [...read, at(3)], 1)).toBeNull();
  expect(openSpot(pairs, [...read, from(null, spotOf('core'))])).toBe(3);
});

test('a reading taken by another plan fills no spot of this one', () => {
  const cut = boardOf({ faces: 'shell', core: 'fresh-cut', pins: null });
  const shells = [0, 1].map((spotIndex) => from(spotIndex, spotOf('shell')));
  expect(openSpot(cut, [...shells, from(2, spotOf('core', 'fresh-rip'))])).toBe(2);
  expect(openSpot(cut, [...shells, from(2, spotOf('core', 'fresh-cut'))])).toBe(3);
});

test('a core that nobody reads is no open spot', () => {
  const shell = boardOf({ faces: 'shell', core: null, pins: null });
  const shells = [0, 1].map((spotIndex) => from(spotIndex, spotOf('shell')));
  expect(openSpot(shell, shells)).toBeNull();
});

test('a spot whose reading was deeper than it asks for, by a person, is open again', () => {
  const readAt = (depthMm: number, depthFrom: 'person' | 'pins') => ({
    ...at(0),
    spot: { ...at(0).spot, depthMm },
    depthFrom,
  });
  expect(openSpot(pairs, [readAt(25, 'person')])).toBe(0);
  expect(openSpot(pairs, [readAt(8, 'person')])).toBe(1);
  // The length of the pins alone opens none: boards are planned for them.
  expect(openSpot(pairs, [readAt(25, 'pins')])).toBe(1);
});
