/** What comes with the program, in German. Trade names: DIN EN 13556 (from memory). */
import { expect, test } from 'vitest';
import { resistanceCurves } from '../../../shared-core/wood/moisture/resistance-curves.ts';
import { builtInEndUses, builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { findSpecies, speciesMeant } from '../../../shared-core/wood/species/find-species.ts';
import { builtInNotes } from '../../../shared-core/words/de/built-in-notes.ts';
import { names } from '../../../shared-core/words/de/names.ts';
import { type Catalog, english } from '../../../shared-core/words/en/index.ts';
import { createWords } from '../../../shared-core/words/words.ts';

const display = { locale: 'de-DE', timeZone: 'Europe/Berlin', units: 'metric', today: null } as const;
const { formats, say } = createWords({ catalog: { ...english, ...names } as Catalog, ...display });
const findGerman = (query: string) => findSpecies(query, builtInSpecies, formats.named);

test('every note and curve that comes with the program is in German, and nothing else', () => {
  const curves = [...resistanceCurves.values()].map(({ name }) => name);
  const notes = [...builtInSpecies, ...builtInEndUses].map(({ note }) => note);
  const all = [...curves, ...notes].filter((each) => each !== '' && !(`name:${each}` in names));
  expect(Object.keys(builtInNotes).sort()).toEqual([...new Set(all)].map((each) => `name:${each}`).sort());
});

test('every species, group and use has a German name, and nothing else', () => {
  const all = [
    ...builtInSpecies.flatMap(({ name, group }) => [name, group]),
    ...builtInEndUses.map(({ name }) => name),
  ];
  expect(Object.keys(names).sort()).toEqual([...new Set(all)].map((name) => `name:${name}`).sort());
});

test('no two species are called the same', () => {
  const called = builtInSpecies.map(({ name }) => formats.named(name));
  expect(called.filter((name, index) => called.indexOf(name) !== index)).toEqual([]);
});

test.each(builtInSpecies)('$name is found by its German, English and botanical name', (species) => {
  const shown = formats.named(species.name);
  expect(findGerman(shown)[0]).toBe(species);
  expect(speciesMeant(shown, findGerman(shown), formats.named)).toEqual([species]);
  for (const name of [
    shown.replace(/, (allgemein|Norden|Westen)$/, ''),
    species.name.replace(' (any)', ''),
    species.botanicalName!.replace(/ spp\..*|,.*/, ''),
  ])
    expect(findGerman(name).slice(0, 12)).toContain(species);
});

// DIN EN 13556, European timbers (from memory); what a sawyer calls them (common practice, no source).
test.each([
  ['Eiche', 'oak-european'],
  ['Rotbuche', 'beech-european'],
  ['Buche', 'beech-european'],
  ['Esche', 'ash-european'],
  ['Fichte', 'spruce-norway'],
  ['Tanne', 'fir-silver'],
  ['Kiefer', 'pine-scots'],
  ['Föhre', 'pine-scots'],
  ['Lärche', 'larch-european'],
  ['Douglasie', 'douglas-fir-any'],
  ['Bergahorn', 'maple-sycamore'],
  ['Birke', 'birch-silver'],
  ['Kirschbaum', 'cherry-european'],
  ['Nussbaum', 'walnut-european'],
  ['Robinie', 'locust-black'],
  ['Linde', 'lime-european'],
  ['Erle', 'alder-common'],
  ['Pappel', 'poplar-european'],
  ['Edelkastanie', 'chestnut-sweet'],
  ['Ulme', 'elm-european'],
  ['Rüster', 'elm-european'],
  ['Aspe', 'aspen-european'],
  ['Hainbuche', 'hornbeam-european'],
  ['Elsbeere', 'service-tree-wild'],
  ['Eibe', 'yew-european'],
  ['Zirbe', 'pine-swiss'],
  ['Amerikanische Roteiche', 'oak-northern-red'],
  ['Amerikanischer Nussbaum', 'walnut-black'],
])('%s is found first', (typed, id) => {
  expect(findGerman(typed)[0]!.id).toBe(id);
});

test('a fact that names a species or a use is shown in German, and a name of the person’s own as it is', () => {
  expect(say('species.edit', { speciesName: 'Scots pine' })).toBe('Edit Kiefer');
  expect(say('species.edit', { speciesName: 'Scheffel’s pine' })).toBe('Edit Scheffel’s pine');
  expect(say('use.edit', { useName: 'Firewood' })).toBe('Edit Brennholz');
  expect(
    say('suspicion.species-unlike-stack.do', { ownSpecies: 'European oak', otherSpecies: 'European ash' }),
  ).toMatch(/is Esche.*is Eiche/);
});
