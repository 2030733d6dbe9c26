import { expect, test } from 'vitest';
import { MM_PER_FOOT, MM_PER_INCH } from '../../../shared-core/measures.ts';
import { type TalliedBoard, tallyRows } from '../../../shared-core/tally/tally.ts';
import { builtInSpecies } from '../../../shared-core/wood/species/built-in.ts';

const speciesOf = (id: string) => builtInSpecies.find((each) => each.id === id)!;
const board = (more: Partial<TalliedBoard> = {}): TalliedBoard => ({
  species: speciesOf('walnut-black'),
  thicknessMm: MM_PER_INCH,
  thicknessQuarters: 4,
  widthMm: 12 * MM_PER_INCH,
  lengthMm: MM_PER_FOOT,
  call: null,
  stackName: 'Lane',
  averagePct: null,
  targetPct: 7,
  ...more,
});

// A board foot is 144 cubic inches: 1 in x 12 in x 1 ft (NIST Handbook 44, Appendix C, from memory).
test('one inch by twelve inches by one foot is one board foot, and twelve feet are twelve', () => {
  const { total } = tallyRows([board(), board({ lengthMm: 12 * MM_PER_FOOT })], []);
  expect(total).toMatchObject({ boards: 2, measured: 2, boardFeet: 13 });
});

test('a row for each species and thickness there is, in order, and their sum is the total', () => {
  const cherry = speciesOf('cherry-black');
  const boards = [
    board({ thicknessMm: 50.8, thicknessQuarters: 8 }),
    board({ species: cherry }),
    board(),
    board({ species: cherry }),
  ];
  const { rows, total } = tallyRows(boards, ['species', 'thickness']);
  expect(
    rows.map(({ speciesName, thickness, boards }) => [speciesName, thickness?.quarters, boards]),
  ).toEqual([
    ['Black cherry', 4, 2],
    ['Black walnut', 4, 1],
    ['Black walnut', 8, 1],
  ]);
  for (const sum of ['boards', 'measured', 'boardFeet', 'weighed'] as const)
    expect(rows.reduce((all, row) => all + row[sum], 0)).toBeCloseTo(total[sum], 9);
});

test('by call, the ready ones come first and those without a call last', () => {
  const boards = [board(), board({ call: 'keep-drying' }), board({ call: 'ready' })];
  expect(tallyRows(boards, ['call']).rows.map(({ call }) => call)).toEqual(['ready', 'keep-drying', null]);
});

test('weight at the target leaves the oven-dry mass as it is', () => {
  const { total } = tallyRows([board({ averagePct: 15 }), board()], []);
  expect(total).toMatchObject({ weighed: 1, notProbed: 1 });
  expect(total.targetKg / 107).toBeCloseTo(total.nowKg / 115, 9);
});

test('a board that is not measured counts, and has no volume', () => {
  expect(tallyRows([board({ widthMm: null, averagePct: 15 })], []).total).toMatchObject({
    boards: 1,
    measured: 0,
    boardFeet: 0,
    weighed: 0,
    notProbed: 0,
  });
});

test('no boards, no rows', () => {
  expect(tallyRows([], ['species'])).toMatchObject({ rows: [], total: { boards: 0 } });
});
