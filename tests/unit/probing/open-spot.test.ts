import { expect, test } from 'vitest';
import { openSpot } from '../../../shared-core/probing/readings/open-spot.ts';
import { PAIRS, type PlanBasis } from '../../../shared-core/probing/readings/plan-basis.ts';
import type { Depth, Spot } from '../../../shared-core/probing/readings/reading.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';

const planOf = (planBasis: PlanBasis) => planSpots({ thicknessMm: 52, lengthMm: 3000, planBasis }).plan;
const pairs = planOf(PAIRS);
const spotOf = (depth: Depth, face: Spot['face'] = 'face'): Spot => ({
  depth,
  face,
  depthMm: null,
  fromEndMm: null,
});
/** A reading as the plan of pairs has its spot. */
const at = (spotIndex: number, counts = true) => ({ spotIndex, counts, spot: pairs[spotIndex]!.spot });

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
  const two = pairs.slice(0, 2);
  expect(openSpot(two, [at(0), at(1)], 1)).toBeNull();
  expect(openSpot(two, [at(0), { spotIndex: null, counts: true, spot: spotOf('core') }])).toBe(1);
});

test('a reading taken by another plan fills no spot of this one', () => {
  const cut = planOf({ faces: 'shell', core: 'fresh-cut', pins: null });
  const shells = [0, 1].map((spotIndex) => ({ spotIndex, counts: true, spot: spotOf('shell') }));
  expect(openSpot(cut, [...shells, { spotIndex: 2, counts: true, spot: spotOf('core', 'fresh-rip') }])).toBe(
    2,
  );
  expect(openSpot(cut, [...shells, { spotIndex: 2, counts: true, spot: spotOf('core', 'fresh-cut') }])).toBe(
    3,
  );
});

test('a core that nobody reads is no open spot', () => {
  const shell = planOf({ faces: 'shell', core: null, pins: null });
  const shells = [0, 1].map((spotIndex) => ({ spotIndex, counts: true, spot: spotOf('shell') }));
  expect(openSpot(shell, shells)).toBeNull();
});
