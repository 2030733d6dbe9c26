import { describe, expect, test } from 'vitest';
import { boardsForNoneWet } from '../../../shared-core/probing/plan/sample-size.ts';
import {
  callOnStack,
  dueOfStack,
  isMoveDue,
  type StackFigures,
  stackCallSchema,
  stackDueSchema,
} from '../../../shared-core/probing/plan/stack-call.ts';
import { message } from '../../../shared-core/words/message.ts';
import { codesOf, expectWhole, inEnglish } from '../words/in-english.ts';

/** How sure, and of what, a stack called ready must be: common practice, no source. */
const sure = { certaintyPct: 90, oneIn: 10 };

const why = message('call.likely', { likelyInterval: { minPct: 5, maxPct: 9 } });

/** A stack in a pole shed, for furniture. */
function stack(
  boards: number,
  calls: Partial<StackFigures['calls']>,
  due: Partial<StackFigures['due']> = {},
): StackFigures {
  const counts = { ready: 0, 'bring-in': 0, 'keep-drying': 0, 'too-dry': 0, 'probe-again': 0, ...calls };
  const isProbed = Object.values(counts).some((count) => count > 0);
  return {
    endUse: { minPct: 6, maxPct: 8 },
    boards,
    halfProbed: 0,
    calls: counts,
    averagePct: isProbed ? 13.1 : null,
    averaged: Object.values(counts).reduce((sum, count) => sum + count, 0) - counts['probe-again'],
    due: {
      'first-round': 0,
      'should-be-ready': 0,
      'probe-again': counts['probe-again'],
      'may-not-be-ready': 0,
      'could-change-call': 0,
      'learns-rate': 0,
      'bring-in': counts['bring-in'],
      'move-back': 0,
      'add-place': 0,
      'move-later': 0,
      ...due,
    },
    averageRead: null,
    averagedCode: 'MAP-02',
    laterCode: 'MAP-03',
    toProbeAgain: counts['probe-again'] > 0 ? { boardCode: 'MAP-04', why } : null,
    openRound: null,
  };
}
const sentences = (figures: StackFigures) => callOnStack(figures)?.reasons.map((reason) => inEnglish(reason));

