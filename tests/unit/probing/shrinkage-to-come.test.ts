/** How far a board that is ready will still shrink across its width. */
import { expect, test } from 'vitest';
import { shrinkageToCome } from '../../../shared-core/probing/calls/shrinkage-to-come.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { message } from '../../../shared-core/words/message.ts';
import { interior, plainSpecies } from './a-board.ts';

// Of a use of 6 to 10 % the middle, 8 %; of firewood, of which any drier will do, the upper limit. Common practice, no source.
test('what wood for a use is dried to', () => {
  expect(targetOfUsePct(interior)).toBe(8);
  expect(targetOfUsePct({ minPct: 0, maxPct: 20 })).toBe(20);
});

// Wood Handbook, Table 4-3: red oak, 4.0 % radial and 8.6 % tangential from green to oven-dry, so by 30 points of MC. At
// 9.8 % it has shrunk 20.2 points of these already (chapter 13's formula).
const species: Species = { ...plainSpecies, radialPct: 4, tangentialPct: 8.6 };
const shrinksMm = (widthMm: number, pct: number) => (widthMm * 1.8 * pct) / (3000 - 20.2 * pct);
const come = (
  averagePct: number,
  board: { widthMm?: number; sawing?: 'flat' | 'quarter' } = {},
  of = species,
) =>
  shrinkageToCome(averagePct, {
    board: { thicknessMm: 27, lengthMm: 3000, ...board },
    species: of,
    endUse: interior,
  });

test('from 9.8 to 8.0% a flat-sawn board of 200 mm shrinks a millimeter: 1.8 points of 30, 8.6% by them', () => {
  const made = come(9.8, { widthMm: 200, sawing: 'flat' });
  expect(made!.code).toBe('call.will-shrink');
  expect(made!.facts!.shrinkMm).toBeCloseTo(shrinksMm(200, 8.6), 2);
  expect(come(9.8, { widthMm: 200 })).toEqual(made);
  expect(come(9.8, { widthMm: 400, sawing: 'quarter' })!.facts!.shrinkMm).toBeCloseTo(shrinksMm(400, 4), 2);
});

test('of a board of unknown width it is a share of it', () => {
  expect(come(9.8)).toEqual(
    message('call.will-shrink-share', { shrinkPct: expect.closeTo(shrinksMm(100, 8.6), 2), dryPct: 8 }),
  );
});

// Half a point, and half a sixteenth of an inch: common practice, no source.
test('nothing is said of what nobody sees', () => {
  expect(come(8.4, { widthMm: 2000 })).toBeNull();
  expect(come(8.5, { widthMm: 2000 })).not.toBeNull();
  expect(come(7, { widthMm: 2000 })).toBeNull();
  expect(come(9.8, { widthMm: 100, sawing: 'quarter' })).toBeNull();
});

test('nothing is said of a species of which no shrinkage is known', () => {
  expect(come(9.8, { widthMm: 200 }, plainSpecies)).toBeNull();
  expect(come(9.8, {}, plainSpecies)).toBeNull();
});
