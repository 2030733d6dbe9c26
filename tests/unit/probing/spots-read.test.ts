/** How far a board is read, against the plan of its spots. */
import { describe, expect, test } from 'vitest';
import {
  halfProbed,
  planOfFinished,
  spotsByDepth,
  spotsLacking,
} from '../../../shared-core/probing/calls/spots-read.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { PAIRS } from '../../../shared-core/probing/readings/plan-basis.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { averages, readings } from './a-board.ts';

const plan = (shell: number, average: number, core: number) => ({ shell, average, core });
const counted = (countedShell: number, countedAverage: number, countedCore: number) => ({
  countedShell,
  countedAverage,
  countedCore,
});
const board = { thicknessMm: 27, lengthMm: 3000 };

test('the spots of a plan, by the depths that they tell', () => {
  const pairs = planSpots({ lengthMm: 3000, thicknessMm: 27, planBasis: PAIRS }).plan;
  expect(spotsByDepth(pairs)).toEqual(plan(2, 0, 2));
  const alone = planSpots({
    lengthMm: 3000,
    thicknessMm: 54,
    planBasis: { faces: 'shell', core: null, pins: null },
  }).plan;
  expect(spotsByDepth(alone)).toEqual(plan(2, 0, 0));
  expect(spotsByDepth(averages([8, 8, 8]))).toEqual(plan(0, 3, 0));
});

describe('how many spots are still needed for a call', () => {
  test('two of each depth, of the usual plan', () => {
    expect(spotsLacking(counted(0, 0, 0), { board })).toEqual(plan(2, 0, 2));
    expect(spotsLacking(counted(1, 0, 2), { board })).toEqual(plan(1, 0, 0));
    expect(spotsLacking(counted(3, 0, 1), { board })).toEqual(plan(0, 0, 1));
    expect(spotsLacking(counted(2, 0, 2), { board })).toEqual(plan(0, 0, 0));
  });

  // Both spots 30 cm from an end, EN 13183-2 (from memory), and 15 cm apart (common practice, no source): 75 cm.
  test('one of each where the board is too short for two', () => {
    const of = (lengthMm: number | null) => spotsLacking(counted(0, 0, 0), { board: { ...board, lengthMm } });
    expect(of(749)).toEqual(plan(1, 0, 1));
    expect(of(750)).toEqual(plan(2, 0, 2));
    expect(of(null)).toEqual(plan(2, 0, 2));
  });

  test('two of a plan of three averages, and none of a depth that is not planned', () => {
    expect(spotsLacking(counted(0, 0, 0), { board, plan: plan(0, 3, 0) })).toEqual(plan(0, 2, 0));
    expect(spotsLacking(counted(1, 0, 1), { board, plan: plan(0, 3, 0) })).toEqual(plan(0, 2, 0));
  });

  test('none where another plan’s spots are enough: two averages, or two pairs', () => {
    expect(spotsLacking(counted(0, 2, 0), { board })).toEqual(plan(0, 0, 0));
    expect(spotsLacking(counted(0, 1, 0), { board })).toEqual(plan(2, 0, 2));
    expect(spotsLacking(counted(2, 0, 2), { board, plan: plan(0, 3, 0) })).toEqual(plan(0, 0, 0));
    expect(spotsLacking(counted(2, 0, 1), { board, plan: plan(0, 3, 0) })).toEqual(plan(0, 2, 0));
    expect(spotsLacking(counted(1, 0, 2), { board, plan: plan(0, 3, 0) })).toEqual(plan(0, 2, 0));
  });
});

