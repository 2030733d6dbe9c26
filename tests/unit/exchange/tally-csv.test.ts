import { expect, test } from 'vitest';
import { tallyCsv } from '../../../shared-core/exchange/tally-csv.ts';
import {
  type Tally,
  type TallyAmounts,
  type TallyRow,
  tallyBySchema,
} from '../../../shared-core/tally/tally.ts';
import { wordsIn } from '../labels/a-label.ts';
import { rowsOf } from './a-csv.ts';

const amounts: TallyAmounts = {
  boards: 3,
  measured: 2,
  boardFeet: 16,
  cubicMeters: 0.0378,
  weighed: 2,
  nowKg: 45.359237,
  targetKg: 40,
  notProbed: 0,
  withoutDensity: [],
};
const tally = (row: Partial<TallyRow>): Tally => ({ rows: [{ ...amounts, ...row }], total: amounts });

test('a tally goes out split as it is on screen, in the units that its head names', () => {
  const row = {
    speciesName: '=Oak, red',
    thickness: { thicknessMm: 50.8, quarters: 8 },
    call: 'ready' as const,
    stackName: 'North',
  };
  // A pound is 0.45359237 kg exactly, and an inch 25.4 mm (international yard and pound agreement, 1959; from memory).
  expect(rowsOf(tallyCsv(tally(row), tallyBySchema.options, 'imperial', wordsIn('imperial').say))).toEqual([
    {
      Species: "'=Oak, red",
      'Thickness (in)': '2',
      Call: 'ready',
      Stack: 'North',
      Boards: '3',
      'Boards with a size': '2',
      'Board feet': '16',
      'Volume (m³)': '0.0378',
      'Boards with a weight': '2',
      'Weight when last probed (lb)': '100',
      'Weight at target (lb)': '88.1849',
    },
  ]);
});

test('what no board has is blank, and a tally that is not split is one row', () => {
  const none = { measured: 0, boardFeet: 0, cubicMeters: 0, weighed: 0, nowKg: 0, targetKg: 0 };
  expect(rowsOf(tallyCsv(tally(none), [], 'metric', wordsIn('metric').say))).toEqual([
    {
      Boards: '3',
      'Boards with a size': '0',
      'Board feet': '',
      'Volume (m³)': '',
      'Boards with a weight': '0',
      'Weight when last probed (kg)': '',
      'Weight at target (kg)': '',
    },
  ]);
});
