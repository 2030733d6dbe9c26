// @vitest-environment jsdom
import { describe, expect, test } from 'vitest';
import { codesFrom, manyBoards } from '../../../../renderer/features/stacks/many-boards.ts';
import {
  emptyStackOrderDraft,
  layersOf,
  stackOrderOf,
} from '../../../../renderer/features/stacks/stack-order-draft.ts';
import type { StackOrder } from '../../../../shared-core/contract/stack-order.ts';
import { aBoardRow } from './a-yard.ts';

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
    expect(codesFrom('OAK-01', count)).toBeNull();
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

describe('the layers as typed', () => {
  test('left blank there are none; they begin above what is there unless typed otherwise', () => {
    expect(stackOrderOf(emptyStackOrderDraft, 9, 4)).toEqual({ stackOrder: null });
    expect(stackOrderOf({ ...emptyStackOrderDraft, perLayer: 3 }, 9, 4)).toEqual({
      stackOrder: { perLayer: 3, firstLayer: 4, firstColumn: 1 },
    });
    expect(layersOf({ perLayer: 3, firstLayer: 4, firstColumn: 1 }, 9)).toEqual({
      code: 'stacks.in-layers',
      facts: { firstLayer: 4, topLayer: 6 },
    });
  });

  test.each([
    [{ perLayer: null, firstLayer: 2, firstColumn: null }, 'validation.per-layer-missing'],
    [{ perLayer: 2.5, firstLayer: null, firstColumn: null }, 'validation.stack-order'],
    [{ perLayer: Number.NaN, firstLayer: null, firstColumn: null }, 'validation.stack-order'],
    [{ perLayer: 3, firstLayer: null, firstColumn: 4 }, 'validation.first-column-too-high'],
    [{ perLayer: 1, firstLayer: 490, firstColumn: null }, 'validation.too-many-layers'],
  ])('%o is refused with the reason', (draft, code) => {
    expect(stackOrderOf(draft, 20, 1)).toEqual({ problem: expect.objectContaining({ code }) });
  });
});