describe("a stack's call", () => {
  test('bring in, when most of its boards cannot get drier where they are', () => {
    const figures = stack(8, { 'bring-in': 5, 'probe-again': 3 });
    const made = callOnStack(figures);
    expect(stackCallSchema.parse(made)).toEqual(made);
    expect(made?.call).toBe('bring-in');
    expect(sentences(figures)).toEqual([
      'Bring in 5 of 8 probed boards.',
      'Average of 5 boards: 13.1%. Target 6–8%.',
      '3 to probe again.',
    ]);
    expect(dueOfStack(figures)?.kind).toBe('bring-in');
  });

  test('an average of boards read on several days says which', () => {
    const read = { from: '2025-03-15T12:00:00.000Z', to: '2025-11-20T12:00:00.000Z' };
    const figures = stack(5, { 'keep-drying': 5 });
    expect(sentences({ ...figures, averageRead: read })).toContain('Probed Mar 15 – Nov 20, 2025.');
    expect(sentences({ ...figures, averageRead: { ...read, from: read.to } })?.join(' ')).not.toMatch(
      'Probed',
    );
    const aDay = { from: '2025-03-15T12:00:00.000Z', to: '2025-03-16T12:00:00.000Z' };
    expect(sentences({ ...figures, averageRead: aDay })?.join(' ')).toMatch('Probed Mar 15');
  });

  test('no average is stated where none can be relied on', () => {
    const made = callOnStack({ ...stack(4, { 'keep-drying': 1, 'probe-again': 3 }), averagePct: null });
    expect(stackCallSchema.parse(made)).toEqual(made);
    expect(codesOf(made!.reasons)).not.toContain('stack-call.average');
  });

  test('boards that are only partly probed are due beside those with a call', () => {
    const figures = { ...stack(12, { 'keep-drying': 3 }, { 'first-round': 9 }), halfProbed: 9 };
    expect(inEnglish(dueOfStack(figures)!.why)).toBe(
      '9 boards are only partly probed. Read all their spots in a new round.',
    );
    expect(sentences(figures)?.join(' ')).not.toMatch('partly');
    expect(dueOfStack({ ...figures, halfProbed: 0 })).toBeNull();
    const again = { ...stack(12, { 'probe-again': 3 }), halfProbed: 9 };
    expect(sentences(again)?.[0]).toBe('Probe 3 of 12 boards again.');
  });

  test('boards that no place is dry enough for are not to be brought in anywhere', () => {
    const all = stack(9, { 'bring-in': 9 }, { 'bring-in': 0, 'add-place': 9 });
    expect(callOnStack(all)?.call).toBe('bring-in');
    expect(sentences(all)?.[0]).toBe('No place is dry enough for all 9 yet.');
    expect(inEnglish(dueOfStack(all)!.why)).toBe(
      '9 boards are unlikely to reach the target in any of your places. Add a drier one, or change the use.',
    );
    const some = stack(9, { 'bring-in': 6, 'keep-drying': 3 }, { 'bring-in': 0, 'add-place': 6 });
    expect(sentences(some)?.[0]).toBe('No place is dry enough for 6 of 9 probed boards yet.');
    const others = stack(9, { 'bring-in': 9 }, { 'bring-in': 5, 'add-place': 4 });
    expect(sentences(others)?.[0]).toBe('Bring in 5 of 9 probed boards.');
    expect(sentences(others)).toContain('No place is dry enough for 4 yet.');
  });

  test.each([
    ['bring-in', 'Bring in both.'],
    ['keep-drying', 'Both need drying.'],
    ['probe-again', 'Probe both again.'],
    ['ready', 'Both boards are ready.'],
  ] as const)('of two boards to %s is of both', (call, sentence) => {
    expect(sentences(stack(2, { [call]: 2 }))?.[0]).toBe(sentence);
  });

  test('the call of most of its boards, what others need but for what is due, and how many were not probed', () => {
    const figures = stack(9, { 'keep-drying': 5, 'bring-in': 1, ready: 2 });
    expect(callOnStack(figures)?.call).toBe('keep-drying');
    expect(sentences(figures)).toEqual([
      '5 of 8 probed boards need drying.',
      'Average of 8 boards: 13.1%. Target 6–8%.',
      '2 ready to use.',
      '1 not probed yet.',
    ]);
  });

  // A half-probed board was read: it is never counted as not probed.
  test('how many were read in part, apart from those not probed', () => {
    const figures = { ...stack(9, { 'keep-drying': 5, ready: 1 }), halfProbed: 2 };
    expect(sentences(figures)?.slice(-2)).toEqual(['2 partly probed.', '1 not probed yet.']);
    expect(sentences({ ...stack(1, {}), halfProbed: 1 })).toEqual(['1 partly probed.']);
  });

  test('boards to keep drying that will not get there where they are are to be moved', () => {
    const figures = stack(6, { 'keep-drying': 6 }, { 'bring-in': 6 });
    expect(sentences(figures)?.[0]).toBe('All 6 need drying.');
    expect(dueOfStack(figures)?.kind).toBe('bring-in');
  });

  // The limit: common practice, no source.
  test('boards too wet to be moved: it says when to move them', () => {
    const figures = stack(6, { 'keep-drying': 6 }, { 'move-later': 6 });
    expect(sentences(figures)?.slice(0, 2)).toEqual([
      'All 6 need drying.',
      '6 boards are unlikely to reach the target where they are. Let them dry to 20%, core to 25%. Then move them to drier air.',
    ]);
    expect(dueOfStack(figures)).toBeNull();
  });

  // "1 board is unlikely … Average 17.8%" read as that board's average, which was 33.4 %, and it was told of twice.
  test('one board alone is named, told of once, and so is the board of an average', () => {
    const figures = stack(4, { 'bring-in': 2, 'keep-drying': 1 }, { 'bring-in': 0, 'move-later': 1 });
    expect(sentences(figures)).toEqual([
      'Bring in 2 of 3 probed boards.',
      'MAP-03 is unlikely to reach the target where it is. Let it dry to 20%, core to 25%. Then move it to drier air.',
      'Average of 3 boards: 13.1%. Target 6–8%.',
      '1 not probed yet.',
    ]);
    expect(sentences(stack(1, { 'keep-drying': 1 }))).toContain('MAP-02: average 13.1%. Target 6–8%.');
  });

  test('ready, when so many boards of it were found ready that few others can be wet', () => {
    const enough = boardsForNoneWet(60, 0.1, 0.9);
    expect(callOnStack(stack(60, { ready: enough }))).toEqual({
      call: 'ready',
      reasons: [message('stack-call.all-ready', { probed: enough }), message('stack-call.sure', sure)],
    });
    expect(callOnStack(stack(60, { ready: enough - 1 }))).toEqual({
      call: 'probe-again',
      reasons: [message('stack-call.probe-more', { more: 1 })],
    });
  });

  test('none before the first round: not probed yet', () => {
    const made = callOnStack(stack(60, {}));
    expect(made?.call).toBeNull();
    expect(made?.reasons).toEqual([message('stack-call.not-probed-yet')]);
  });

  test('none without boards', () => {
    expect(callOnStack(stack(0, {}))).toBeNull();
  });

  test('boards that should be ready by now are to be probed, not left drying', () => {
    expect(callOnStack(stack(4, { 'keep-drying': 4 }, { 'should-be-ready': 3 }))).toEqual({
      call: 'probe-again',
      reasons: [message('stack-call.some.probe-again', { boards: 3, probed: 4 })],
    });
    expect(callOnStack(stack(4, { 'keep-drying': 4 }, { 'should-be-ready': 2 }))?.call).toBe('keep-drying');
  });

  test('of those not ready, most should be ready: what the others need is stated once', () => {
    expect(sentences(stack(5, { 'keep-drying': 4, 'probe-again': 1 }, { 'should-be-ready': 3 }))?.[0]).toBe(
      'Probe 3 of 5 boards again.',
    );
    expect(
      codesOf(
        callOnStack(stack(5, { 'keep-drying': 4, 'probe-again': 1 }, { 'should-be-ready': 3 }))!.reasons,
      ),
    ).not.toContain('stack-call.also.probe-again');
    // 2 of 3 that are not ready.
    expect(callOnStack(stack(5, { 'keep-drying': 3, ready: 2 }, { 'should-be-ready': 2 }))?.call).toBe(
      'probe-again',
    );
  });

  test('ready, where every one of its boards is', () => {
    expect(callOnStack(stack(2, { ready: 2 }))?.call).toBe('ready');
  });

  test('of as many boards to bring in as to keep drying: keep drying', () => {
    expect(callOnStack(stack(4, { 'keep-drying': 2, 'bring-in': 2 }))?.call).toBe('keep-drying');
  });

  test('boards found ready that may not be any more are to be probed: the stack is not ready', () => {
    expect(callOnStack(stack(20, { ready: 20 }, { 'may-not-be-ready': 1 }))).toEqual({
      call: 'probe-again',
      reasons: [message('stack-call.some.probe-again', { boards: 1, probed: 20 })],
    });
  });
});

