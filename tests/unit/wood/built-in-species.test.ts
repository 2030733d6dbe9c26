import { describe, expect, test } from 'vitest';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { findSpecies, speciesMeant } from '../../../shared-core/wood/species/find-species.ts';

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

  test('say in their source where each figure comes from, and where they have no curve', () => {
    for (const species of builtInSpecies) {
      const { name, source, changeCoefficient, basicSpecificGravity, radialPct } = species;
      expect(source.includes('No resistance curve'), name).toBe(species.curveId === null);
      if (changeCoefficient || radialPct !== null) expect(source, name).toMatch(/Change coefficients: /);
      if (basicSpecificGravity !== null) expect(source, name).toMatch(/Specific gravity( and shrinkage)?: /);
      if (radialPct !== null) expect(source, name).toMatch(/Shrinkage: |Specific gravity and shrinkage: /);
    }
  });

  // The table was seen; `reference/wood-handbook-shrinkage.test.ts` has its rows.
  test('take change coefficients from the handbook, or from shrinkage, or say whose they are', () => {
    for (const { changeCoefficient, source, name } of builtInSpecies) {
      if (changeCoefficient === null) expect(source, name).not.toMatch(/Table 13-5\./);
      else expect(source, name).toMatch(/Table 13-5|holzhandel\.de|Bauwerk/);
    }
  });

  // Where a figure is from is for the page of sources; a note is for whoever has the board in hand.
  test('have notes without sources', () => {
    for (const { note, name } of [...builtInSpecies, ...builtInEndUses]) {
      expect(note, name).not.toMatch(/from memory|Handbook|James|EN 942|no source/);
    }
  });
});

// What the trade sells under one name has the means of the species that it is: arithmetic.
describe('a group of species', () => {
  const groups = builtInSpecies.filter(({ name }) => name.endsWith('(any)'));

  test('is there for what is sold without the species: red and white oak, ash, maples, hickory, southern pine …', () => {
    expect(groups.map(({ name }) => name).sort()).toEqual([
      'Ash (any)',
      'Aspen (any)',
      'Birch (any)',
      'Douglas-fir (any)',
      'Elm (any)',
      'Hard maple (any)',
      'Hickory (any)',
      'Red oak (any)',
      'Redwood (any)',
      'Soft maple (any)',
      'Southern pine (any)',
      'Spruce (any)',
      'White oak (any)',
    ]);
  });

  test.each(groups.map((group) => [group.name, group] as const))(
    '%s has the means of the species that its source names',
    (_, group) => {
      const named = /means of ([^.]*)\./.exec(group.source)?.[1]?.split(', ') ?? [];
      const members = named.map((name) => builtInSpecies.find((species) => species.name === name));
      expect(members.length).toBeGreaterThan(1);
      const figures = ['radialPct', 'tangentialPct', 'volumetricPct', 'basicSpecificGravity'] as const;
      for (const figure of figures) {
        const sum = members.reduce((total, member) => total + (member?.[figure] ?? Number.NaN), 0);
        const halfOfLastPlace = figure === 'basicSpecificGravity' ? 0.0051 : 0.051;
        expect(
          Math.abs((group[figure] ?? Number.NaN) - sum / members.length),
          `${group.name} ${figure}`,
        ).toBeLessThan(halfOfLastPlace);
      }
    },
  );

  // The handbook's pooled coefficients, and the formula that made them (3000 / S - 20), with the means of the group.
  test.each([
    ['oak-red-commercial', 0.00158, 0.00369],
    ['oak-white-commercial', 0.0018, 0.00365],
  ])('%s shrinks as Table 13-5 has it', (id, radial, tangential) => {
    const group = builtInSpecies.find((species) => species.id === id)!;
    expect(1 / (3000 / group.radialPct! - 20) / radial).toBeCloseTo(1, 1);
    expect(1 / (3000 / group.tangentialPct! - 20) / tangential).toBeCloseTo(1, 1);
  });
});

describe('what a text can only mean', () => {
  const meant = (text: string): string[] =>
    speciesMeant(text, findSpecies(text, builtInSpecies)).map(({ name }) => name);

  test.each([
    ['red oak', 'Red oak (any)'],
    ['commercial red oak', 'Red oak (any)'],
    ['white oak', 'White oak'],
    ['ash', 'Ash (any)'],
    ['hard maple', 'Hard maple (any)'],
    ['rock maple', 'Hard maple (any)'],
    ['soft maple', 'Soft maple (any)'],
    ['hickory', 'Hickory (any)'],
    ['SYP', 'Southern pine (any)'],
    ['doug fir', 'Douglas-fir (any)'],
    ['walnut', 'Black walnut'],
    ['cherry', 'Black cherry'],
    ['beech', 'American beech'],
    // European names, with and without their accents.
    ['Eiche', 'European oak'],
    ['chêne', 'European oak'],
    ['chene', 'European oak'],
    ['roble', 'European oak'],
    ['hêtre', 'European beech'],
    ['haya', 'European beech'],
    ['Fichte', 'Norway spruce'],
    ['epicea', 'Norway spruce'],
    ['Lärche', 'European larch'],
    ['larche', 'European larch'],
    ['Weißtanne', 'European silver fir'],
    ['weisstanne', 'European silver fir'],
    ['noyer', 'European walnut'],
    ['robinier', 'Black locust'],
  ])('"%s" is %s', (text, name) => {
    expect(meant(text)).toEqual([name]);
  });

  test('red or white oak is a question, and so is hard or soft maple', () => {
    expect(meant('oak')).toEqual(['Red oak (any)', 'White oak (any)']);
    expect(meant('maple')).toEqual(['Hard maple (any)', 'Soft maple (any)']);
    expect(meant('pine').length).toBeGreaterThan(1);
  });
});

describe('woods of Europe', () => {
  const europeans = builtInSpecies.filter(({ group, id }) => group === 'European woods' || id === 'pear');

  test('are at least 20, with names in German, French and Spanish', () => {
    expect(europeans.length).toBeGreaterThanOrEqual(20);
    for (const { aliases, name } of europeans) expect(aliases.length, name).toBeGreaterThanOrEqual(3);
  });

  test('have a density, so that their weight and drying can be estimated', () => {
    for (const { basicSpecificGravity, name } of europeans) expect(basicSpecificGravity, name).not.toBeNull();
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
    ['syp', 'Southern pine (any)'],
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
    ['oak', ['Red oak (any)', 'White oak (any)', 'Northern red oak', 'White oak']],
    ['maple', ['Hard maple (any)', 'Soft maple (any)', 'Sugar maple', 'Red maple']],
    ['wal', ['Black walnut']],
    ['white oak', ['White oak', 'White oak (any)']],
    ['red maple', ['Red maple']],
    ['pine', ['Eastern white pine', 'Southern pine (any)', 'Loblolly pine']],
    ['ash', ['Ash (any)', 'White ash']],
    ['cher', ['Black cherry', 'Cherrybark oak', 'European cherry']],
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
