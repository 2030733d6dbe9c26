import { describe, expect, test } from 'vitest';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { type NextStep, nextStepByCall } from '../../../shared-core/probing/calls/next-step.ts';
import {
  type BoardStanding,
  planStack,
  stackPlanSchema,
} from '../../../shared-core/probing/plan/stack-plan.ts';
import { message } from '../../../shared-core/words/message.ts';
import { codesOf, expectWhole, inEnglish } from '../words/in-english.ts';

const endUse = {
  id: 'furniture',
  name: 'furniture',
  minPct: 6,
  maxPct: 8,
  tolerancePoints: 2,
  minIsAdvice: false,
  maxShellCorePct: 2,
  cautions: [],
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
    latest: call && {
      call,
      reason: message('call.likely', { likelyInterval: { minPct: 5, maxPct: 9 } }),
      averagePct,
    },
    next: nextStepByCall(call),
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

test('a board with spots still to be read is the first to probe, and counts as none that was probed', () => {
  const half = board(null, null, {
    latest: { call: null, reason: message('call.half-read', { read: 1, planned: 4 }), averagePct: 9 },
    next: nextStepByCall(null, { read: 1, planned: 4 }),
  });
  const plan = planStack([...many(3, 'keep-drying', 12), half], endUse, 0.9);
  expect(plan).toMatchObject({ probed: 3, allProbed: null });
  expect(plan.next[0]).toEqual({
    boardId: half.boardId,
    code: half.code,
    call: null,
    why: message('next-step.half-probed', { spots: 3 }),
  });
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
  const due = (kind: 'should-be-ready' | 'could-change-call'): NextStep => ({
    step: 'probe',
    due: kind,
    why: message('forecast.probe.decides'),
  });

  test('those whose own next step it is, the most urgent first, each with its reason', () => {
    const waiting = board('keep-drying', 8.2);
    const toProbe = board('probe-again', 14);
    const unsure = board('keep-drying', 9, { next: due('could-change-call') });
    const turned = board('keep-drying', 8, { next: due('should-be-ready') });
    const { next } = planStack([waiting, unsure, toProbe, turned], endUse, 0.9);
    expect(next.map(({ boardId }) => boardId)).toEqual(
      [turned, toProbe, unsure].map(({ boardId }) => boardId),
    );
    expect(next.map(({ why }) => why)).toEqual([
      message('forecast.probe.decides'),
      toProbe.latest!.reason,
      message('forecast.probe.decides'),
    ]);
  });

  test('then those never probed, the nearest to a limit first, as many as are lacking', () => {
    const probed = many(1, 'keep-drying', 14);
    const near = board(null, 8.2);
    const far = board(null, 14);
    const unsure = board(null, 9, { today: { averagePct: 9, standardUncertaintyPct: 3 } });
    const { next } = planStack([...probed, far, near, unsure], endUse, 0.9);
    expect(next.map(({ boardId }) => boardId)).toEqual([unsure.boardId, near.boardId]);
    expect(next[1]!.why).toEqual(
      message('stack-plan.next.never-probed', { averagePct: 8.2, errorPoints: 0.5, limitPct: 8 }),
    );
  });

  test('no more of a stack that is known to be ready', () => {
    const boards = [...many(20, 'ready', 7), ...many(40, null, 8)];
    expect(planStack(boards, endUse, 0.9).next).toEqual([]);
  });

  test('where none is due, the day on which one will be', () => {
    const waits = (day: number): NextStep => ({
      step: 'wait',
      due: null,
      probeMs: Date.UTC(2026, 11, day),
      why: null,
    });
    const boards = [10, 3].map((day) => board('keep-drying', 14, { next: waits(day) }));
    expect(planStack(boards, endUse, 0.9)).toMatchObject({
      next: [],
      whyNone: message('stack-plan.next.none-until', { probeOn: '2026-12-03T00:00:00.000Z' }),
    });
    expect(planStack(many(2, 'ready', 7), endUse, 0.9).whyNone).toEqual(message('stack-plan.next.none'));
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

describe('a stack of which every board was probed', () => {
  test('says its average, the range of its boards and how many are ready', () => {
    const boards = [board('ready', 7), board('keep-drying', 9.5), board('keep-drying', 9)];
    expect(inEnglish(planStack(boards, endUse, 0.9).allProbed!)).toBe(
      'All 3 are probed. Average 8.5%, boards 7.0–9.5%. 1 ready.',
    );
    expect(planStack([...boards, board(null, 9)], endUse, 0.9).allProbed).toBeNull();
  });

  test('does not call a board questionable whose shell alone was read', () => {
    const shellAlone = board('keep-drying', null);
    expect(inEnglish(planStack([board('ready', 7), shellAlone], endUse, 0.9).allProbed!)).not.toContain(
      'questionable',
    );
  });

  test('leaves out an average that cannot be relied on', () => {
    const questionable = board('probe-again', null);
    expect(inEnglish(planStack([board('ready', 7), questionable], endUse, 0.9).allProbed!)).toBe(
      'Both are probed. Average 7.0% (1 board has no reliable average). 1 ready.',
    );
    expect(inEnglish(planStack([questionable], endUse, 0.9).allProbed!)).toBe(
      'The board is probed. No reliable average. It is not ready.',
    );
  });
});

describe('how many tell the average', () => {
  // n0 = (z s / e)² with z = 1.645, s = 1 and e = 1, so 2.7 of an endless stack; Cochran (1977), section 4.6, from memory.
  test('from the spread between its probed boards', () => {
    const boards = [11, 12, 13].map((pct) => board('keep-drying', pct));
    const { toKnowMean } = planStack([...boards, ...many(97, null, 12)], endUse, 0.9);
    // Student's t on 2 degrees, 2.92: 8.5 boards of very many, 7.9 of 100.
    expect(toKnowMean).toEqual({ boards: 8, marginPct: 1, spreadPct: 1 });
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
  const messages = stacks.flatMap((boards) => {
    const { next, whyNone, allProbed } = planStack(boards, endUse, 0.9);
    return [...next.map(({ why }) => why), whyNone, ...[allProbed ?? []].flat()];
  });
  expect([...codesOf(messages)].sort()).toEqual([
    'call.likely',
    'stack-plan.all-probed',
    'stack-plan.next.never-probed',
    'stack-plan.next.none',
    'stack-plan.next.nothing-known',
  ]);
  expectWhole(messages);
});