describe('a board is read in part', () => {
  test('until all spots of its plan are read, and it says how many of how many', () => {
    expect(halfProbed(counted(0, 0, 0), { board })).toEqual({ read: 0, planned: 4 });
    expect(halfProbed(counted(2, 0, 1), { board })).toEqual({ read: 3, planned: 4 });
    expect(halfProbed(counted(2, 0, 2), { board })).toBeNull();
    expect(halfProbed(counted(0, 2, 0), { board, plan: plan(0, 3, 0) })).toEqual({ read: 2, planned: 3 });
  });

  test('no longer once another plan’s spots are as many: three averages, or as many pairs', () => {
    expect(halfProbed(counted(0, 2, 0), { board, plan: plan(3, 0, 3) })).toBeNull();
    expect(halfProbed(counted(2, 0, 2), { board, plan: plan(3, 0, 3) })).toEqual({ read: 4, planned: 6 });
    expect(halfProbed(counted(2, 0, 2), { board, plan: plan(0, 3, 0) })).toBeNull();
  });
});

describe('a finished round, of which no more is to come', () => {
  const four = readings([8, 8.1], [8.2, 8.3]);
  const because = (at: number, excluded: Exclusion) =>
    four.map((each, index) => (index === at ? { ...each, excluded } : each));
  const moved = { code: 'moved', to: '8d0e4f5e-5b0c-4f6e-9d0a-0a1b2c3d4e5f' } as const;
  const finished = (of: typeof four, isTyped = false, planned = plan(2, 0, 2)) =>
    planOfFinished(planned, of, { isTyped });

  test('that read every spot stays whole where a reading is excluded or moved away later', () => {
    expect(finished(four)).toEqual(plan(2, 0, 2));
    expect(finished(because(0, { text: 'a knot' }))).toEqual(plan(1, 0, 2));
    expect(finished(because(3, { code: 'defect' }))).toEqual(plan(2, 0, 1));
    expect(finished(because(3, moved))).toEqual(plan(2, 0, 1));
  });

  test('that left spots open keeps its plan, also where a reading was undone in it', () => {
    expect(finished(four.slice(0, 3))).toEqual(plan(2, 0, 2));
    expect(finished(because(3, { code: 'undone-in-round' }))).toEqual(plan(2, 0, 2));
    expect(finished(because(3, { code: 'replaced' }))).toEqual(plan(2, 0, 2));
  });

  test('that was typed is whole with the spots that were typed', () => {
    expect(finished(four.slice(0, 3), true)).toEqual(plan(2, 0, 1));
    expect(finished(four.slice(0, 1), true)).toEqual(plan(1, 0, 0));
  });

  test('is never planned for more than it was', () => {
    expect(finished([...four, ...readings([7.9], [])])).toEqual(plan(2, 0, 2));
    expect(finished(averages([8, 8, 8, 8]), true, plan(0, 3, 0))).toEqual(plan(0, 3, 0));
  });

  test('of which nothing is left keeps its plan: the round before tells more', () => {
    const none = four.map((each) => ({ ...each, excluded: { text: 'wrong board' } }));
    expect(finished(none)).toEqual(plan(2, 0, 2));
    expect(finished(none, true)).toEqual(plan(2, 0, 2));
    expect(finished([], true)).toEqual(plan(2, 0, 2));
  });

  test('was another board’s where all that it read was moved away, whatever was moved here', () => {
    const away = four.map((each) => ({ ...each, excluded: moved }));
    const here = { ...readings([8], [])[0]!, id: 9, movedFrom: { boardId: 2, code: 'OAK-2' } };
    expect(finished([...away, here])).toEqual(plan(2, 0, 2));
    expect(finished([...because(3, moved), here])).toEqual(plan(2, 0, 1));
  });

  test('a reading that was moved here read no spot of its plan', () => {
    const here = { ...four[3]!, movedFrom: { boardId: 2, code: 'OAK-2' } };
    expect(finished([...four.slice(0, 3), here])).toEqual(plan(2, 0, 2));
    expect(
      finished([
        ...four.slice(0, 2).map((each) => ({ ...each, movedFrom: here.movedFrom })),
        ...four.slice(2),
      ]),
    ).toEqual(plan(2, 0, 2));
  });

  test('that read one hole twice read one spot', () => {
    const atOne = averages([8, 8.1, 8.2], { spotIndex: 0 });
    expect(planOfFinished(plan(0, 3, 0), atOne, { isTyped: false })).toEqual(plan(0, 3, 0));
  });
});
