import { Refusal } from '../../../shared-core/contract/answer.ts';
import { type Archived, becameOf } from '../../../shared-core/contract/archive.ts';
import type { Board } from '../../../shared-core/contract/yard.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';

/**
 * Checks the days that are given of boards: without true ones they have no forecast.
 *
 * @param boardIds  of boards that are there
 * @throws Refusal for a day still to come, or where a board has a reading from before it was sawn, or left before
 */
export function checkBoardDays(
  context: AppContext,
  boardIds: readonly number[],
  { sawnOn, barkOffOn }: Partial<Pick<Board, 'sawnOn' | 'barkOffOn'>>,
): void {
  const now = Date.parse(context.now());
  if ([sawnOn, barkOffOn].some((day) => day && startOfDay(day) > now)) {
    throw new Refusal(message('refusal.day-to-come'));
  }
  if (!sawnOn) return;
  const { boards, readings } = context.yard();
  for (const id of boardIds) {
    const left = leftOf(boards.get(id));
    if (left && isBeforeDay(left.at, sawnOn)) {
      const { code: boardCode } = orRefuse(boards.get(id), 'board');
      throw new Refusal(message('refusal.sawn-after-left', { boardCode, leftOn: left.at }));
    }
    const all = readings.roundsOfBoard(id).flatMap((roundId) => readings.ofBoard(id, roundId));
    const tooOld = readBeforeSawn(all, sawnOn);
    if (tooOld) {
      const { code: boardCode } = orRefuse(boards.get(id), 'board');
      throw new Refusal(message('refusal.read-before-sawn', { boardCode, readOn: tooOld.takenAt }));
    }
  }
}

/** The first that counts and was taken before the board was sawn. */
export const readBeforeSawn = (readings: readonly Reading[], sawnOn: string): Reading | undefined =>
  readings.find(
    ({ excluded, isDamaged, takenAt }) =>
      excluded === null && !isDamaged && Date.parse(takenAt) < startOfDay(sawnOn),
  );

/** @throws Refusal, a question, where one of the boards was somewhere before it was sawn */
export function checkSawnByMoves(context: AppContext, boardIds: readonly number[], sawnOn: string): void {
  const { boards, moves } = context.yard();
  for (const id of boardIds) {
    const [first] = moves.ofBoard(id);
    if (first === undefined || Date.parse(first.since) >= startOfDay(sawnOn)) continue;
    const { code: boardCode } = orRefuse(boards.get(id), 'board');
    const { placeName, since: movedOn } = first;
    throw new Refusal(message('refusal.sawn-after-move', { boardCode, placeName, movedOn }));
  }
}

/** @throws Refusal where a board came to its place on a day still to come, or before it was sawn */
export function checkHereSince(context: AppContext, hereSinceOn: string, sawnOn: string | null): void {
  if (startOfDay(hereSinceOn) > Date.parse(context.now())) {
    throw new Refusal(message('refusal.day-to-come'));
  }
  if (sawnOn !== null && hereSinceOn < sawnOn) {
    throw new Refusal(message('refusal.here-before-sawn', { sawnOn }));
  }
}

/** When a person took a board out of the yard, or cut it; null where it is in the yard, or only another record of a board. */
export function leftOf(board: { archived: Archived | null } | undefined): Archived | null {
  const left = board?.archived;
  return left && becameOf(left.code) !== null ? left : null;
}

/** Whether an instant is of a local day before that one. */
export const isBeforeDay = (at: string, day: string): boolean => Date.parse(endOfDay(at)) < startOfDay(day);

/** Local midnight, UTC in ms. */
export const startOfDay = (day: string): number => Date.parse(`${day}T00:00`);
