import { describe, expect, test } from 'vitest';
import { pastedSizes, sizedBoards, withSize } from '../../../../renderer/features/stacks/board-sizes.ts';

describe('boards typed as a grid', () => {
  test('have the sizes of their row in the units of the person, and IDs that go on from the one above', () => {
    const typed = [['', '8 1/2', '8'], [], ['12', '', '7 ft 6 in'], ['', '10', '']];
    const boards = sizedBoards(typed, 'OAK-01', 4, 'imperial');
    expect(boards.map(({ code }) => code)).toEqual(['OAK-01', 'OAK-02', '12', '13']);
    const rounded = (mm: number | null) => mm && Math.round(mm);
    expect(boards.map(({ widthMm }) => rounded(widthMm))).toEqual([216, null, null, 254]);
    expect(boards.map(({ lengthMm }) => rounded(lengthMm))).toEqual([2438, null, 2286, null]);
    const [metric] = sizedBoards([['', '215', '2.4']], 'A1', 1, 'metric');
    expect([metric!.widthMm, metric!.lengthMm]).toEqual([215, 2400]);
  });
  test('are checked as a single board is', () => {
    const typed = [['NO SPACES', 'wide', '800']];
    const [board] = sizedBoards(typed, 'A1', 1, 'imperial');
    expect(board!.problems).toMatchObject([
      { code: expect.stringContaining('validation.') },
      { code: 'board.not-a-length' },
      { code: expect.stringContaining('validation.') },
    ]);
  });
});

describe('columns of a spreadsheet', () => {
  const block = [
    ['Width', 'Length'],
    ['8', '7'],
    ['9', '7'],
    ['10', ''],
  ];
  test('fill the rows from a cell on, without their names, and make as many boards', () => {
    const pasted = pastedSizes([], 2, { row: 0, column: 1 }, block);
    expect(pasted).toEqual({
      typed: [
        ['', '8', '7'],
        ['', '9', '7'],
        ['', '10', ''],
      ],
      boards: 3,
      beyond: 0,
    });
  });
  test('beyond the last column, or the most boards, are counted', () => {
    expect(pastedSizes([], 2, { row: 0, column: 2 }, block)).toMatchObject({ boards: 3, beyond: 2 });
    expect(pastedSizes([], 500, { row: 499, column: 0 }, [['1'], ['2']])).toMatchObject({
      boards: 500,
      beyond: 1,
    });
  });
  test('typing goes into one cell', () => {
    expect(withSize([['A', '8', '']], { row: 1, column: 1 }, '9')).toEqual([
      ['A', '8', ''],
      ['', '9', ''],
    ]);
  });
});
