/**
 * What people find again and again when they air-dry lumber: common practice, no source. Nothing here was used to choose the
 * model or its prior.
 */
import { describe, expect, test } from 'vitest';
import { DAY_MS } from '../../shared-core/time.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  runBoard,
} from '../../shared-core/wood/drying/history-fit.ts';
import { stationYear } from '../bench/typical-years.ts';

/** The middle of the United States: Springfield, Missouri, and Nashville. */
const airs = ['724400', '723270'].map((wmo) => stationYear(wmo).air);

function averageAfter(
  days: number,
  sawn: { month: number; day: number },
  board: Pick<DryingBoard, 'thicknessMm' | 'basicSpecificGravity' | 'dryingClass'>,
  greenPct: number | null = null,
): number[] {
  const atMs = Date.UTC(2023, sawn.month - 1, sawn.day);
  return airs.map((air) => {
    const whole: DryingBoard = {
      ...board,
      start: { atMs, mcPct: greenPct, logSd: 0.3, shellRatio: 1 },
      stays: [{ fromMs: atMs, air }],
    };
    const until = atMs + days * DAY_MS;
    const { mean } = dryingPrior(whole);
    return runBoard(boardModel(whole), mean, whole.stays, atMs, until, null, [until], []).averagePct[0]!;
  });
}

describe('8/4 after 18 months outdoors reads 12 to 15 %', () => {
  const species = [
    ['walnut', 0.51, 'dense-hardwood'],
    ['oak', 0.56, 'upland-oak'],
  ] as const;
  const cases = species.flatMap((each) => [1, 4, 7, 10].map((month) => [...each, month] as const));

  test.each(cases)('%s', (_, basicSpecificGravity, dryingClass, month) => {
    const board = { thicknessMm: 54, basicSpecificGravity, dryingClass };
    for (const pct of averageAfter(548, { month, day: 15 }, board)) {
      expect(pct).toBeGreaterThan(12);
      expect(pct).toBeLessThan(15);
    }
  });
});

// Green heartwood 58 % (Wood Handbook, Table 4-1, page read). In Missouri it is colder: there it is a point or so above.
test('4/4 cherry sawn in mid-September reads 14 to 15 % twelve weeks later in the south, little more farther north', () => {
  const board = { thicknessMm: 28, basicSpecificGravity: 0.47, dryingClass: 'dense-hardwood' as const };
  const [missouri, nashville] = averageAfter(84, { month: 9, day: 15 }, board, 58) as [number, number];
  expect(nashville).toBeGreaterThan(13.5);
  expect(nashville).toBeLessThan(15.7);
  expect(missouri).toBeLessThan(17.5);
});
