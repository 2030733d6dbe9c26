/** What a board's readings say against each other and against the last round; the allowances are common practice, no source. */
import { describe, expect, test } from 'vitest';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { Reading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { boardSuspicions } from '../../../shared-core/probing/suspicions/board-suspicions.ts';
import { averages, evidence, lastRound, reading, readings, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 10, month: 5 } as const;

const found = (of: Reading[], more: Partial<BoardEvidence> = {}) =>
  boardSuspicions(
    of.map((each, index) => ({ index, reading: each, mcPct: each.raw })),
    evidence(of, more),
  );
/** The rules that fired on each reading. */
const rulesOn = (of: Reading[], more: Partial<BoardEvidence> = {}): string[] => {
  const byIndex = found(of, more);
  return of.map((_, index) => (byIndex.get(index) ?? []).map(({ rule }) => rule).join(' '));
};
const firstOf = (byIndex: Map<number, Suspicion[]>, index: number): Suspicion => byIndex.get(index)![0]!;

test.each([
  ['a board without readings', [], {}],
  ['a single one', readings([8], []), {}],
  ['a pair', readings([8.1], [8.6]), {}],
  ['sound readings', readings([8.1, 8.4], [8.6, 8.9]), {}],
  ['four equal ones by two units', [...readings([8, 8], [8]), reading(4, 'core', 8, { unit: 'ohm' })], {}],
  [
    'those of a last round that read another depth',
    averages([8.1, 8.4]),
    { previous: lastRound(8, 9, TAKEN_AT) },
  ],
  ['those of a last round alike', readings([8.1], [8.6]), { previous: lastRound(8, 9, TAKEN_AT) }],
  ['a damper shell in air that is not dry enough', readings([9], [8]), { place: shed }],
] as const)('nothing speaks against %s', (_, of, more) => {
  expect([...found([...of], more as Partial<BoardEvidence>)]).toEqual([]);
});

describe('readings of one depth', () => {
  // 3.5 scores of half a point in dry wood.
  test('one of three may be 1.75 points from the middle one', () => {
    expect(rulesOn(readings([8, 8, 9.75], []))).toEqual(['', '', '']);
    expect(rulesOn(readings([8, 8, 9.8], []))).toEqual(['', '', 'outlier-on-board']);
    expect(firstOf(found(readings([8, 8, 9.8], [])), 2).severity).toBe('questionable');
  });

  // 3.4 standard deviations of a difference, half a point each: 2.4 points.
  test('two may be 2.4 points apart', () => {
    expect(rulesOn(readings([8, 10.4], []))).toEqual(['', '']);
    expect(rulesOn(readings([8, 10.5], []))).toEqual(['outlier-on-board', 'outlier-on-board']);
  });

  test('of two that disagree, the one that something else speaks against, whatever is said of other depths', () => {
    const previous = lastRound(8, 8.7, TAKEN_AT);
    const rules = rulesOn(readings([13.1, 13.4], [8.6, 13.6]), { previous });
    expect(rules.slice(0, 2).every((each) => each.includes('jump-since-last-round'))).toBe(true);
    expect(rules.slice(2)).toEqual(['', 'jump-since-last-round outlier-on-board']);
  });
});

describe('a shell above the core', () => {
  // Three and three: 3.4 standard deviations of half a point, by √(2/3), are 1.4 points.
  test('of three readings each may be 1.4 points above it', () => {
    const dry = { place: { ...shed, emcPct: 5 } };
    expect(rulesOn(readings([9.2, 9.3, 9.4], [8, 8.1, 7.9]), dry)).toEqual(Array(6).fill(''));
    expect(rulesOn(readings([9.4, 9.5, 9.6], [8, 8.1, 7.9]), dry)).toEqual([
      ...Array(3).fill('shell-above-core'),
      ...Array(3).fill(''),
    ]);
  });

  test('only those readings of it that are above it are questionable', () => {
    const dry = { place: { ...shed, emcPct: 5 } };
    const wet = found(readings([13.8, 14, 9.9, 14.2, 10], [10, 10, 10]), dry);
    const accused = [...wet].filter(([, each]) => each.some(({ rule }) => rule === 'shell-above-core'));
    expect(accused.map(([index]) => index)).toEqual([0, 1, 3]);
    expect(firstOf(wet, 0).severity).toBe('questionable');
  });

  // A point above its air, twice the scatter of dry wood, a core dries.
  test.each([
    [11, ''],
    [11.1, 'shell-above-core'],
    [12, 'shell-above-core'],
  ])('over a core of %d%% in air of 10%%: %j', (core, rule) => {
    const rules = rulesOn(readings([14, 14.1], [core, core]), { place: shed });
    expect(rules).toEqual([rule, rule, '', '']);
  });

  // Three damp spells of a shed, 1.5 points each, above its air.
  test('over a core in balance is rain from 4.5 points above the air on', () => {
    const at = (shell: number) => found(readings([shell, shell + 0.1], [10, 10.1]), { place: shed });
    expect([...at(14.4)]).toEqual([]);
    expect([...at(14.5).keys()]).toEqual([0, 1]);
    expect(firstOf(at(14.5), 0)).toMatchObject({ rule: 'rained-on', severity: 'questionable' });
  });

  test('at one spot of three is a wet face', () => {
    const wet = found(readings([15, 15.4, 22], [17, 17.4]), { place: shed });
    expect([...wet.keys()]).toEqual([2]);
    expect(firstOf(wet, 2)).toMatchObject({ rule: 'surface-wet', severity: 'questionable' });
  });
});

// 3.2 standard deviations of half a point from spot to spot (two spots then) and 0.35 between rounds: one of four may be
// 2.3 points off, their mean 1.8. In the shop a shell of 8 % may have gone up to 11.
describe('against the last round on the same day', () => {
  const core = (...values: number[]) =>
    rulesOn(readings([], values), { previous: lastRound(12, 12, TAKEN_AT) });
  const shell = (...values: number[]) =>
    rulesOn(readings(values, []), { previous: lastRound(8, 12, '2026-05-06T10:00:00Z') });
  const jump = 'jump-since-last-round';

  test('four that are lower together jump; not the one that is hardly off', () => {
    expect(core(9.9, 9.95, 9.85, 10.4)).toEqual([jump, jump, jump, '']);
    expect(core(10.4, 10.45, 10.35, 10.5)).toEqual(['', '', '', '']);
  });

  test('four that are higher together jump; not the one that is hardly off', () => {
    expect(shell(13.1, 13.15, 13.05, 12.7)).toEqual([jump, jump, jump, '']);
    expect(shell(12.5, 12.6, 12.7, 12.65)).toEqual(['', '', '', '']);
  });

  test('one that is lower or higher by itself jumps, and the others do not', () => {
    expect(core(12, 12.1, 11.9, 9.6)[3]).toContain(jump);
    expect(core(12, 12.1, 11.9, 9.6).slice(0, 3)).toEqual(['', '', '']);
    expect(core(12, 12.1, 11.9, 14.4)[3]).toContain(jump);
    expect(core(12, 12.1, 11.9, 14.2)[3]).not.toContain(jump);
    expect(core(12, 12.1, 11.9, 9.8)[3]).not.toContain(jump);
  });

  test('each depth is compared with what was found at it', () => {
    const facts = (of: Reading[], index = 0) =>
      firstOf(found(of, { previous: lastRound(8, 10, '2026-05-06T10:00:00Z') }), index).why.facts;
    expect(facts(readings([15, 15.1], []))).toMatchObject({ depth: 'shell', beforePct: 8 });
    expect(facts(readings([], [15, 15.1]))).toMatchObject({ depth: 'core', beforePct: 10 });
    expect(facts(averages([15, 15.1]))).toMatchObject({ depth: 'average', beforePct: 9 });
  });

  test('whole days are told, and none of a few hours', () => {
    const days = (takenAt: string) =>
      firstOf(found(readings([], [20, 20.1]), { previous: lastRound(12, 12, takenAt) }), 0).why.facts?.days;
    expect(days('2026-05-19T12:00:00Z')).toBe(0);
    expect(days('2026-05-19T10:00:00Z')).toBe(1);
    expect(days('2026-05-18T20:00:00Z')).toBe(2);
  });
});

describe('of a board that stayed', () => {
  const stayed = { ...lastRound(16, 22, '2026-05-09T10:00:00Z'), moved: false };
  const board = { thicknessMm: 52, lengthMm: 3000 };
  const place = { ...shed, emcPct: 13 };
  const on = (moved: boolean, ...values: number[]) =>
    rulesOn(readings([], values), { board, place, previous: { ...stayed, moved } });

  test('a core that should have dried must not have stayed as wet as it can be', () => {
    expect(on(false, 24.5, 24.6)).toEqual(Array(2).fill('jump-since-last-round'));
    expect(on(true, 24.5, 24.6)).toEqual(['', '']);
    expect(on(false, 21, 21.2)).toEqual(['', '']);
  });
});
