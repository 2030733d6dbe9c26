import { describe, expect, test } from 'vitest';
import { asRead } from './as-read.ts';

// The habits are common practice, no source; the values are invented.

describe('the first rows are told as they go in', () => {
  test('with the sizes, the sawing date and the reading of a board', () => {
    const { firstRows } = asRead(
      'Board,Species,Thickness,Width (in),Length,Sawn,Date,MC,Temp (F)\n1,White oak,4/4,8 1/2,8 ft,4/12/24,3/15/25,14.5,68\n2,walnut,1,,,,,,\n2,walnut,1,,,,6/15/25,>28 / 19,',
    );
    expect(firstRows).toEqual([
      'Line 2, board 1: White oak, 4/4 × 8 1/2 in × 8 ft, in Imported. Sawn Apr 12, 2024. Probed on Mar 15, 2025: 14.5% at 68°F.',
      'Line 3, board 2: Black walnut, 1 in, in Imported.',
      'Line 4, board 2: Black walnut, 1 in, in Imported. Probed on Jun 15, 2025: above 28% and 19%.',
    ]);
  });
  test('and none that does not go in', () => {
    const { firstRows, refused } = asRead(
      'Board,Species,Thickness,Sawn\nA,walnut,8/4,2/30/24\nB,walnut,8/4,3/1/24',
    );
    expect(refused.map(([line]) => line)).toEqual([2]);
    expect(firstRows).toEqual(['Line 3, board B: Black walnut, 8/4, in Imported. Sawn Mar 1, 2024.']);
  });
});

describe('the same row twice', () => {
  test('goes in once where each board has a row', () => {
    const { readings, refused, remarks } = asRead(
      'Board,Species,Thickness,Date,MC,MC\nA,walnut,8/4,3/4/25,14.2,15.1\nB,walnut,8/4,3/4/25,14.2,15.1\nA,walnut,8/4,3/4/25,14.2,15.1',
    );
    expect(readings).toHaveLength(4);
    expect(refused).toEqual([[4, 'The same as line 2. Skip it.']]);
    expect(remarks.join()).not.toContain('earlier row');
  });
  test('goes in, and is told, where each spot has a row', () => {
    const { readings, refused, remarks } = asRead(
      'Board,Species,Thickness,Date,MC\nA,walnut,8/4,3/4/25,14\nA,walnut,8/4,3/4/25,15\nA,walnut,8/4,3/4/25,14\nB,walnut,8/4,3/4/25,13\nB,walnut,8/4,3/4/25,12',
    );
    expect([readings.length, refused]).toEqual([5, []]);
    expect(remarks).toContain('1 row is the same as an earlier row. It goes in as readings of other spots.');
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
    expect(problems).toEqual(['Column Sawn may have the day first or the month first. Choose the order.']);
  });
});

describe('boards across', () => {
  const head = 'Board,A1,A2\nSpecies,walnut,cherry\nThickness,1,2\n';
  const shellAndCore = [
    'A1 2025-05-01 20.1 shell',
    'A1 2025-05-01 25.5 core',
    'A2 2025-05-01 21.2 shell',
    'A2 2025-05-01 24 core',
  ];
  test('have lines of shell and core', () => {
    const { readings, reshaped } = asRead(`${head}5/1/2025 shell,20.1,21.2\n5/1/2025 core,25.5,24`);
    expect([reshaped, readings]).toEqual(['turned', shellAndCore]);
  });
  test('have the depth beside a date that stands once', () => {
    const beside = head.replaceAll(/^(\w+),/gm, '$1,,');
    expect(asRead(`${beside}5/1/2025,Shell,20.1,21.2\n,Core,25.5,24`).readings).toEqual(shellAndCore);
  });
  test('have a line of temperatures under each date', () => {
    const lines = '5/1/2025,20.1,21.2\nTemp (F),68,68\n6/1/2025,18,19\nTemp (F),77,';
    expect(asRead(head + lines).readings).toEqual([
      'A1 2025-05-01 20.1 20',
      'A1 2025-06-01 18 25',
      'A2 2025-05-01 21.2 20',
      'A2 2025-06-01 19',
    ]);
  });
});

describe('a table of one board, without its ID', () => {
  const table = 'Date,C1,C2,C3,Mean\n3/15/25,14.2,15.1,14.4,14.6\n4/15/25,13.2,14.1,13.4,13.6';
  test('asks whose the rows are, and says what to do where each column is a board', () => {
    expect(asRead(table).problems).toEqual([
      'No column is set to Board ID. Type the ID, if all rows are of one board. If each column is a board, delete column Mean and import the table again.',
    ]);
    expect(asRead('Date,MC\n3/15/25,14').problems).toEqual([
      'No column is set to Board ID. Choose one above, or type the ID, if all rows are of one board.',
    ]);
  });
  test('is of the board that a person names, and its average is no reading', () => {
    const chosen = { boardCode: 'wal 7', speciesId: 'walnut-black', thicknessMm: 50.8 };
    const { boards, readings, problems } = asRead(table, chosen);
    expect([problems, boards.map(({ code }) => code)]).toEqual([[], ['WAL-7']]);
    expect(readings).toEqual([
      'WAL-7 2025-03-15 14.2',
      'WAL-7 2025-03-15 15.1',
      'WAL-7 2025-03-15 14.4',
      'WAL-7 2025-04-15 13.2',
      'WAL-7 2025-04-15 14.1',
      'WAL-7 2025-04-15 13.4',
    ]);
    expect(asRead(table, { ...chosen, boardCode: '???' }).problems).toEqual([
      '“???” cannot be a board ID. An ID has up to 16 letters, digits, and hyphens.',
    ]);
  });
  test('is turned where it has no average', () => {
    expect(asRead(table.replaceAll(/,[^,]*$/gm, '')).reshaped).toBe('turned');
  });
});

