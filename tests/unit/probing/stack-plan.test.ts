import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { boardsForNoneWet } from '../../../shared-core/probing/plan/sample-size.ts';
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
    expect(plan).toMatchObject({
      call: 'ready',
      reasons: [message('stack-plan.all-ready', { probed: enough, certaintyPct: 90, oneIn: 10 })],
    });
  });

  test('one board fewer, and it is to be probed again, by one more', () => {
    const enough = boardsForNoneWet(60, 0.1, 0.9);
    const { call, reasons } = planStack(
      [...many(enough - 1, 'ready', 7), ...many(61 - enough, null, 7)],
      endUse,
      0.9,
    );
    expect(call).toBe('probe-again');
    expect(reasons).toEqual([
      message('stack-plan.ready-so-far', { probed: enough - 1, more: 1, certaintyPct: 90, oneIn: 10 }),
    ]);
  });

  test('more certainty needs more boards', () => {
    const boards = many(60, null, null);
    expect(planStack(boards, endUse, 0.95).toKnowReady).toBeGreaterThan(
      planStack(boards, endUse, 0.8).toKnowReady,
    );
  });

  test('nothing probed: probe, and how many', () => {
    const { call, reasons, toKnowReady } = planStack(many(60, null, null), endUse, 0.9);
    expect(call).toBe('probe-again');
    expect(reasons).toEqual([
      message('stack-plan.probe-so-many', { boards: toKnowReady, certaintyPct: 90, oneIn: 10 }),
    ]);
  });

  test('the call of most of its boards, and which are ready to use', () => {
    const { call, reasons } = planStack(
      [
        ...many(5, 'bring-in', 12),
        ...many(2, 'keep-drying', 15),
        ...many(1, 'ready', 7),
        ...many(1, null, 12),
      ],
      endUse,
      0.9,
    );
    expect(call).toBe('bring-in');
    expect(reasons).toEqual([
      message('stack-plan.some.bring-in', { boards: 5, probed: 8 }),
      // (5 × 12 + 2 × 15) / 7
      message('stack-plan.average', {
        averagePct: expect.closeTo(12.857, 3),
        targetRange: { minPct: 6, maxPct: 8 },
      }),
      message('stack-plan.ready-to-use', { boards: 1 }),
      message('stack-plan.not-probed', { boards: 1 }),
    ]);
  });

  test('boards that should have become ready since they were probed are to be probed, not left drying', () => {
    const turned = Array.from({ length: 3 }, () => board('keep-drying', 7.4, { probabilityReady: 0.8 }));
    const { call, reasons } = planStack(
      [...turned, board('keep-drying', 9, { probabilityReady: 0.1 })],
      endUse,
      0.9,
    );
    expect(call).toBe('probe-again');
    expect(reasons).toEqual([message('stack-plan.should-be-ready', { boards: 3 })]);
  });
});

describe('at the edges', () => {
  test('boards found ready that by the forecast no longer are: they are to be probed, the stack is not ready', () => {
    const boards = [...many(20, 'ready', 7), board('ready', 9.5, { probabilityReady: 0.1 })];
    const { call, reasons } = planStack(boards, endUse, 0.9);
    expect(call).toBe('probe-again');
    expect(reasons).toEqual([message('stack-plan.may-not-be-ready', { boards: 1 })]);
  });

  test('a stack of one board takes one, and is ready when it is', () => {
    const plan = planStack([board('ready', 7)], endUse, 0.99);
    expect(plan).toMatchObject({ toKnowReady: 1, toKnowMean: { boards: 1 }, call: 'ready' });
  });

  test('all probed and surely ready: nothing is left to probe', () => {
    const sure = { today: { averagePct: 7, standardUncertaintyPct: 0.2 } };
    const boards = Array.from({ length: 30 }, () => board('ready', 7, sure));
    const plan = planStack(boards, endUse, 0.999);
    expect(plan.call).toBe('ready');
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
  const gone = { probabilityReady: 0.1 };
  const turned = { probabilityReady: 0.9 };
  const stacks = [
    many(60, null, null),
    many(20, 'ready', 7),
    many(2, 'ready', 7).concat(many(58, null, 8)),
    [board('ready', 9, gone)],
    [board('keep-drying', 7, turned)],
    ...(['keep-drying', 'bring-in', 'probe-again'] as const).flatMap((call) => [
      many(3, call, 8.5),
      [...many(3, call, null), ...many(1, 'ready', 7), ...many(1, null, 8)],
    ]),
  ];
  const messages = stacks.flatMap((boards) => {
    const { reasons, next } = planStack(boards, endUse, 0.9);
    return [...reasons, ...next.map(({ why }) => why)];
  });
  expect([...codesOf(messages)].sort()).toEqual([
    'call.likely',
    'stack-plan.all-ready',
    'stack-plan.all.bring-in',
    'stack-plan.all.keep-drying',
    'stack-plan.all.probe-again',
    'stack-plan.average',
    'stack-plan.may-not-be-ready',
    'stack-plan.next.near-limit',
    'stack-plan.next.never-probed',
    'stack-plan.next.nothing-known',
    'stack-plan.not-probed',
    'stack-plan.probe-so-many',
    'stack-plan.ready-so-far',
    'stack-plan.ready-to-use',
    'stack-plan.should-be-ready',
    'stack-plan.some.bring-in',
    'stack-plan.some.keep-drying',
    'stack-plan.some.probe-again',
    'stack-plan.target',
  ]);
  expectWhole(messages);
});
