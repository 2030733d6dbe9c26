import { describe, expect, test } from 'vitest';
import { pastedSizes, sizedBoards, withSize } from '../../../../renderer/features/stacks/board-sizes.ts';
import type { DisplayUnits } from '../../../../shared-core/units/length.ts';

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
  test('name each line that has the same ID, however it came by it', () => {
    const boards = sizedBoards([['B-1'], ['B-2'], ['B-1'], []], 'A1', 4, 'imperial');
    expect(boards.map(({ problems: [ofCode] }) => ofCode?.facts?.lines ?? null)).toEqual([
      [3],
      [4],
      [1],
      [2],
    ]);
  });
  test('are questioned where a size is rarely meant', () => {
    const asked = (row: string[]) =>
      sizedBoards([row], 'A1', 1, 'imperial')[0]!.questions.flatMap((question) => question?.code ?? []);
    expect(asked(['', '9\' 6"', '8'])).toEqual(['stacks.size-wide']);
    expect(asked(['', '6', '60'])).toEqual(['stacks.size-long']);
    expect(asked(['', '6', '8'])).toEqual([]);
  });
});

const TODAY = '2026-06-01';
const cells = (text: string) => text.split('\n').map((line) => line.split('\t'));
/** Pastes into the first cell, or another column of the first line. */
const pasting = (text: string, { column = 0, boards = 2 } = {}) =>
  pastedSizes([], boards, { row: 0, column }, cells(text), TODAY);
const refusal = (text: string, column = 0) => {
  const pasted = pasting(text, { column });
  return 'problem' in pasted ? pasted.problem.code : null;
};
/** The boards of a list: ID, width and length, mm. */
function listed(text: string, units: DisplayUnits = 'imperial') {
  const pasted = pasting(text);
  if ('problem' in pasted) return pasted.problem.code;
  return sizedBoards(pasted.typed, 'W-01', pasted.boards, units).map(
    ({ code, widthMm, lengthMm }) => `${code} ${Math.round(widthMm ?? 0)} ${Math.round(lengthMm ?? 0)}`,
  );
}
const leftOut = (text: string) => {
  const pasted = pasting(text);
  return 'leftOut' in pasted ? pasted.leftOut.map(({ code }) => code) : null;
};