describe('the heading of a line where an ID should be', () => {
  test.each(['Temp', 'Temp (F)', 'Temp 3/15/25', 'Species', 'Date'])('%s is no board', (text) => {
    const { boards, refused } = asRead(
      `Board,Species,Thickness\n${text},walnut,8/4\nTEMP-7,walnut,8/4\nMAY-12-25,walnut,8/4`,
    );
    expect(boards.map(({ code }) => code)).toEqual(['TEMP-7', 'MAY-12-25']);
    expect(refused).toEqual([[2, `“${text}” looks like the heading of a line, not a board ID. Skip it.`]]);
  });
});

describe('a visit', () => {
  const head = 'Date,Board,Species,Thickness,MC,Temp (F)\n3/15/25,A,walnut,8/4,20,68\n,B,walnut,8/4,21,\n';
  test('has its temperature in its first row', () => {
    expect(asRead(`${head}4/15/25,A,walnut,8/4,15,77\n,B,walnut,8/4,16,`).readings).toEqual([
      'A 2025-03-15 20 20',
      'A 2025-04-15 15 25',
      'B 2025-03-15 21 20',
      'B 2025-04-15 16 25',
    ]);
  });
  test('does not get the temperature of the one before', () => {
    expect(asRead(`${head}4/15/25,A,walnut,8/4,15,\n,B,walnut,8/4,16,`).readings).toEqual([
      'A 2025-03-15 20 20',
      'A 2025-04-15 15',
      'B 2025-03-15 21',
      'B 2025-04-15 16',
    ]);
  });
});

describe('a day without its year', () => {
  test.each(['3/15', 'Mar 15', '15 March', 'Sat 3/15'])('%s is refused as that', (text) => {
    const { refused } = asRead(`Board,Species,Thickness,Date,MC\nA,walnut,8/4,${text},14`);
    expect(refused).toEqual([[2, `“${text}” has no year. Add the year.`]]);
  });
});

describe('the temperature of a day', () => {
  const head = 'Board,Species,Thickness,5/1/2025,6/1/2025';
  test('goes with the readings of that day, wherever its column is', () => {
    expect(asRead(`${head},Temp 6/1/2025,Temp 5/1/2025\nA,walnut,8/4,20,15,77,68`).readings).toEqual([
      'A 2025-05-01 20 20',
      'A 2025-06-01 15 25',
    ]);
    expect(asRead(`${head},Temp (F) 6/1/2025\nA,walnut,8/4,20,15,77`).readings).toEqual([
      'A 2025-05-01 20',
      'A 2025-06-01 15 25',
    ]);
  });
  test('may stand in a line above the boards, which is none', () => {
    const { boards, readings, refused } = asRead(`${head}\nTemp (F),,,68,77\nA,walnut,8/4,20,15`, {
      thicknessMm: 27,
      speciesId: 'walnut-black',
    });
    expect(readings).toEqual(['A 2025-05-01 20 20', 'A 2025-06-01 15 25']);
    expect([boards.length, refused]).toEqual([1, []]);
  });
});

test('S and C under dates are shell and core', () => {
  expect(
    asRead('Board,Species,Thickness,5/1/2025,,6/1/2025,\n,,,S,C,S,C\nA,walnut,8/4,20,24,15,19').readings,
  ).toEqual([
    'A 2025-05-01 20 shell',
    'A 2025-05-01 24 core',
    'A 2025-06-01 15 shell',
    'A 2025-06-01 19 core',
  ]);
});

describe('lists side by side with the same IDs', () => {
  const columns = 'Board,Species,Thickness,Date,MC';
  const one = '1,walnut,4/4,5/1/2025,20';
  const other = '1,cherry,4/4,6/1/2025,25';
  test('are asked about, and the second does not become the first', () => {
    const { readings, refused } = asRead(`${columns},,${columns}\n${one},,${other}`);
    expect(readings).toEqual(['1 2025-05-01 20']);
    expect(refused).toEqual([[3, 'Line 2 gives this board another species.']]);
    const alike = asRead(`${columns},,${columns}\n${one},,${other.replace('cherry', 'walnut')}`);
    expect(alike.refused).toEqual([
      [
        3,
        'Line 2 has this ID for another log. If IDs start over in each log, choose “Board ID” for the log too.',
      ],
    ]);
  });
  test('keep what stands over each', () => {
    const stacks = `Stack North${','.repeat(5)}Stack South`;
    const { boards } = asRead(`${stacks}\n${columns},${columns}\n${one},${other.replace('1,', '2,')}`);
    expect(boards.map(({ code, stackName }) => [code, stackName])).toEqual([
      ['1', 'Stack North'],
      ['2', 'Stack South'],
    ]);
  });
});

test('the name of a line is no board, also where all boards are alike', () => {
  const { boards, refused } = asRead(
    'Board,A1,,A2,\nSpecies,walnut,,cherry,\n,1,2,1,2\n5/1/2025,20,21,30,31',
    {
      thicknessMm: 27,
      speciesId: 'walnut-black',
    },
  );
  expect(boards).toEqual([]);
  expect(refused).toEqual([
    [2, '“Species” looks like the heading of a line, not a board ID. Skip it.'],
    [3, 'No board ID.'],
    [4, '“5/1/2025” looks like the heading of a line, not a board ID. Skip it.'],
  ]);
});
