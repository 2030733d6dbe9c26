import { describe, expect, test } from 'vitest';
import { asRead } from './as-read.ts';

// The habits are common practice, no source; the values are invented.

describe('the first rows are told as they go in', () => {
  test('with the sizes, the sawing date and the reading of a board', () => {
    const { firstRows } = asRead(
      'Board,Species,Thickness,Width (in),Length,Sawn,Date,MC,Temp (F)\n1,White oak,4/4,8 1/2,8 ft,4/12/24,3/15/25,14.5,68\n2,walnut,1,,,,,,\n2,walnut,1,,,,6/15/25,>28 / 19,',
    );
    expect(firstRows).toEqual([
      'Line 2, 1: White oak, 4/4 × 8 1/2 in × 8 ft, in Imported. Sawn Apr 12, 2024. Read 14.5% at 68°F on Mar 15, 2025.',
      'Line 3, 2: Black walnut, 1 in, in Imported.',
      'Line 4, 2: Black walnut, 1 in, in Imported. Read above 28% and 19% on Jun 15, 2025.',
    ]);
  });
  test('and none that does not go in', () => {
    const { firstRows, refused } = asRead(
      'Board,Species,Thickness,Sawn\nA,walnut,8/4,2/30/24\nB,walnut,8/4,3/1/24',
    );
    expect(refused.map(([line]) => line)).toEqual([2]);
    expect(firstRows).toEqual(['Line 3, B: Black walnut, 8/4, in Imported. Sawn Mar 1, 2024.']);
  });
});

describe('a name of a species', () => {
  const table = 'Board,Species,Thickness\nA,walnut,8/4\nB,WO,8/4\nC,White oak,8/4\nD,walnut,8/4';
  test('is listed with what it was taken for, unless it is the name of the species', () => {
    expect(asRead(table).speciesNames).toEqual([
      { name: 'WO', rows: 1, speciesId: null },
      { name: 'walnut', rows: 2, speciesId: 'walnut-black' },
    ]);
  });
  test('means what a person chose for it, and nothing while they choose another', () => {
    const chosen = asRead(table, { speciesOfNames: { walnut: 'cherry-black', wo: 'oak-white' } });
    expect(chosen.boards.map(({ speciesId }) => speciesId)).toEqual([
      'cherry-black',
      'oak-white',
      'oak-white',
      'cherry-black',
    ]);
    expect(asRead(table, { speciesOfNames: { walnut: '' } }).refused.map(([line]) => line)).toEqual([
      2, 3, 5,
    ]);
  });
});

describe('one date against the order of a person', () => {
  test('among several others is mistyped', () => {
    const { boards, refused } = asRead(
      'Board,Species,Thickness,Sawn\nA,walnut,8/4,4/12/24\nB,walnut,8/4,5/1/24\nC,walnut,8/4,6/2/24\nD,walnut,8/4,13/1/24',
    );
    expect(boards.map(({ sawnOn }) => sawnOn)).toEqual(['2024-04-12', '2024-05-01', '2024-06-02']);
    expect(refused).toEqual([[5, '“13/1/24” is not a date. Check the order of day and month.']]);
  });
  test('is asked about where another column is in the order of the person', () => {
    const { problems } = asRead(
      'Board,Species,Thickness,Sawn,Date,MC\nA,walnut,8/4,13/1/24,3/15/25,14\nB,walnut,8/4,14/1/24,3/16/25,14',
    );
    expect(problems).toEqual(['Dates in column Sawn may be in another order than yours. Choose the order.']);
  });
});
