import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import {
  type BoardStanding,
  planStack,
  stackPlanSchema,
} from '../../../shared-core/probing/plan/stack-plan.ts';
import { message } from '../../../shared-core/words/message.ts';
import { codesOf, expectWhole } from '../words/in-english.ts';

const endUse = {
  id: 'furniture',
  name: 'furniture',
  minPct: 6,
  maxPct: 8,
  maxShellCorePct: 2,
  note: '',
  source: '',
};
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
    latest: call && { call, reason: message('call.likely', { likelyInterval: { minPct: 5, maxPct: 9 } }) },
    today: averagePct === null ? null : { averagePct, standardUncertaintyPct: 0.5 },
    ...changes,
  };
};
const many = (count: number, call: Call | null, averagePct: number | null): BoardStanding[] =>
  Array.from({ length: count }, () => board(call, averagePct));

test('more certainty needs more boards', () => {
  const boards = many(60, null, null);
  const plan = planStack(boards, endUse, 0.95);
  expect(stackPlanSchema.parse(plan)).toEqual(plan);
  expect(plan.toKnowReady).toBeGreaterThan(planStack(boards, endUse, 0.8).toKnowReady);
});

describe('at the edges', () => {
  test('a stack of one board takes one', () => {
    const plan = planStack([board('ready', 7)], endUse, 0.99);
    expect(plan).toMatchObject({ toKnowReady: 1, toKnowMean: { boards: 1 } });
  });

  test('all probed and surely ready: nothing is left to probe', () => {
    const sure = { today: { averagePct: 7, standardUncertaintyPct: 0.2 } };
    const boards = Array.from({ length: 30 }, () => board('ready', 7, sure));
    const plan = planStack(boards, endUse, 0.999);
    expect(plan.next).toEqual([]);
  });

  test('boards as unlike as wood can be: its average takes all of them', () => {
    const boards = [2, 390, 3, 400].map((pct) => board('keep-drying', pct));
    expect(planStack(boards, endUse, 0.9).toKnowMean.boards).toBe(4);
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
    expect(next[1]!.why).toEqual(
      message('stack-plan.next.near-limit', { averagePct: 8.2, errorPoints: 0.5, limitPct: 8 }),
    );
  });

  test('those to be probed again come before, however far from a limit, each with the reason of its call', () => {
    const near = board('keep-drying', 8.2);
    const toProbe = many(4, 'probe-again', 14);
    const { next } = planStack([near, ...many(4, 'keep-drying', 14), ...toProbe], endUse, 0.5);
    expect(next.map(({ boardId }) => boardId)).toEqual(toProbe.map(({ boardId }) => boardId));
    expect(next[0]!.why).toEqual(toProbe[0]!.latest!.reason);
  });

  test('of a stack of which nothing is known, boards all through it, as many as it takes', () => {
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

test('every sentence of a plan is whole', () => {
  const stacks = [
    many(60, null, null),
    many(2, 'ready', 7).concat(many(58, null, 8)),
    many(3, 'probe-again', 8.5),
    many(3, 'keep-drying', 8.5),
  ];
  const messages = stacks.flatMap((boards) => planStack(boards, endUse, 0.9).next.map(({ why }) => why));
  expect([...codesOf(messages)].sort()).toEqual([
    'call.likely',
    'stack-plan.next.near-limit',
    'stack-plan.next.never-probed',
    'stack-plan.next.nothing-known',
  ]);
  expectWhole(messages);
});
