import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { boardsForNoneWet } from '../../../shared-core/probing/plan/sample-size.ts';
import {
  type BoardStanding,
  planStack,
  stackPlanSchema,
} from '../../../shared-core/probing/plan/stack-plan.ts';

const endUse = { id: 'furniture', name: 'furniture', minPct: 6, maxPct: 8, maxShellCorePct: 2, note: '' };
let nextId = 1;
const board = (
  call: Call | null,
  averagePct: number | null,
  changes: Partial<BoardStanding> = {},
): BoardStanding => {
  const boardId = nextId++;
  return {
    boardId,
    code: `B-${boardId}`,
    call,
    today: averagePct === null ? null : { averagePct, standardUncertaintyPct: 0.5 },
    probabilityReady: null,
    ...changes,
  };
};
const many = (count: number, call: Call | null, averagePct: number | null): BoardStanding[] =>
  Array.from({ length: count }, () => board(call, averagePct));

describe("a stack's call", () => {
  test('ready, when so many boards of it were found ready that few others can be wet', () => {
    const enough = boardsForNoneWet(60, 0.1, 0.9);
    const plan = planStack([...many(enough, 'ready', 7), ...many(60 - enough, null, 7)], endUse, 0.9);
    expect(stackPlanSchema.parse(plan)).toEqual(plan);
    expect(plan.call).toEqual({
      call: 'ready',
      reasons: [
        `All ${enough} probed boards are ready: with 90 % certainty no more than one in 10 of its 60 boards is not.`,
      ],
    });
  });

  test('one board fewer, and it is to be probed again, by one more', () => {
    const enough = boardsForNoneWet(60, 0.1, 0.9);
    const { call } = planStack([...many(enough - 1, 'ready', 7), ...many(61 - enough, null, 7)], endUse, 0.9);
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toMatch(/probe 1 more\.$/);
  });

  test('more certainty wants more boards', () => {
    const boards = many(60, null, null);
    expect(planStack(boards, endUse, 0.95).toKnowReady).toBeGreaterThan(
      planStack(boards, endUse, 0.8).toKnowReady,
    );
  });

  test('nothing probed: probe, and how many', () => {
    const { call, toKnowReady } = planStack(many(60, null, null), endUse, 0.9);
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toContain(`if ${toKnowReady} boards read ready`);
  });

  test('what most of its boards are told, with the ready ones to be taken out', () => {
    const { call } = planStack(
      [
        ...many(5, 'bring-in', 12),
        ...many(2, 'keep-drying', 15),
        ...many(1, 'ready', 7),
        ...many(1, null, 12),
      ],
      endUse,
      0.9,
    );
    expect(call.call).toBe('bring-in');
    expect(call.reasons).toEqual([
      '5 of 8 probed boards: bring in. The boards not ready stand at about 12.9 % today; 6.0 % to 8.0 % is wanted.',
      '1 board can be taken out: ready.',
      '1 board not probed yet.',
    ]);
  });

  test('boards that should have become ready since they were probed are to be probed, not left drying', () => {
    const turned = Array.from({ length: 3 }, () => board('keep-drying', 7.4, { probabilityReady: 0.8 }));
    const { call } = planStack([...turned, board('keep-drying', 9, { probabilityReady: 0.1 })], endUse, 0.9);
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toMatch(/^3 of the 4 boards .* should be by now/);
  });
});

describe('at the edges', () => {
  test('boards found ready that by the forecast no longer are: they are to be probed, the stack is not ready', () => {
    const boards = [...many(20, 'ready', 7), board('ready', 9.5, { probabilityReady: 0.1 })];
    const { call } = planStack(boards, endUse, 0.9);
    expect(call.call).toBe('probe-again');
    expect(call.reasons[0]).toMatch(
      /^1 board was ready when last probed and, by the forecast, may no longer be/,
    );
  });

  test('a stack of one board takes one, and is ready when it is', () => {
    const plan = planStack([board('ready', 7)], endUse, 0.99);
    expect(plan).toMatchObject({ toKnowReady: 1, toKnowMean: { boards: 1 }, call: { call: 'ready' } });
  });

  test('all probed and surely ready: nothing is left to probe', () => {
    const sure = { today: { averagePct: 7, standardUncertaintyPct: 0.2 } };
    const boards = Array.from({ length: 30 }, () => board('ready', 7, sure));
    const plan = planStack(boards, endUse, 0.999);
    expect(plan.call.call).toBe('ready');
    expect(plan.next).toEqual([]);
  });

  test('fewer than three probed tell no spread: the usual one is taken', () => {
    expect(
      planStack([board('ready', 7), board('ready', 7), ...many(8, null, null)], endUse, 0.9).toKnowMean
        .spreadPct,
    ).toBe(1.5);
  });
});

describe('which boards to probe next', () => {
  test('those nearest to a limit and most unsure; not those that are surely one or the other', () => {
    const near = board('keep-drying', 8.2);
    const far = board('keep-drying', 14);
    const unsure = board('keep-drying', 9, { today: { averagePct: 9, standardUncertaintyPct: 3 } });
    const { next } = planStack([far, near, unsure], endUse, 0.9);
    expect(next.map(({ boardId }) => boardId)).toEqual([unsure.boardId, near.boardId]);
    expect(next[1]!.why).toMatch(
      /^About 8\.2 % today, give or take 0\.5 %, near the limit of 8\.0 %: 34 % chance/,
    );
  });

  test('those that their last round left in doubt come before, however far from a limit', () => {
    const near = board('keep-drying', 8.2);
    const questionable = many(4, 'probe-again', 14);
    const { next } = planStack([near, ...many(4, 'keep-drying', 14), ...questionable], endUse, 0.5);
    expect(next.map(({ boardId }) => boardId)).toEqual(questionable.map(({ boardId }) => boardId));
    expect(next[0]!.why).toMatch(/ended in “probe again”/);
  });

  test('of a stack of which nothing is known, boards all through it, as many as are wanted', () => {
    const boards = many(20, null, null);
    const { next, toKnowReady } = planStack(boards, endUse, 0.5);
    expect(next).toHaveLength(toKnowReady);
    expect(next[0]!.boardId).toBe(boards[0]!.boardId);
    const last = boards.findIndex(({ boardId }) => boardId === next.at(-1)!.boardId);
    expect(last).toBeGreaterThan(12);
  });
});

describe('how many tell the average', () => {
  // n0 = (z s / e)² with z = 1.645, s = 1 and e = 1, so 2.7 of an endless stack; Cochran (1977), section 4.6, from memory.
  test('from the spread between its probed boards', () => {
    const boards = [11, 12, 13].map((pct) => board('keep-drying', pct));
    const { toKnowMean } = planStack([...boards, ...many(97, null, 12)], endUse, 0.9);
    expect(toKnowMean).toEqual({ boards: 3, marginPct: 1, spreadPct: 1 });
  });
});

test('a stack without boards has no plan', () => {
  expect(() => planStack([], endUse, 0.9)).toThrow(RangeError);
});
