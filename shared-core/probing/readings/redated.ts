import { DAY_MS, isoOf } from '../../time.ts';

/**
 * When a round's readings were taken, once it is known when the round really began: all move by the same time. A clock that
 * was set right by at least a day during the round dated the rest of it truly: that rest stays where moving it would put
 * it in the future.
 *
 * @param startedAt  when the round began as its clock told
 * @param takenAt    the readings as that clock told, in the order taken
 * @param nowMs      UTC, ms
 * @returns          null where a reading would be in the future
 */
export function redated(
  startedAt: string,
  takenAt: readonly string[],
  trueStartAt: string,
  nowMs: number,
): string[] | null {
  const startMs = Date.parse(startedAt);
  const takenMs = takenAt.map((at) => Date.parse(at));
  const shiftMs = Date.parse(trueStartAt) - startMs;
  const wasSet = takenMs.findIndex(
    (ms, index) => ms - (takenMs[index - 1] ?? startMs) >= DAY_MS && ms + shiftMs > nowMs,
  );
  const moved = takenMs.map((ms, index) => (wasSet >= 0 && index >= wasSet ? ms : ms + shiftMs));
  return moved.some((ms) => ms > nowMs) ? null : moved.map(isoOf);
}
