import { DAY_MS } from '../../time.ts';
import { type Message, message } from '../../words/message.ts';
import { LONGEST_HISTORY_DAYS } from './board-history.ts';
import type { DryingBoard, FitReading } from './history-fit.ts';

/**
 * What is wrong with a board's history as a person entered it, so that nothing can be worked out from it.
 *
 * @param nowMs  UTC, ms
 * @returns      null where nothing is
 */
export function historyProblem(
  { start, stays }: DryingBoard,
  readings: readonly Pick<FitReading, 'atMs'>[],
  nowMs: number,
): Message | null {
  if (start.atMs > nowMs) return message('forecast.none.starts-later');
  if (nowMs - start.atMs > LONGEST_HISTORY_DAYS * DAY_MS) return message('forecast.none.too-long');
  if (!(stays[0]!.fromMs <= start.atMs)) return message('forecast.none.no-first-place');
  if (stays.some(({ fromMs }, index) => index > 0 && fromMs < stays[index - 1]!.fromMs))
    return message('forecast.none.moves-out-of-order');
  if (readings.some(({ atMs }) => atMs > nowMs)) return message('forecast.none.reading-to-come');
  if (readings.some(({ atMs }) => atMs < start.atMs)) return message('forecast.none.reading-before-start');
  return null;
}
