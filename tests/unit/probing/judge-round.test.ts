import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import { judgeRound } from '../../../shared-core/probing/suspicions/judge-round.ts';
import { evidence, lastRound, readings, rules, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, airTempC: 15 } as const;
const BEFORE = '2026-05-06T10:00:00Z';

/** Last round's shell and core of six boards, none like another. */
const SIX: [number, number][] = [
  [15, 18],
  [16, 21],
  [14.5, 17],
  [17, 23],
  [15.5, 20],
  [16.5, 22],
];

function boardOf([shell, core]: [number, number], now: { shell: number; core: number }) {
  return evidence(readings([now.shell, now.shell + 0.2], [now.core, now.core + 0.2]), {
    place: shed,
    previous: { ...lastRound(shell, core, BEFORE), moved: false },
  });
}

/** The boards as they should read now, moved by what a fault adds to each board's shell and core. */
function round(offOf: (board: number) => { shell: number; core: number }) {
  return SIX.map((before, index) => {
    const should = expectationNow(boardOf(before, { shell: 10, core: 10 }), TAKEN_AT)!;
    const off = offOf(index);
    const now = { shell: should.shell.pct + off.shell, core: should.core.pct + off.core };
    return { code: `ASH-0${index + 1}`, evidence: boardOf(before, now) };
  });
}
const sound = { shell: 0, core: 0 };
const rulesOf = (boards: ReturnType<typeof round>) => judgeRound(boards).map((each) => rules(each.readings));

test('a sound round raises no doubt, and judging it together is judging each board', () => {
  const boards = round(() => sound);
  expect(rulesOf(boards).flat(2)).toEqual([]);
  expect(judgeRound(boards)).toEqual(boards.map((each) => judgeBoard(each.evidence)));
});

test('two boards taken for each other are both named', () => {
  const boards = round(() => sound);
  const [second, third] = [boards[1]!.evidence, boards[2]!.evidence];
  boards[1] = { ...boards[1]!, evidence: { ...second, readings: third.readings } };
  boards[2] = { ...boards[2]!, evidence: { ...third, readings: second.readings } };
  const judged = judgeRound(boards);
  const said = (index: number) =>
    judged[index]!.readings[1]!.suspicions.find((each) => each.rule === 'apart-from-stack')?.whatToDo;
  expect(said(1)).toContain('ASH-03');
  expect(said(2)).toContain('ASH-02');
  expect([0, 3, 4, 5].flatMap((index) => rules(judged[index]!.readings).flat())).toEqual([]);
});

test('a core that reads too dry against its stack: the pins may not have been in far enough', () => {
  const judged = judgeRound(round((board) => (board === 3 ? { shell: 0, core: -4 } : sound)));
  const cores = judged[3]!.readings.filter((each) => each.spot.depth === 'core');
  for (const core of cores)
    expect(core.suspicions.find((each) => each.rule === 'apart-from-stack')?.whatToDo).toContain(
      'far enough',
    );
  expect(rules(judged[3]!.readings.filter((each) => each.spot.depth === 'shell')).flat()).toEqual([]);
});

test('readings that run away along the walk: the meter drifts', () => {
  const found = rulesOf(round((board) => ({ shell: 1.2 * board, core: 1.2 * board })));
  expect(found[5]!.every((each) => each.includes('meter-drift'))).toBe(true);
  expect(found[0]!.flat()).not.toContain('meter-drift');
});

test('a whole round that is off', () => {
  const found = rulesOf(round(() => ({ shell: 5, core: 5 })));
  expect(found.every((board) => board.every((each) => each.includes('round-off')))).toBe(true);
  expect(found.flat(2)).not.toContain('apart-from-stack');
});

test('a doubt from the round holds back a good call', () => {
  const endUse = { ...round(() => sound)[0]!.evidence.endUse, minPct: 0, maxPct: 40, maxShellCorePct: 30 };
  const boards = round((board) => ({ shell: 1.2 * board, core: 1.2 * board })).map((each) => ({
    ...each,
    evidence: { ...each.evidence, endUse },
  }));
  expect(judgeBoard(boards[2]!.evidence).call.call).toBe('ready');
  const { call } = judgeRound(boards)[2]!;
  expect(call.call).toBe('probe-again');
  expect(call.reasons.join(' ')).toContain('the readings ran away by 6');
});

describe('boards that cannot speak for a round', () => {
  test('fewer than five say nothing', () => {
    expect(rulesOf(round(() => ({ shell: 5, core: 5 })).slice(0, 4)).flat(2)).not.toContain('round-off');
  });

  test('nor do boards without a last round', () => {
    const boards = round(() => ({ shell: 5, core: 5 })).map((each) => ({
      ...each,
      evidence: { ...each.evidence, previous: null },
    }));
    const found = rulesOf(boards).flat(2);
    for (const rule of ['round-off', 'meter-drift', 'apart-from-stack']) expect(found).not.toContain(rule);
  });
});
