import { describe, expect, test } from 'vitest';
import { emptyBoardDraft } from '../../../../renderer/screens/board/board-draft.ts';
import { codesFrom, manyBoards } from '../../../../renderer/screens/stacks/many-boards.ts';

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

test('only a board added alone has its place in the stack, since two cannot lie in one', () => {
  const draft = { ...emptyBoardDraft, woodId: 'oak-white', thickness: '27', course: 2, column: 3 };
  expect(manyBoards(draft, ['A1'], 1, 'metric').map(({ course, column }) => [course, column])).toEqual([
    [2, 3],
  ]);
  expect(manyBoards(draft, ['A1', 'A2'], 1, 'metric').map(({ course }) => course)).toEqual([null, null]);
});
