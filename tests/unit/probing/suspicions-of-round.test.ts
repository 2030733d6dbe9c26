import { describe, expect, test } from 'vitest';
import { judgeBoard } from '../../../shared-core/probing/calls/call.ts';
import { suspicionsOfRound } from '../../../shared-core/probing/calls/suspicions-of-round.ts';
import { message } from '../../../shared-core/words/message.ts';
import { rules } from './a-board.ts';
import { judgeRound, round, roundByAverage, sound } from './a-round.ts';
import { board, coded, elm, stack } from './a-stack.ts';

const rulesOf = (boards: ReturnType<typeof round>) => judgeRound(boards).map((each) => rules(each.readings));

test('a sound round raises no suspicion, and judging it together is judging each board', () => {
  const boards = round(() => sound);
  expect(rulesOf(boards).flat(2)).toEqual([]);
  expect(judgeRound(boards)).toEqual(boards.map((each) => judgeBoard(each.evidence)));
});

test('two boards mixed up are both named', () => {
  const boards = round(() => sound);
  const [second, third] = [boards[1]!.evidence, boards[2]!.evidence];
  boards[1] = { ...boards[1]!, evidence: { ...second, readings: third.readings } };
  boards[2] = { ...boards[2]!, evidence: { ...third, readings: second.readings } };
  const judged = judgeRound(boards);
  const remedy = (index: number) =>
    judged[index]!.readings[1]!.suspicions.find((each) => each.rule === 'apart-from-stack')?.whatToDo;
  const swappedWith = (otherCode: string) => message('suspicion.apart-from-stack.swapped.do', { otherCode });
  expect(remedy(1)).toEqual(swappedWith('ASH-03'));
  expect(remedy(2)).toEqual(swappedWith('ASH-02'));
  expect([0, 3, 4, 5].flatMap((index) => rules(judged[index]!.readings).flat())).toEqual([]);
});

test('a core that reads too dry against its stack: the pins may not have been deep enough', () => {
  const judged = judgeRound(round((board) => (board === 3 ? { shell: 0, core: -4.5 } : sound)));
  const cores = judged[3]!.readings.filter((each) => each.spot.depth === 'core');
  for (const core of cores)
    expect(core.suspicions.find((each) => each.rule === 'apart-from-stack')?.whatToDo).toEqual(
      message('suspicion.apart-from-stack.dry-core.do'),
    );
  expect(rules(judged[3]!.readings.filter((each) => each.spot.depth === 'shell')).flat()).toEqual([]);
});

test('readings that drift along the walk: the meter drifts', () => {
  const found = rulesOf(round((board) => ({ shell: 1.2 * board, core: 1.2 * board })));
  expect(found[5]!.every((each) => each.includes('meter-drift'))).toBe(true);
  expect(found[0]!.flat()).not.toContain('meter-drift');
});

test('a whole round that is off', () => {
  const found = rulesOf(round(() => ({ shell: 5, core: 5 })));
  expect(found.every((board) => board.every((each) => each.includes('round-off')))).toBe(true);
  expect(found.flat(2)).not.toContain('apart-from-stack');
});

test('a suspicion from the round holds back a good call', () => {
  const endUse = { ...round(() => sound)[0]!.evidence.endUse, minPct: 0, maxPct: 40, maxShellCorePct: 30 };
  const boards = round((board) => ({ shell: 1.2 * board, core: 1.2 * board })).map((each) => ({
    ...each,
    evidence: { ...each.evidence, endUse },
  }));
  expect(judgeBoard(boards[2]!.evidence).call).toBe('ready');
  const { call, reasons } = judgeRound(boards)[2]!;
  expect(call).toBe('probe-again');
  // Five steps of 1.2.
  expect(reasons).toContainEqual(
    message('suspicion.meter-drift', { driftPoints: expect.closeTo(6, 0), direction: 'higher' }),
  );
});

