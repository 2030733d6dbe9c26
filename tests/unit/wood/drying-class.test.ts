import { describe, expect, test } from 'vitest';
import { type DryingBoard, dryingPrior } from '../../../shared-core/wood/drying/history-fit.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { type DryingClass, dryingClassOf } from '../../../shared-core/wood/species/drying-class.ts';
import { stationYear } from '../../bench/typical-years.ts';
import { daysUntil } from '../../reference/published-drying-days.ts';

describe('the drying class of a species', () => {
  test('is known of every built-in one', () => {
    expect(builtInSpecies.filter((species) => dryingClassOf(species) === null)).toEqual([]);
  });

  // Lowland and upland oaks: P. J. Bois, Recognizing the Four Stages of Drying in Thick Oak, as read. The rest: common
  // practice, no source.
  test.each<[string, DryingClass]>([
    ['Quercus alba', 'upland-oak'],
    ['Quercus falcata', 'lowland-oak'],
    ['Quercus spp., red oak group', 'upland-oak'],
    ['Pinus ponderosa', 'pine'],
    ['Taxodium distichum', 'baldcypress'],
    ['ACER saccharum', 'maple'],
  ])('%s is %s', (botanicalName, dryingClass) => {
    expect(dryingClassOf({ botanicalName })).toBe(dryingClass);
  });

  test.each([null, '', 'Dalbergia nigra'])('of a botanical name %o is not known', (botanicalName) => {
    expect(dryingClassOf({ botanicalName })).toBeNull();
  });
});

describe('a board', () => {
  const atMs = Date.UTC(2024, 3, 1);
  const boardOf = (dryingClass: DryingClass | null): DryingBoard => ({
    thicknessMm: 28,
    basicSpecificGravity: 0.52,
    dryingClass,
    start: { atMs, mcPct: 80, logSd: 0.15, shellRatio: 1 },
    stays: [{ fromMs: atMs, air: stationYear('722230').air }],
  });

  // Southern red oak 100 to 300 days, northern red oak 70 to 200 (published air-drying periods, from memory).
  test('of lowland oak takes at least half as long again as one of upland oak', () => {
    const days = (dryingClass: DryingClass): number => daysUntil(boardOf(dryingClass), 20);
    expect(days('lowland-oak')).toBeGreaterThan(1.5 * days('upland-oak'));
  });

  test('of no known class is less certain than one of a class', () => {
    const sdOf = (dryingClass: DryingClass | null): number =>
      dryingPrior(boardOf(dryingClass)).covariance[0]![0]!;
    expect(sdOf(null)).toBeGreaterThan(1.5 * sdOf('maple'));
  });
});
