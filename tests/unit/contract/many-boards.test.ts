import { describe, expect, test } from 'vitest';
import { firstStackSchema } from '../../../shared-core/contract/first-stack.ts';
import { codesFrom, manyBoards } from '../../../shared-core/contract/many-boards.ts';
import { type StackOrder, stackOrderAnswerSchema } from '../../../shared-core/contract/stack-order.ts';
import { problemOfField } from '../../../shared-core/contract/validation.ts';
import { wordsIn } from '../labels/a-label.ts';
import { aBoardRow } from '../renderer/stacks/a-yard.ts';

describe('IDs of boards added together', () => {
  test.each([
    ['OAK-09', 3, ['OAK-09', 'OAK-10', 'OAK-11']],
    ['OAK-099', 2, ['OAK-099', 'OAK-100']],
    ['9', 2, ['9', '10']],
    ['OAK', 3, ['OAK', 'OAK-02', 'OAK-03']],
    ['W2-B', 2, ['W2-B', 'W2-B-02']],
  ])('%s and on, %i in all', (first, count, codes) => {
    expect(codesFrom(first, count)).toEqual(codes);
  });

  test.each([null, 0, -1, 1.5, 501, Number.NaN])('%s boards cannot be added', (count) => {
    expect(firstStackSchema.shape.boards.safeParse(count).success).toBe(false);
  });
});

describe('where boards added together lie', () => {
  const board = { ...aBoardRow(1), layer: 2, column: 3 };
  const placesOf = (codes: string[], stackOrder: StackOrder | null) =>
    manyBoards(board, codes, stackOrder).map(({ layer, column }) => [layer, column]);

  test('one alone lies where its draft has it; several as they are laid, or nowhere yet', () => {
    expect(placesOf(['A1'], null)).toEqual([[2, 3]]);
    expect(placesOf(['A1', 'A2'], null)).toEqual([
      [null, null],
      [null, null],
    ]);
    expect(placesOf(['A1', 'A2', 'A3', 'A4'], { perLayer: 2, firstLayer: 4, firstColumn: 2 })).toEqual([
      [4, 2],
      [5, 1],
      [5, 2],
      [6, 1],
    ]);
  });

  test('no two boards of a stack share a layer and column', () => {
    const codes = Array.from({ length: 40 }, (_, index) => `B${index}`);
    const places = placesOf(codes, { perLayer: 7, firstLayer: 1, firstColumn: 3 });
    expect(new Set(places.map(String)).size).toBe(40);
    expect(Math.max(...places.map(([, column]) => column!))).toBe(7);
  });
});

describe('the layers as answered', () => {
  const nothing = { perLayer: null, firstLayer: null, firstColumn: null };

  test('left blank there are none; they begin above what is there unless typed otherwise', () => {
    expect(stackOrderAnswerSchema(9, 4, true).parse(nothing)).toBeNull();
    expect(stackOrderAnswerSchema(9, 4, true).parse({ ...nothing, perLayer: 3 })).toEqual({
      perLayer: 3,
      firstLayer: 4,
      firstColumn: 1,
    });
  });

  test.each([
    [{ firstLayer: 2 }, 'perLayer', 'Give the boards per layer, or leave all three blank.'],
    [{ perLayer: 2.5 }, 'perLayer', 'Type a whole number.'],
    [{ perLayer: 101 }, 'perLayer', 'At most 100.'],
    [{ perLayer: 3, firstLayer: 501 }, 'firstLayer', 'At most 500.'],
    [{ perLayer: 3, firstColumn: 4 }, 'perLayer', 'Column 4 is beyond the 3 boards of a layer.'],
    [{ perLayer: 1, firstLayer: 490 }, 'perLayer', /^That makes 509 layers/],
  ])('%o is refused with the reason', (answer, field, sentence) => {
    const found = stackOrderAnswerSchema(20, 1, true).safeParse({ ...nothing, ...answer }).error?.issues[0];
    expect(found?.path).toEqual([field]);
    expect(wordsIn('metric').say(problemOfField(field, found!))).toMatch(sentence);
  });

  test('several that are there already are laid one way or another', () => {
    const found = stackOrderAnswerSchema(9, 1, false).safeParse(nothing).error?.issues[0];
    expect(found).toMatchObject({ path: ['perLayer'], message: 'validation.missing' });
  });
});
