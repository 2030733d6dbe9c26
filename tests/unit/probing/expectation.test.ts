import { describe, expect, test } from 'vitest';
import { expectationNow } from '../../../shared-core/probing/suspicions/expectation.ts';
import { evidence, lastRound, lastRoundByAverage, readings, TAKEN_AT } from './a-board.ts';

const shed = { name: 'the shed', kind: 'open-shed', emcPct: 13, month: 5 } as const;
const dryingBoard = (takenAt: string, more: Parameters<typeof evidence>[1] = {}) =>
  evidence(readings([16, 16], [20, 20]), {
    place: shed,
    previous: { ...lastRound(18, 24, takenAt), moved: false },
    ...more,
  });

describe('what a board should read now', () => {
  test('just after the last round, what it read then', () => {
    const now = expectationNow(dryingBoard(TAKEN_AT), TAKEN_AT)!;
    expect(now.shell!.pct).toBeCloseTo(18, 0);
    expect(now.core!.pct).toBeCloseTo(24, 0);
    expect(now.core!.sdLowPct).toBeLessThan(0.2);
  });

  test('later, nearer to the place’s EMC, and less surely', () => {
    const week = expectationNow(dryingBoard('2026-05-13T10:00:00Z'), TAKEN_AT)!;
    const month = expectationNow(dryingBoard('2026-04-20T10:00:00Z'), TAKEN_AT)!;
    expect(week.core!.pct).toBeLessThan(24);
    expect(month.core!.pct).toBeLessThan(week.core!.pct);
    expect(month.core!.pct).toBeGreaterThan(13);
    expect(month.core!.sdLowPct).toBeGreaterThan(week.core!.sdLowPct);
  });

  // Within a week a fast board is far ahead of the usual one, and a slow one has hardly moved less.
  test('soon after the last round rather lower than that, where the board is a fast one', () => {
    const { core } = expectationNow(dryingBoard('2026-05-13T10:00:00Z'), TAKEN_AT)!;
    expect(core!.sdLowPct).toBeGreaterThan(2 * core!.sdHighPct);
    expect(core!.sdLowPct).toBeGreaterThan(1.5);
  });

  test('after 60 days still, and not before the last round', () => {
    expect(expectationNow(dryingBoard('2026-03-21T10:00:00.000Z'), TAKEN_AT)).not.toBeNull();
    expect(expectationNow(dryingBoard('2026-05-21T10:00:00Z'), TAKEN_AT)).toBeNull();
  });

  test('of a board read by its average alone, the average alone', () => {
    const by = (takenAt: string) =>
      expectationNow(
        dryingBoard(TAKEN_AT, { previous: { ...lastRoundByAverage(20, takenAt), moved: false } }),
        TAKEN_AT,
      )!;
    const today = by(TAKEN_AT);
    expect([today.shell, today.core]).toEqual([null, null]);
    // A quarter of the thickness below the face a parabola is a twelfth of its drop above its average.
    expect(today.average.pct).toBeCloseTo(20 + (1.3 * 7) / 12, 0);
    expect(by('2026-04-20T10:00:00Z').average.pct).toBeLessThan(today.average.pct - 1);
  });

  test('a dense species lags behind a light one', () => {
    const of = (basicSpecificGravity: number) => {
      const board = dryingBoard('2026-04-20T10:00:00Z');
      return expectationNow({ ...board, species: { ...board.species, basicSpecificGravity } }, TAKEN_AT)!
        .core!.pct;
    };
    expect(of(0.65)).toBeGreaterThan(of(0.35));
  });
});

describe('nothing is expected', () => {
  const board = dryingBoard('2026-05-06T10:00:00Z');
  test.each([
    ['without a last round', { previous: null }],
    ['of a board that was moved', { previous: { ...board.previous!, moved: true } }],
    ['of a board that may have been moved', { previous: lastRound(18, 24, '2026-05-06T10:00:00Z') }],
    ['where the air is not known', { place: { ...shed, emcPct: null } }],
    [
      'where the species’ specific gravity is not known',
      { species: { ...board.species, basicSpecificGravity: null } },
    ],
    [
      'after a round that read the shell alone',
      {
        previous: {
          ...board.previous!,
          estimate: { ...board.previous!.estimate, corePct: null, differencePct: null, countedCore: 0 },
        },
      },
    ],
    ['after more than two months', { previous: { ...board.previous!, takenAt: '2026-01-06T10:00:00Z' } }],
  ])('%s', (_, more) => {
    expect(expectationNow({ ...board, ...more }, TAKEN_AT)).toBeNull();
  });
});
