import { describe, expect, test } from 'vitest';
import { builtInSpecies } from '../../../shared-core/wood/species/catalogue.ts';
import { deriveSpecies, newSpeciesId } from '../../../shared-core/wood/species/derive-species.ts';

const taken = new Set(builtInSpecies.map(({ id }) => id));
const shortleaf = builtInSpecies.find(({ id }) => id === 'pine-shortleaf')!;

describe('a wood derived from another', () => {
  const pitch = deriveSpecies(
    shortleaf,
    { name: 'Pitch pine', basicSpecificGravity: 0.47, volumetricPct: 10.9 },
    taken,
  );

  test('takes over what is not given', () => {
    expect(pitch).toMatchObject({ id: 'pitch-pine', name: 'Pitch pine', volumetricPct: 10.9 });
    expect(pitch.curveId).toBe(shortleaf.curveId);
    expect(pitch.tangentialPct).toBe(shortleaf.tangentialPct);
  });

  test('says from which wood, and keeps none of its names', () => {
    expect(pitch.note).toBe(
      "Derived from Shortleaf pine: what is not given otherwise is that wood's figure.",
    );
    expect(pitch.aliases).toEqual([]);
    expect(pitch.botanicalName).toBeNull();
  });

  test('keeps the note that a person wrote', () => {
    const own = deriveSpecies(shortleaf, { name: 'Yard pine', note: 'From the north slope.' }, taken);
    expect(own.note).toMatch(/^From the north slope\. Derived from Shortleaf pine/);
  });

  test('with a figure that no wood has is refused', () => {
    expect(() => deriveSpecies(shortleaf, { name: 'Lead pine', basicSpecificGravity: 11 }, taken)).toThrow();
    expect(() => deriveSpecies(shortleaf, { name: '  ' }, taken)).toThrow();
  });
});

describe('the id of a new wood', () => {
  test.each([
    ['Wych elm', 'wych-elm'],
    ['  Chêne  pédonculé ', 'chene-pedoncule'],
    ['樫', 'wood'],
    ['Pine-Shortleaf', 'pine-shortleaf-2'],
    ['x'.repeat(80), 'x'.repeat(50)],
  ])('"%s" is %s', (name, id) => {
    expect(newSpeciesId(name, taken)).toBe(id);
  });
  test('counts on while ids are taken', () => {
    expect(newSpeciesId('Elm', new Set(['elm', 'elm-2']))).toBe('elm-3');
  });
});
