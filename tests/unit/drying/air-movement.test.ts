import { expect, test } from 'vitest';
import { DAY_MS } from '../../../shared-core/time.ts';
import { type AirMovement, airMovementSchema } from '../../../shared-core/wood/drying/air-movement.ts';
import {
  boardModel,
  type DryingBoard,
  dryingPrior,
  runBoard,
} from '../../../shared-core/wood/drying/history-fit.ts';
import { steadyAir } from '../../bench/typical-years.ts';
import { daysUntil } from '../../reference/published-drying-days.ts';

const atMs = Date.UTC(2024, 3, 1);
const boardIn = (movement: AirMovement | undefined): DryingBoard => ({
  thicknessMm: 28,
  basicSpecificGravity: 0.56,
  dryingClass: 'upland-oak',
  start: { atMs, mcPct: 70, logSd: 0.1, shellRatio: 1 },
  stays: [{ fromMs: atMs, air: steadyAir(24, 0.4), movement }],
});
const days = (movement: AirMovement | undefined): number => daysUntil(boardIn(movement), 10);

// The order is common practice, no source.
test('a board dries faster the more the air moves', () => {
  const ordered = (['still-room', 'open-shed', 'wind', 'dehumidified', 'fan'] as const).map(days);
  expect(ordered).toEqual(ordered.toSorted((a, b) => b - a));
  expect(days('still-room')).toBeGreaterThan(1.5 * days('fan'));
});

test('where it is not given, the air moves as outdoors', () => {
  expect(days(undefined)).toBe(days('wind'));
});

test.each(airMovementSchema.options)(
  'in %s a board comes to the EMC of its air, and no lower',
  (movement) => {
    const board = boardIn(movement);
    const untilMs = atMs + 3000 * DAY_MS;
    const { averagePct } = runBoard(
      boardModel(board),
      dryingPrior(board).mean,
      board.stays,
      atMs,
      untilMs,
      null,
      [untilMs],
      [],
    );
    expect(averagePct[0]).toBeCloseTo(7.6, 0);
  },
);
