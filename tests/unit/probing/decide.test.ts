/** The call from one estimate, made directly as data, where its numbers decide it. */
import { describe, expect, test } from 'vitest';
import { decide, isSurelyTooWet } from '../../../shared-core/probing/calls/decide.ts';
import type { BoardEstimate } from '../../../shared-core/probing/readings/estimate.ts';
import type { BoardEvidence } from '../../../shared-core/probing/readings/evidence.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { evidence, interior, lastRound, reading, readings } from './a-board.ts';

const { estimate: usual } = lastRound(8, 8, '');

interface Differences {
  estimate?: Partial<BoardEstimate['estimate']>;
  /** Of the average and of the shell–core difference, points. */
  spread?: { spotsPct?: number; sharedPct?: number; differencePct?: number; differenceSdPct?: number };
  /** Another average than is shown. */
  averagePct?: number;
}

/** A board of 8%, the same through its thickness and surely so, but for these differences. */
function board({ estimate, spread, averagePct }: Differences = {}): BoardEstimate {
  const made = { ...usual, ...estimate };
  const { spotsPct, sharedPct, differencePct, differenceSdPct } = {
    spotsPct: 0.1,
    sharedPct: 0.4,
    differencePct: 0,
    differenceSdPct: 0.3,
    ...spread,
  };
  const average = { averagePct: averagePct ?? made.averagePct, spotsPct };
  const difference = { differencePct, differenceSdPct };
  return {
    estimate: made,
    posterior: { ...average, ...difference, sharedPct, parts: [{ weight: 1, ...average, ...difference }] },
    degrees: 10,
  };
}

const call = (of: BoardEstimate, more: Partial<BoardEvidence> = {}, read: Reading[] = readings([8], [8])) =>
  decide(of, { ...evidence(read), ...more });
const codes = (...of: Parameters<typeof call>) => call(...of).reasons.map(({ code }) => code);

describe('surely too wet', () => {
  const isSure = (lowPct: number, averageIs: 'read' | 'estimated', shellPct: number | null) =>
    isSurelyTooWet({ ...usual, lowPct, averageIs, shellPct }, { maxPct: 10 });

  test('is an average read wholly above the target', () => {
    expect(isSure(10.1, 'read', null)).toBe(true);
    expect(isSure(10, 'read', null)).toBe(false);
  });

  test('is an estimated average only with a shell that is too wet itself', () => {
    expect(isSure(12, 'estimated', 10.1)).toBe(true);
    expect(isSure(12, 'estimated', 10)).toBe(false);
    expect(isSure(12, 'estimated', null)).toBe(false);
  });
});

describe('a thick board whose core nobody read', () => {
  const thick = { board: { thicknessMm: 50, lengthMm: 3000 } };
  const unread = (averagePct: number, estimate: Differences['estimate'] = {}, shown = averagePct) =>
    board({ averagePct, estimate: { averagePct: shown, inCore: 0, ...estimate } });

  test('is too wet or too dry where that is nearly sure', () => {
    expect(call(unread(12), thick).call).toBe('keep-drying');
    expect(call(unread(4), thick).call).toBe('too-dry');
    expect(call(unread(4), { ...thick, endUse: { ...interior, minIsAdvice: true } }).call).toBe(
      'probe-again',
    );
  });

  test('is neither where its shell is, but the chance of its average is less', () => {
    expect(call(unread(10.2, { averageIs: 'estimated', shellPct: 11 }), thick).call).toBe('probe-again');
    expect(call(unread(5.8, { averageIs: 'estimated', shellPct: 5 }), thick).call).toBe('probe-again');
  });

  test('is neither by an estimate alone, without a shell or with one within the target', () => {
    for (const shellPct of [null, 8]) {
      expect(call(unread(12, { averageIs: 'estimated', shellPct }), thick).call).toBe('probe-again');
      expect(call(unread(4, { averageIs: 'estimated', shellPct }), thick).call).toBe('probe-again');
    }
  });

  test('is too wet by its shell, or by what was read where nobody knows how deep', () => {
    const wet = unread(12, { averageIs: 'estimated', shellPct: 12 });
    const at = (id: number, depthMm: number | null, more: Partial<Reading> = {}) => {
      const made = reading(id, 'shell', 12, more);
      return { ...made, spot: { ...made.spot, depthMm } };
    };
    const excluded = { excluded: { reason: 'slip' } } as unknown as Partial<Reading>;
    const by = (...read: Reading[]) => codes(wet, { ...thick, readings: read });
    expect(by(at(1, 5), at(2, null))).toEqual(['call.shell-too-wet']);
    expect(by(at(1, null))).toEqual(['call.read-too-wet']);
    expect(by(at(1, null), at(2, 5, excluded))).toEqual(['call.read-too-wet']);
  });

  test('says that its average is within the target only where it is', () => {
    expect(codes(unread(8), thick)).toEqual(['call.core-not-reached', 'call.average-in-target']);
    expect(codes(unread(8, {}, 10.1), thick)).toEqual(['call.core-not-reached']);
    expect(codes(unread(8, {}, 5.9), thick)).toEqual(['call.core-not-reached']);
  });

  test('has a core of unknown depth where only the plan says how deep it was, not the shell', () => {
    const [ofPlan, byPins] = [{ depthFrom: 'plan' }, { depthFrom: 'pins' }] as const;
    const first = (shell: Partial<Reading>, core: Partial<Reading>) =>
      codes(unread(8), thick, [reading(1, 'shell', 8, shell), reading(2, 'core', 8, core)])[0];
    expect(first(byPins, ofPlan)).toBe('call.core-depth-unknown');
    expect(first(ofPlan, byPins)).toBe('call.core-not-reached');
    expect(first(byPins, byPins)).toBe('call.core-not-reached');
  });

  // Up to 30 mm pins at a fifth to a third of the thickness tell the average: common practice, no source.
  test('is thicker than 30 mm', () => {
    expect(call(unread(8), { board: { thicknessMm: 30, lengthMm: 3000 } }).call).toBe('ready');
    expect(call(unread(8), { board: { thicknessMm: 31, lengthMm: 3000 } }).call).toBe('probe-again');
  });
});