describe('boards read by their average alone', () => {
  test('a sound round raises no suspicion', () => {
    expect(rulesOf(roundByAverage(() => 0)).flat(2)).toEqual([]);
  });

  test('two that were mixed up are both named', () => {
    const boards = roundByAverage(() => 0);
    const [third, fourth] = [boards[2]!.evidence, boards[3]!.evidence];
    boards[2] = { ...boards[2]!, evidence: { ...third, readings: fourth.readings } };
    boards[3] = { ...boards[3]!, evidence: { ...fourth, readings: third.readings } };
    const judged = judgeRound(boards);
    const remedies = judged.map(
      (each) => each.readings[1]!.suspicions.find(({ rule }) => rule === 'apart-from-stack')?.whatToDo,
    );
    expect(remedies[2]).toEqual(message('suspicion.apart-from-stack.swapped.do', { otherCode: 'ASH-04' }));
    expect(remedies[3]).toEqual(message('suspicion.apart-from-stack.swapped.do', { otherCode: 'ASH-03' }));
    expect([0, 1, 4, 5].flatMap((index) => rules(judged[index]!.readings).flat())).toEqual([]);
  });

  test('one that changed otherwise than its stack is questionable', () => {
    const found = rulesOf(roundByAverage((board) => (board === 4 ? -4 : 0)));
    expect(found.map((board) => board.every((each) => each.includes('apart-from-stack')))).toEqual([
      false,
      false,
      false,
      false,
      true,
      false,
    ]);
  });

  test('a meter that drifts along the walk, or is off for the whole round, is found', () => {
    const drifting = rulesOf(roundByAverage((board) => 1.2 * board));
    expect(drifting[5]!.every((each) => each.includes('meter-drift'))).toBe(true);
    const off = rulesOf(roundByAverage(() => 5));
    expect(off.every((board) => board.every((each) => each.includes('round-off')))).toBe(true);
  });
});

describe('boards that cannot speak for a round', () => {
  test('fewer than five say nothing', () => {
    expect(rulesOf(round(() => ({ shell: 5, core: 5 })).slice(0, 4)).flat(2)).not.toContain('round-off');
  });

  test('boards without a last round say nothing', () => {
    const boards = round(() => ({ shell: 5, core: 5 })).map((each) => ({
      ...each,
      evidence: { ...each.evidence, previous: null },
    }));
    const found = rulesOf(boards).flat(2);
    for (const rule of ['round-off', 'meter-drift', 'apart-from-stack']) expect(found).not.toContain(rule);
  });
});

test('a board without readings says nothing, and nothing is said of it', () => {
  const boards = round(() => sound);
  boards[1] = { ...boards[1]!, evidence: { ...boards[1]!.evidence, readings: [] } };
  expect(suspicionsOfRound(boards)).toEqual(boards.map(() => []));
});

describe('a board that is apart from its stack and may be another species', () => {
  const elmBefore = { shell: 14.6, core: 17.3 };
  const of = (now: { shell: number; core: number }) =>
    suspicionsOfRound(coded([...stack, board(elmBefore, now, elm)]))[6]!.map(({ depth, suspicion }) => [
      depth,
      suspicion.rule,
    ]);

  test('by its core alone: only its species is questioned', () => {
    expect(of({ shell: 17, core: 14 })).toEqual([[null, 'species-unlike-stack']]);
  });

  test('by all of it: it may have been mixed up, and its species is not questioned', () => {
    expect(of({ shell: 13, core: 16 })).toEqual([[null, 'apart-from-stack']]);
  });

  test('on a walk on which the meter drifted: its species is questioned, and the drift is said of it too', () => {
    const walked = stack.toSpliced(2, 0, board(elmBefore, { shell: 17, core: 16 }, elm));
    const drifted = walked.map((each, index) => ({
      ...each,
      readings: each.readings.map((one) => ({ ...one, raw: one.raw + 0.5 * index })),
    }));
    const found = suspicionsOfRound(coded(drifted))[2]!;
    expect(found.map(({ depth, suspicion }) => [depth, suspicion.rule])).toEqual([
      [null, 'meter-drift'],
      [null, 'species-unlike-stack'],
    ]);
  });
});
