import { describe, expect, test } from 'vitest';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';
import { deriveSpecies, newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';

const taken = new Set(builtInSpecies.map(({ id }) => id));
const shortleaf = builtInSpecies.find(({ id }) => id === 'pine-shortleaf')!;

describe('a species derived from another', () => {
  const pitch = deriveSpecies(
    shortleaf,
    { name: 'Pitch pine', source: 'Like shortleaf pine', basicSpecificGravity: 0.47, volumetricPct: 10.9 },
    taken,
  );

  test('has the other’s figures where none is given', () => {
    expect(pitch).toMatchObject({ id: 'pitch-pine', name: 'Pitch pine', volumetricPct: 10.9 });
    expect(pitch.curveId).toBe(shortleaf.curveId);
    expect(pitch.tangentialPct).toBe(shortleaf.tangentialPct);
  });

  test('has a source of its own, and none of the other’s names', () => {
    expect(pitch.source).toBe('Like shortleaf pine');
    expect(pitch.note).toBe('');
    expect(pitch.aliases).toEqual([]);
    expect(pitch.botanicalName).toBeNull();
  });

  test('has the note that a person wrote', () => {
    const changes = { name: 'Yard pine', source: '', note: 'From the north slope.' };
    expect(deriveSpecies(shortleaf, changes, taken).note).toBe('From the north slope.');
  });

  test('is refused with a figure that no species has', () => {
    const leaden = { name: 'Lead pine', source: '', basicSpecificGravity: 11 };
    expect(() => deriveSpecies(shortleaf, leaden, taken)).toThrow();
    expect(() => deriveSpecies(shortleaf, { name: '  ', source: '' }, taken)).toThrow();
  });
});

describe('the id of a new species', () => {
  test.each([
    ['Wych elm', 'wych-elm'],
    ['  Chêne  pédonculé ', 'chene-pedoncule'],
    ['樫', 'species'],
    ['Pine-Shortleaf', 'pine-shortleaf-2'],
    ['x'.repeat(80), 'x'.repeat(50)],
  ])('"%s" is %s', (name, id) => {
    expect(newSpeciesId(name, taken)).toBe(id);
  });
  test('counts on while ids are taken', () => {
    expect(newSpeciesId('Elm', new Set(['elm', 'elm-2']))).toBe('elm-3');
  });
});