describe('what is due on a stack', () => {
  const due = (...of: Parameters<typeof stack>) => {
    const made = dueOfStack(stack(...of));
    if (made) expect(stackDueSchema.parse(made)).toEqual(made);
    return made && [made.kind, inEnglish(made.why)];
  };

  test('first a round that was begun, with how far it got', () => {
    const made = dueOfStack({ ...stack(4, { 'bring-in': 4 }), openRound: { readings: 6, boardsDone: 1 } });
    expect(made?.kind).toBe('open-round');
    expect(stackDueSchema.parse(made)).toEqual(made);
    expect(inEnglish(made!.why)).toBe('Round open: 6 readings, 1 of 4 boards done.');
  });

  test('its first round, and how many boards to probe', () => {
    expect(due(60, {})).toEqual([
      'first-round',
      'Probe 16. If all are ready, you can be 90% sure that at most 1 in 10 is not.',
    ]);
  });

  test('of a small stack every board is to be probed, and nothing is promised of the others', () => {
    expect(due(3, {})).toEqual(['first-round', 'Probe all 3 boards.']);
    expect(due(2, {})).toEqual(['first-round', 'Probe both boards.']);
    expect(due(1, {})).toEqual(['first-round', 'Probe the board.']);
  });

  test('then boards that should be ready, before those to be probed again', () => {
    const calls = { 'keep-drying': 3, 'too-dry': 0, 'probe-again': 1 };
    expect(due(4, calls, { 'should-be-ready': 2 })).toEqual([
      'should-be-ready',
      '2 boards should be ready now.',
    ]);
    expect(due(4, calls)).toEqual(['probe-again', '1 to probe again. MAP-04: Likely 5.0–9.0%.']);
  });

  test('then what a reading could change, with the day of the last', () => {
    expect(due(6, { 'keep-drying': 6 }, { 'could-change-call': 5 })).toEqual([
      'could-change-call',
      'A reading now could change the call on 5 boards.',
    ]);
  });

  test('then boards to bring in', () => {
    expect(due(8, { 'bring-in': 5 })).toEqual([
      'bring-in',
      '5 boards are unlikely to reach the target where they are.',
    ]);
  });

  test('boards to bring in come first where most are called so', () => {
    expect(due(8, { 'bring-in': 5, 'probe-again': 3 })?.[0]).toBe('bring-in');
    expect(due(8, { 'bring-in': 3, 'probe-again': 5 })?.[0]).toBe('probe-again');
  });

  test('boards to move now, and those too wet for it', () => {
    expect(due(10, { 'keep-drying': 10 }, { 'bring-in': 9, 'move-later': 1 })).toEqual([
      'bring-in',
      '10 boards are unlikely to reach the target where they are. Move 9 to drier air now. Move the other one at 20%, core 25%.',
    ]);
  });

  test('when boards are to move is stated once: not also in the call', () => {
    const figures = stack(10, { 'keep-drying': 10 }, { 'bring-in': 9, 'move-later': 1 });
    expect(codesOf(callOnStack(figures)!.reasons)).not.toContain('stack-call.to-move-later');
  });

  test.each([
    ['bring-in', true],
    ['move-back', true],
    ['add-place', true],
    ['probe-again', false],
    ['open-round', false],
  ] as const)('"%s" asks for a move: %s', (kind, isMove) => {
    expect(isMoveDue(kind)).toBe(isMove);
  });

  test('boards too wet for their heated room come before all others', () => {
    expect(due(6, { 'keep-drying': 4, 'probe-again': 2 }, { 'move-back': 1 })).toEqual([
      'move-back',
      '1 board is too wet for heated rooms. Move it back under cover.',
    ]);
  });

  test('boards that no place of the yard gets to the target are not sent to drier air', () => {
    expect(due(6, { 'bring-in': 3, ready: 3 }, { 'bring-in': 0, 'add-place': 3 })).toEqual([
      'add-place',
      '3 boards are unlikely to reach the target in any of your places. Add a drier one, or change the use.',
    ]);
  });

  test('the drier place that its call asks for comes before another round', () => {
    const figures = stack(6, { 'bring-in': 5 }, { 'first-round': 1, 'bring-in': 0, 'add-place': 5 });
    const half = { ...figures, halfProbed: 1 };
    expect(dueOfStack(half)?.kind).toBe('add-place');
    expect(sentences(half)?.[0]).toBe('No place is dry enough for all 5 yet.');
    expect(dueOfStack({ ...half, due: { ...half.due, 'move-back': 1 } })?.kind).toBe('move-back');
    expect(dueOfStack({ ...half, due: { ...half.due, 'bring-in': 1 } })?.kind).toBe('bring-in');
  });

  test('boards of which a reading tells how fast they dry', () => {
    expect(due(6, { 'keep-drying': 6 }, { 'learns-rate': 2 })).toEqual([
      'learns-rate',
      'Probe 2 boards again to learn how fast they dry.',
    ]);
  });

  test('more boards, where too few were found ready to call the stack so', () => {
    expect(due(60, { ready: 15 })).toEqual([
      'more-boards',
      'All 15 probed boards are ready. If 1 more is, you can be 90% sure that at most 1 in 10 is not.',
    ]);
  });

  test('nothing, where all is ready or is to go on drying, and without boards', () => {
    expect(due(3, { ready: 3 })).toBeNull();
    expect(due(3, { 'keep-drying': 3 })).toBeNull();
    expect(due(60, { 'keep-drying': 3 })).toBeNull();
    expect(due(0, {})).toBeNull();
  });
});

