/** How the air moves between the boards of a stack, and what that does to their drying. */
import { z } from 'zod';

export const airMovementSchema = z.enum([
  'still-room',
  'open-shed',
  'wind',
  'fan',
  'dehumidified',
  'solar-kiln',
]);
export type AirMovement = z.infer<typeof airMovementSchema>;

/** What moving air does, against an outdoor stack in the wind, where most published days of drying come from. */
type Movement = {
  /** On what leaves a face. */
  surface: number;
  /** On the whole pace. Dated records of moving or warm, dry air are 1.5 to 4 times as fast as the model: the least of it. */
  pace: number;
  /** Standard deviation of that pace's logarithm, before any reading in such air. */
  paceLogSd: number;
};

/**
 * Film coefficients of air that hardly moves to that of a fan, 1 to 8 (heat transfer textbooks, from memory). Of still rooms
 * the evidence conflicts: practice has 3 to 8 weeks for 4/4 from 15 to 8 %, dated records have months. The rest: common
 * practice, no source; `tests/bench/records.bench.ts`.
 */
export const movements: Record<AirMovement, Movement> = {
  'still-room': { surface: 0.5, pace: 1, paceLogSd: 0.8 },
  'open-shed': { surface: 0.8, pace: 1, paceLogSd: 0.1 },
  wind: { surface: 1, pace: 1, paceLogSd: 0 },
  fan: { surface: 4, pace: 1.5, paceLogSd: 0.4 },
  dehumidified: { surface: 2, pace: 1.5, paceLogSd: 0.4 },
  'solar-kiln': { surface: 2, pace: 1.5, paceLogSd: 0.4 },
};