test('a board that only its history puts below the target is too dry by its average, one with a shell by that', () => {
  const history = { profile: { differencePct: 0, differenceSdPct: 0.3 } };
  const dry = (shellPct: number | null) =>
    board({ estimate: { averagePct: 4, averageIs: 'estimated', shellPct } });
  expect(codes(dry(null), history)).toEqual(['call.below-target', 'call.likely']);
  expect(codes(dry(4), history)).toEqual(['call.shell-below-target']);
});

test('more readings of each depth are asked for the more, the more pairs there are: as many as of the fewer depth', () => {
  const each = (countedShell: number, countedCore: number) =>
    call(board({ estimate: { averagePct: 10.4, countedShell, countedCore }, spread: { spotsPct: 0.8 } }));
  const asked = (count: number) => ({ call: 'probe-again', reasons: [{ facts: { each: count } }, {}] });
  expect(each(6, 6)).toMatchObject(asked(4));
  expect(each(2, 2)).toMatchObject(asked(2));
  expect(each(6, 2)).toMatchObject(asked(2));
  expect(each(2, 6)).toMatchObject(asked(2));
});

describe('a shell–core difference', () => {
  /** 2 points are allowed, harm begins above 3: with a chance of 7% where it is about 2.5, and of 16% where it may be less. */
  const seldom = { differencePct: 2.5, differenceSdPct: 0.339 };
  const likelier = { differencePct: 2.5, differenceSdPct: 0.5 };
  const uneven = (spread: Differences['spread'], estimate: Differences['estimate'] = {}) =>
    board({ spread, estimate: { shellPct: 7, corePct: 9.5, differencePct: 2.5, ...estimate } });
  const byPins = readings([7, 7], [9.5, 9.5]);
  const excluded = { reason: 'slip' } as unknown as Reading['excluded'];
  const firstByPlan = byPins.map((each, index) =>
    index === 0 ? { ...each, depthFrom: 'plan' as const } : each,
  );

  test('may do harm in 7% where pins read shell and core, not where a depth is unknown or nothing read the core', () => {
    expect(call(uneven(seldom), {}, byPins).call).toBe('ready');
    expect(codes(uneven(seldom), {}, firstByPlan)[0]).toBe('call.core-wetter');
    const others = firstByPlan.map((each, index) => (index === 0 ? { ...each, excluded } : each));
    expect(call(uneven(seldom), {}, others).call).toBe('ready');
    expect(codes(uneven(seldom, { inCore: 0 }), {}, byPins).slice(0, 2)).toEqual([
      'call.core-not-reached',
      'call.may-be-uneven',
    ]);
  });

  test('that nobody read, of a board whose core was, is one to wait for', () => {
    for (const differencePct of [null, 2, -2]) {
      const made = call(uneven(likelier, { differencePct }), {}, byPins);
      expect(made.call).toBe('keep-drying');
      expect(made.reasons.map(({ code }) => code)).toEqual(['call.may-be-uneven', 'call.average-in-target']);
    }
    expect(call(uneven(seldom, { differencePct: null }), {}, byPins).call).toBe('keep-drying');
  });

  test('of a ready board is said to be allowed up to its limit, and to be just over it above', () => {
    const at = (corePct: number, inCore = 2) =>
      codes(uneven({}, { corePct, differencePct: corePct - 7, inCore }), {}, byPins)[1];
    expect(at(9)).toBe('call.difference-allowed');
    expect(at(9.1)).toBe('call.difference-just-over');
    expect(at(9, 0)).toBe('call.core-not-judged');
  });

  describe('of a core that nobody read', () => {
    const outdoors = { ...interior, minPct: 12, maxPct: 19, minIsAdvice: true };
    const history = { profile: { differencePct: 2.5, differenceSdPct: 0.5 } };
    const dry = (estimate: Differences['estimate'] = {}, endUse: Partial<typeof outdoors> = {}) =>
      call(
        uneven(likelier, { inCore: 0, ...estimate }),
        { ...history, endUse: { ...outdoors, ...endUse } },
        byPins,
      ).call;

    test('does not matter where even a wetter core would be within the target', () => {
      expect(dry()).toBe('ready');
      expect(dry({}, { maxPct: 11, minPct: 9 })).toBe('ready');
      expect(dry({}, { maxPct: 10.9, minPct: 9 })).toBe('probe-again');
    });

    test('matters where the average is only estimated, within the target, or the core was read', () => {
      expect(dry({ averageIs: 'estimated' })).toBe('probe-again');
      expect(dry({}, { minPct: 8 })).toBe('probe-again');
      expect(dry({ inCore: 1 })).toBe('keep-drying');
    });
  });
});
