import { DAY_MS, isoOf } from '../../time.ts';

/**
 * When a round's readings were taken, once it is known when the round really began: all move by the same time. A clock that
 * was set right by at least a day during the round dated the rest of it truly: that rest stays where moving it would put
 * it in the future. One that the clock dated in the future, a day or more after the others, has the time of the one before
 * it: nobody knows a better one.
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
  const jumped = jumpedAhead(startMs, takenMs, nowMs);
  let lastMs = startMs;
  let lastMovedMs = startMs + shiftMs;
  let isSet = false;
  const moved = takenMs.map((ms, index) => {
    if (jumped.has(index)) return lastMovedMs;
    isSet ||= ms - lastMs >= DAY_MS && ms + shiftMs > nowMs;
    lastMs = ms;
    lastMovedMs = isSet ? ms : ms + shiftMs;
    return lastMovedMs;
  });
  return moved.some((ms) => ms > nowMs) ? null : moved.map(isoOf);
}

/** Which readings the clock dated in the future when it ran ahead for a while. */
function jumpedAhead(startMs: number, takenMs: readonly number[], nowMs: number): Set<number> {
  let lastMs = startMs;
  const jumped = new Set<number>();
  for (const [index, ms] of takenMs.entries()) {
    if (ms > nowMs && ms - lastMs >= DAY_MS) jumped.add(index);
    else lastMs = ms;
  }
  return jumped;
}
