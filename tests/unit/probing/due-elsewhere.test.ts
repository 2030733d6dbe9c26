import { describe, expect, test } from 'vitest';
import {
  type PlaceElsewhere,
  toProbeThere,
  withElsewhere,
} from '../../../shared-core/probing/plan/due-elsewhere.ts';
import type { StackDue } from '../../../shared-core/probing/plan/stack-call.ts';
import { message } from '../../../shared-core/words/message.ts';
import { inEnglish } from '../words/in-english.ts';

describe('of the boards of a stack in another place are to be probed', () => {
  test('before any has a call: as many as a first round reads', () => {
    // Hypergeometric: of 60, 16 found ready leave no more than 1 in 10 wet at 90 % (see boardsForNoneWet).
    const unread = [
      { boards: 40, isCalled: false, due: 'first-round' as const },
      { boards: 20, isCalled: false, due: null },
    ];
    expect(toProbeThere(unread)).toBe(16);
    expect(toProbeThere([{ boards: 3, isCalled: false, due: 'first-round' }])).toBe(3);
  });

  test.each([
    'should-be-ready',
    'probe-again',
    'may-not-be-ready',
    'could-change-call',
    'learns-rate',
  ] as const)('once one has a call: those with a call that are due as "%s"', (due) => {
    const groups = [
      { boards: 2, isCalled: true, due },
      { boards: 5, isCalled: true, due: null },
      { boards: 30, isCalled: false, due },
      { boards: 40, isCalled: false, due: 'first-round' as const },
    ];
    expect(toProbeThere(groups)).toBe(2);
    expect(toProbeThere([...groups, { boards: 3, isCalled: true, due }])).toBe(5);
  });

  test.each(['bring-in', 'move-back', 'move-later', 'add-place', null] as const)(
    'none of those with a call that are due as "%s"',
    (due) => {
      expect(toProbeThere([{ boards: 2, isCalled: true, due }])).toBe(0);
    },
  );
});

describe('a stack with boards in other places', () => {
  const due: StackDue = { kind: 'bring-in', why: message('stack-call.not-probed-yet') };
  const there = (placeId: number, placeName: string, toProbe: number): PlaceElsewhere => ({
    placeId,
    placeName,
    boards: 4,
    toProbe,
  });

  test('is due for what it is due for where it is, where none of them is to be probed', () => {
    expect(withElsewhere(due, [there(2, 'Bench room', 0)])).toBe(due);
    expect(withElsewhere(null, [there(2, 'Bench room', 0)])).toBeNull();
    expect(withElsewhere(null, [])).toBeNull();
  });

  test('names the places with boards to probe after what it is due for itself', () => {
    const both = withElsewhere(due, [there(2, 'Loft', 0), there(3, 'Bench room', 2), there(4, 'Shop', 1)])!;
    expect(both.kind).toBe('bring-in');
    expect(both.placeId).toBeUndefined();
    expect(inEnglish(both.why)).toBe(
      `${inEnglish(due.why)} 2 boards to probe in Bench room. 1 board to probe in Shop.`,
    );
  });

  test('is to be probed in the first of these places where it is due for nothing itself', () => {
    const { why, ...rest } = withElsewhere(null, [
      there(2, 'Loft', 0),
      there(3, 'Bench room', 2),
      there(4, 'Shop', 1),
    ])!;
    expect(rest).toEqual({ kind: 'probe-again', placeId: 3 });
    expect(inEnglish(why)).toBe('2 boards to probe in Bench room. 1 board to probe in Shop.');
  });
});
