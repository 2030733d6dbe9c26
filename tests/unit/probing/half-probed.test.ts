/** A board of whose plan only some spots are read. */
import { describe, expect, test } from 'vitest';
import {
  callHalfProbed,
  coreUnreadSince,
  isDecided,
} from '../../../shared-core/probing/calls/half-probed.ts';
import type { BoardEstimate } from '../../../shared-core/probing/readings/estimate.ts';
import type { EarlierRound } from '../../../shared-core/probing/readings/evidence.ts';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import { possibleRange } from '../../../shared-core/probing/suspicions/possible-change.ts';
import { evidence, lastRound, lastRoundByAverage, readings } from './a-board.ts';

const half = { read: 1, planned: 4 };
const { estimate: usual } = lastRound(8, 8, '');
const firmOf = (estimate: Partial<BoardEstimate['estimate']>) =>
  ({ estimate: { ...usual, ...estimate } }) as BoardEstimate;

describe('the core left out since a full round that was ready', () => {
  const fullRound = (inCore: number, isReady = true): EarlierRound => {
    const made = lastRound(8, 8, '2026-05-06T10:00:00.000Z');
    return { ...made, estimate: { ...made.estimate, inCore }, isReady };
  };
  const shellOnly = { shell: 2, average: 0, core: 0 };
  const since = (before: EarlierRound, plan: typeof shellOnly | undefined, countedCore = 0) =>
    coreUnreadSince({ ...usual, countedCore }, { ...evidence([]), ...(plan && { plan }), fullRound: before });

  test('is as many spots as it read, two at most', () => {
    expect(since(fullRound(1), shellOnly)).toEqual({ read: 2, planned: 3 });
    expect(since(fullRound(2), shellOnly)).toEqual({ read: 2, planned: 4 });
    expect(since(fullRound(4), shellOnly)).toEqual({ read: 2, planned: 4 });
  });

  test('is nothing where that read none, called it something else, or this round has it in its plan too', () => {
    expect(since(fullRound(0), shellOnly)).toBeNull();
    expect(since(fullRound(2, false), shellOnly)).toBeNull();
    expect(since(fullRound(2), { ...shellOnly, core: 2 }, 1)).toBeNull();
    expect(since(fullRound(2), undefined)).toBeNull();
  });
});

describe('the spots read decide the call', () => {
  const wet = { averagePct: 15, lowPct: 14, highPct: 16, countedShell: 2, countedCore: 0, inCore: 0 };
  const decided = (estimate: Partial<BoardEstimate['estimate']>, core: number) =>
    isDecided(firmOf(estimate), { ...evidence([]), plan: { shell: 2, average: 0, core } });

  test('where it is surely too wet, with a core that is open only above what a heated room takes', () => {
    expect(decided(wet, 2)).toBe(false);
    expect(decided({ ...wet, averagePct: 25, lowPct: 24, highPct: 26 }, 2)).toBe(true);
    expect(decided({ ...wet, countedCore: 1 }, 2)).toBe(true);
    expect(decided(wet, 0)).toBe(true);
    expect(decided({ ...wet, lowPct: 10 }, 0)).toBe(false);
    expect(isDecided(null, evidence([]))).toBe(false);
  });
});

describe('a round contradicts the full one before it', () => {
  const probedOn = '2026-05-06T10:00:00.000Z';
  /** Its readings are of these days. */
  const evidenceOn = (days: readonly string[], fullRound: EarlierRound) => ({
    ...evidence(
      days.map((day, index) => ({
        ...readings([12], [])[0]!,
        id: index + 1,
        takenAt: `${day}T10:00:00.000Z`,
      })),
    ),
    fullRound,
  });
  const isContradicted = (
    interval: { lowPct: number; highPct: number },
    given: ReturnType<typeof evidenceOn>,
  ) => callHalfProbed({ half, firm: firmOf(interval), heaviest: undefined, evidence: given }).call !== null;
  /** The lowest and the highest that the average can be: two parts of the core and one of the shell. */
  const bounds = (
    { lowPct, highPct }: { lowPct: number; highPct: number },
    shell: { fall: number; rise: number },
    core: { fall: number; rise: number },
  ) => ({
    lowest: lowPct + (2 * core.fall + shell.fall) / 3,
    highest: highPct + (2 * core.rise + shell.rise) / 3,
  });
  const expectBounds = (
    given: ReturnType<typeof evidenceOn>,
    { lowest, highest }: ReturnType<typeof bounds>,
  ) => {
    expect(isContradicted({ lowPct: lowest - 2, highPct: lowest }, given)).toBe(false);
    expect(isContradicted({ lowPct: lowest - 2, highPct: lowest - 0.01 }, given)).toBe(true);
    expect(isContradicted({ lowPct: highest, highPct: highest + 2 }, given)).toBe(false);
    expect(isContradicted({ lowPct: highest + 0.01, highPct: highest + 2 }, given)).toBe(true);
  };

  test.each([
    ['the days since', ['2026-05-07', '2026-05-08', '2026-05-09'], 3],
    ['none, for readings of before', ['2026-05-01'], 0],
    ['none, for readings of no known day', [], 0],
  ])('where its average lies beyond all that is possible within %s', (_, days, sinceDays) => {
    for (const fullRound of [lastRound(11, 17, probedOn), lastRoundByAverage(13, probedOn)]) {
      const given = evidenceOn(days, fullRound);
      const { estimate } = fullRound;
      const change = (depth: 'shell' | 'core', beforePct: number) => {
        const { lowPct, highPct } = possibleRange(depth, beforePct, 27, sinceDays, given);
        return { fall: lowPct - beforePct, rise: highPct - beforePct };
      };
      const { averagePct } = estimate;
      expectBounds(
        given,
        bounds(
          estimate,
          change('shell', estimate.shellPct ?? averagePct),
          change('core', estimate.corePct ?? averagePct),
        ),
      );
    }
  });

  test('or beyond two standard deviations of what the drying model expects', () => {
    const fullRound = { ...lastRound(11, 17, probedOn), moved: false };
    const given = evidenceOn(['2026-05-20'], fullRound);
    const expected = expectationNow({ ...given, previous: fullRound }, '2026-05-20T10:00:00.000Z')!;
    const change = ({ pct, sdLowPct, sdHighPct }: NonNullable<typeof expected.shell>, beforePct: number) => ({
      fall: pct - 2 * sdLowPct - beforePct,
      rise: pct + 2 * sdHighPct - beforePct,
    });
    expectBounds(given, bounds(fullRound.estimate, change(expected.shell!, 11), change(expected.core!, 17)));
  });
});