test('every sentence is whole', () => {
  const stacks = [
    stack(60, {}),
    stack(3, {}),
    { ...stack(4, {}), openRound: { readings: 3, boardsDone: 0 } },
    stack(4, { 'keep-drying': 4 }, { 'move-later': 4 }),
    { ...stack(3, { 'keep-drying': 2 }), halfProbed: 1 },
    stack(2, { ready: 2 }),
    stack(60, { ready: 20 }),
    stack(20, { ready: 2 }),
    stack(20, { ready: 2 }, { 'may-not-be-ready': 1 }),
    stack(3, { 'keep-drying': 3 }, { 'bring-in': 3 }),
    stack(3, { 'keep-drying': 3 }, { 'move-back': 3 }),
    stack(3, { 'bring-in': 3 }, { 'bring-in': 0, 'add-place': 3 }),
    stack(3, { 'bring-in': 2, 'keep-drying': 1 }, { 'bring-in': 0, 'add-place': 2 }),
    stack(3, { 'bring-in': 3 }, { 'bring-in': 2, 'add-place': 1 }),
    stack(1, { 'keep-drying': 1 }, { 'should-be-ready': 1 }),
    ...(['keep-drying', 'bring-in', 'too-dry', 'probe-again'] as const).flatMap((call) => [
      stack(3, { [call]: 3 }, { 'could-change-call': 1 }),
      stack(3, { [call]: 3 }, { 'learns-rate': 1 }),
      stack(9, { ready: 1, 'bring-in': 1, 'keep-drying': 1, 'too-dry': 1, 'probe-again': 1, [call]: 3 }),
    ]),
  ];
  const messages = stacks.flatMap((each) => [
    ...(callOnStack(each)?.reasons ?? []),
    ...[dueOfStack(each)?.why ?? []].flat(),
  ]);
  expect([...codesOf(messages)].filter((code) => code.startsWith('stack-call.')).sort()).toEqual([
    'stack-call.add-place',
    'stack-call.all-ready',
    'stack-call.all.add-place',
    'stack-call.all.bring-in',
    'stack-call.all.keep-drying',
    'stack-call.all.probe-again',
    'stack-call.all.too-dry',
    'stack-call.also.add-place',
    'stack-call.also.bring-in',
    'stack-call.also.keep-drying',
    'stack-call.also.probe-again',
    'stack-call.also.ready',
    'stack-call.also.too-dry',
    'stack-call.average',
    'stack-call.could-change',
    'stack-call.every-board-ready',
    'stack-call.half-probed',
    'stack-call.learns-rate',
    'stack-call.may-not-be-ready',
    'stack-call.move-back',
    'stack-call.not-probed',
    'stack-call.not-probed-yet',
    'stack-call.open-round',
    'stack-call.probe-all',
    'stack-call.probe-more',
    'stack-call.probe-so-many',
    'stack-call.ready-so-far',
    'stack-call.should-be-ready',
    'stack-call.some-to-probe',
    'stack-call.some.add-place',
    'stack-call.some.bring-in',
    'stack-call.some.keep-drying',
    'stack-call.some.probe-again',
    'stack-call.some.too-dry',
    'stack-call.sure',
    'stack-call.to-move',
    'stack-call.to-move-later',
  ]);
  expectWhole(messages);
});
