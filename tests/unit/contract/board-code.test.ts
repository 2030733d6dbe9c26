import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstCode, followingCode } from '../../../shared-core/contract/board-code.ts';
import { boardCodeSchema } from '../../../shared-core/contract/yard.ts';

describe('The IDs of a stack begin with', () => {
  test.each([
    ['Walnut behind the barn', 'WALNUT'],
    ['Ærø-Eiche', 'AEROE'],
    ['Größte Esche', 'GROSSTE'],
    ['Łąka', 'LAKA'],
    ['Дуб у сарая', 'DUB'],
    ['Щербинка', 'SHCHERBI'],
    ['Βελανιδιά', 'VELANIDI'],
    ['8/4 walnut', 'WALNUT'],
    ['A frame', 'FRAME'],
    ['é', 'B'],
    ['樫の木', 'B'],
    ['סנדיאן', 'B'],
    ['🌳', 'B'],
    ['', 'B'],
  ])('"%s": %s', (name, stem) => expect(firstCode(name)).toBe(`${stem}-01`));

  test('the species where the name of the stack gives no letters', () => {
    expect(firstCode('樫', 'White oak')).toBe('WHITE-01');
  });

  test('letters that an ID may have, whatever the names', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme' }), (stack, species) => {
        const code = firstCode(stack, species);
        expect(boardCodeSchema.parse(code)).toBe(code);
        expect(boardCodeSchema.parse(followingCode(code))).toMatch(/-02$/);
      }),
    );
  });
});