describe('columns of a spreadsheet', () => {
  test('fill the rows from a cell on, without their names, and make as many boards', () => {
    expect(pasting('Width\tLength\n8\t7\n9\t7\n10\t', { column: 1 })).toEqual({
      typed: [
        ['', '8', '7'],
        ['', '9', '7'],
        ['', '10', ''],
      ],
      boards: 3,
      leftOut: [],
    });
  });
  test('go where their names say, in the units that these have', () => {
    const boards = ['B-1 152 2438', 'B-2 178 3048'];
    expect(listed('Board\tLength (ft)\tWidth (in)\nB-1\t8\t6\nB-2\t10\t7')).toEqual(boards);
    expect(listed('Board\tLength (ft)\tWidth (in)\nB-1\t8\t6\nB-2\t10\t7', 'metric')).toEqual(boards);
    const metric = ['B-1 150 2400', 'B-2 185 3000'];
    expect(listed('Width (cm)\tLength (m)\tID\n15\t2.4\tB-1\n18,5\t3\tB-2')).toEqual(metric);
    expect(listed('ID\tWidth (mm)\tLength (mm)\nB-1\t150\t2400\nB-2\t185\t3000')).toEqual(metric);
    expect(listed('ID\tWidth\tLength (in)\nB-1\t6 1/2\t60\nB-2\t7\t5 ft')).toEqual([
      'B-1 165 1524',
      'B-2 178 1524',
    ]);
  });
  test('of another kind are not used, and named', () => {
    const text = 'Board\tThickness\tWidth\tLength\nB-1\t2\t6\t8\nB-2\t2\t7\t8';
    expect(listed(text)).toEqual(['B-1 152 2438', 'B-2 178 2438']);
    expect(leftOut(text)).toEqual(['stacks.pasted-unused']);
  });
  test('are refused where nobody can know what they are', () => {
    expect(refusal('B-1\t2\t6\t8\nB-2\t2\t7\t8')).toBe('stacks.pasted-too-wide');
    expect(refusal('6\t8\n7\t8', 2)).toBe('stacks.pasted-too-wide');
    expect(refusal('Alpha\tBeta\tGamma\nB-1\t6\t8')).toBe('stacks.pasted-names-unknown');
    expect(refusal('ID\tWidth (kg)\nB-1\t6')).toBe('stacks.pasted-unit');
    expect(refusal('Board\tTag\tWidth\nB-1\tX\t6')).toBe('stacks.pasted-twice');
    expect(refusal('B-1\t6\t8\nID\tLength\tWidth\nB-2\t8\t6')).toBe('stacks.pasted-names-below');
  });
  test('may hold IDs without a number, which are no names of columns', () => {
    expect(listed('ASH\nELM\nOAK')).toEqual(['ASH 0 0', 'ELM 0 0', 'OAK 0 0']);
    expect(listed('W\nL\nP')).toEqual(['W 0 0', 'L 0 0', 'P 0 0']);
    expect(listed('OAK\t6\t8\nELM\t7\t8')).toEqual(['OAK 152 2438', 'ELM 178 2438']);
    expect(listed('Board\nASH\nELM')).toEqual(['ASH 0 0', 'ELM 0 0']);
  });
  test('make no boards of blank lines, totals, titles, or names that come again', () => {
    const boards = ['B-1 152 2438', 'B-3 178 2438'];
    expect(listed('B-1\t6\t8\n\t\nB-3\t7\t8\nTotal\t13\t16\n\t\t')).toEqual(boards);
    expect(leftOut('B-1\t6\t8\n\t\nB-3\t7\t8\nTotal\t13\t16')).toEqual([
      'stacks.pasted-no-boards',
      'stacks.pasted-blank',
    ]);
    expect(listed('B-1\t6\t8\nB-3\t7\t8\n\t13\t16')).toEqual(boards);
    expect(listed('Stack 2026\nBoard\tWidth\tLength\nB-1\t6\t8\nBoard\tWidth\tLength\nB-3\t7\t8')).toEqual(
      boards,
    );
  });
  test('without IDs keep their lines beside boards that are there', () => {
    expect(pasting('6\n\n7', { column: 1, boards: 3 })).toMatchObject({
      typed: [
        ['', '6', ''],
        ['', '', ''],
        ['', '7', ''],
      ],
      boards: 3,
    });
    expect(pasting('6\n\n7', { column: 1, boards: 2 })).toMatchObject({ boards: 2 });
  });
  test('empty what they are copied over blank', () => {
    const typed = [['', '8', '10']];
    expect(pastedSizes(typed, 2, { row: 0, column: 1 }, cells('6\t\n7\t9'), TODAY)).toMatchObject({
      typed: [
        ['', '6', ''],
        ['', '7', '9'],
      ],
    });
  });
  test('name IDs in the letters that IDs have', () => {
    expect(listed('Oak 7\t6\t8\n#8\t7\t8')).toEqual(['OAK-7 152 2438', '8 178 2438']);
  });
  test('beyond the most boards are counted', () => {
    expect(pastedSizes([], 500, { row: 499, column: 0 }, [['1'], ['2']], TODAY)).toMatchObject({
      boards: 500,
      leftOut: [{ code: 'stacks.pasted-beyond', facts: { boards: 1 } }],
    });
  });
  test('typing goes into one cell', () => {
    expect(withSize([['A', '8', '']], { row: 1, column: 1 }, '9')).toEqual([
      ['A', '8', ''],
      ['', '9', ''],
    ]);
  });
});
