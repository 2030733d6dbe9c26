import { describe, expect, test } from 'vitest';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { findSpecies } from '../../../shared-core/wood/species/find-species.ts';

describe('the species that come with the app', () => {
  test('are at least 70, each id and each name once', () => {
    expect(builtInSpecies.length).toBeGreaterThanOrEqual(70);
    expect(new Set(builtInSpecies.map(({ id }) => id)).size).toBe(builtInSpecies.length);
    expect(new Set(builtInSpecies.map(({ name }) => name)).size).toBe(builtInSpecies.length);
  });

  test('use every published curve, and only curves that exist', () => {
    const used = builtInSpecies.flatMap(({ curveId }) => (curveId === null ? [] : [curveId]));
    expect([...new Set(used)].sort()).toEqual([...resistanceCurves.keys()].sort());
  });

  test('shrink more along the rings than across, and about the sum of both in volume', () => {
    for (const species of builtInSpecies) {
      if (species.radialPct === null || species.tangentialPct === null || species.volumetricPct === null)
        continue;
      expect(species.tangentialPct, species.name).toBeGreaterThan(species.radialPct);
      // Persimmon, holly and the southern oaks are known for a volume that exceeds the sum (collapse, end shrinkage).
      const sum = species.radialPct + species.tangentialPct;
      expect(Math.abs(species.volumetricPct - sum), species.name).toBeLessThan(6);
    }
  });

  test('say in their source where they have no curve', () => {
    for (const species of builtInSpecies) {
      expect(species.source.includes('No resistance curve'), species.name).toBe(species.curveId === null);
      expect(species.source, species.name).toMatch(/Wood Handbook/);
    }
  });

  // Where a figure is from is for the page of sources; a note is for whoever has the board in hand.
  test('have notes without sources', () => {
    for (const { note, name } of [...builtInSpecies, ...builtInEndUses]) {
      expect(note, name).not.toMatch(/from memory|Handbook|James|EN 942|no source/);
    }
  });
});

describe('finding a species by what a sawyer types', () => {
  test.each([
    ['linden', 'American basswood'],
    ['hard maple', 'Sugar maple'],
    ['doug fir', 'Coast Douglas-fir'],
    ['DOUGLAS FIR', 'Coast Douglas-fir'],
    ['tulip poplar', 'Yellow-poplar'],
    ['cypress', 'Baldcypress'],
    ['syp', 'Loblolly pine'],
    ['birds eye maple', 'Sugar maple'],
    ['Quercus alba', 'White oak'],
    ['gum', 'Black tupelo'],
    ['buttonwood', 'American sycamore'],
    ['wlnut', null],
  ])('"%s" finds %s', (query, name) => {
    const found = findSpecies(query, builtInSpecies).map((species) => species.name);
    if (name === null) expect(found).toEqual([]);
    else expect(found.slice(0, 3)).toContain(name);
  });

  test('"cherry" is black cherry before the oaks and birches that are called after it', () => {
    expect(findSpecies('cherry', builtInSpecies)[0]!.id).toBe('cherry-black');
  });

  test('"red oak" finds what is named so before what is only sold so', () => {
    const found = findSpecies('red oak', builtInSpecies).map(({ id }) => id);
    expect(found.slice(0, 3)).toEqual(['oak-red-commercial', 'oak-northern-red', 'oak-southern-red']);
    expect(found).toContain('oak-pin');
  });

  // What is sawn most comes first: common practice, no source.
  test.each([
    ['oak', ['Red oak, commercial', 'White oak, commercial', 'Northern red oak', 'White oak']],
    ['maple', ['Sugar maple', 'Red maple']],
    ['wal', ['Black walnut']],
    ['white oak', ['White oak', 'White oak, commercial']],
    ['red maple', ['Red maple']],
    ['pine', ['Eastern white pine', 'Loblolly pine']],
    ['ash', ['White ash']],
    ['cher', ['Black cherry', 'Cherrybark oak']],
  ])('"%s" finds %s first', (query, names) => {
    const found = findSpecies(query, builtInSpecies).map(({ name }) => name);
    expect(found.slice(0, names.length)).toEqual(names);
  });

  test.each(['zzzz', 'wlnut', '???'])('"%s" finds none', (query) => {
    expect(findSpecies(query, builtInSpecies)).toEqual([]);
  });

  test('nothing typed finds all', () => {
    expect(findSpecies('  ', builtInSpecies)).toHaveLength(builtInSpecies.length);
  });
});

describe('the uses that come with the app', () => {
  test('have a range that is one, and a source', () => {
    for (const endUse of builtInEndUses) {
      expect(endUse.maxPct, endUse.name).toBeGreaterThan(endUse.minPct);
      expect(endUse.source, endUse.name).toMatch(
        /Wood Handbook|EN 942|Common practice, no source|Surfaced-dry/,
      );
    }
  });

  // Wood Handbook, Table 13-2 (from memory): individual pieces.
  test.each([
    ['interior-most-us', 6, 10],
    ['interior-dry-southwest', 4, 9],
    ['interior-damp-coast', 8, 13],
    ['exterior-most-us', 9, 14],
    ['exterior-dry-southwest', 7, 12],
    ['exterior-damp-coast', 9, 14],
  ])('%s is %f to %f %%', (id, minPct, maxPct) => {
    expect(builtInEndUses.find((endUse) => endUse.id === id)).toMatchObject({ minPct, maxPct });
  });
});
