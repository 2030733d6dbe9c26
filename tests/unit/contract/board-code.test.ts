import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { firstCode, followingCode, likeCodes } from '../../../shared-core/contract/board-code.ts';
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

test('an ID may be written with or without its hyphen, and with zeros before its number', () => {
  expect(likeCodes('A-07').slice(0, 6)).toEqual(['A-7', 'A7', 'A-07', 'A07', 'A-007', 'A007']);
  expect(likeCodes('A07')).toEqual(likeCodes('A-7'));
  expect(likeCodes('120')).toEqual(['120', '0120', '00120']);
  expect(likeCodes('END-A')).toEqual(['ENDA']);
});
