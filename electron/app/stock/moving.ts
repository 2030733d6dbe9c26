import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { CheckedInput } from '../../../shared-core/contract/requests.ts';
import type { Move } from '../../../shared-core/contract/yard.ts';
import { type Dated, momentOfMove } from '../../../shared-core/probing/readings/order-of-day.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices, type Slices } from '../slices.ts';
import { startOfDay } from './board-days.ts';
import { checkInYard, openPlace } from './open-ones.ts';

/** Where boards are moved to, when, and what a person answered about it. */
export type Target = Omit<CheckedInput<'boards.move'>, 'boardIds' | 'work'>;

/** A move as the person at the machine makes it now. */
export const movedNow = (placeId: number, now: string): Target => ({
  placeId,
  since: now,
  isDayOnly: false,
  isInserted: false,
  isBeforeSawing: false,
  order: null,
});

/** What is newer than this was done by the clock: whatever is saved of that day came before. */
const NOW_MS = 60_000;

/** @throws Refusal for a future day, or a place that is closed or not there */
export function checkMove(context: AppContext, { placeId, since }: Pick<Target, 'placeId' | 'since'>): void {
  openPlace(context, placeId);
  if (Date.parse(since) > Date.parse(context.now())) {
    throw new Refusal(message('refusal.move-to-come'));
  }
}

/** @throws Refusal, a question, where one of the boards was not sawn yet */
export function checkSawnBefore(
  context: AppContext,
  boardIds: readonly number[],
  { since, isBeforeSawing }: Pick<Target, 'since' | 'isBeforeSawing'>,
): void {
  if (isBeforeSawing) return;
  for (const id of boardIds) {
    const { sawnOn, code: boardCode } = orRefuse(context.yard().boards.judgedBy(id), 'board');
    if (sawnOn !== null && Date.parse(since) < startOfDay(sawnOn))
      throw new Refusal(message('refusal.move-before-sawn', { boardCode, sawnOn }));
  }
}

/**
 * The instant of a move of a board, and how well it is known, among what else happened to it on that day.
 *
 * @param edited  its move that becomes this; null: it is another
 * @throws Refusal, a question, where it would come before or after a move that it does not now, of another day; and
 *   where nobody knows whether it came before a reading of that day
 */
export function instantOfMove(
  context: AppContext,
  boardId: number,
  { since, isDayOnly, isInserted, order }: Omit<Target, 'placeId'>,
  edited: Move | null = null,
): Pick<Move, 'since' | 'datedBy'> {
  const { boards, moves } = context.yard();
  const atMs = Date.parse(since);
  const day = localDayOf(since);
  const all = moves.ofBoard(boardId);
  const others = all.filter(({ id }) => id !== edited?.id);
  /** How many of the others it comes after; one that is new after all. */
  const rank = edited === null ? others.length : all.findIndex(({ id }) => id === edited.id);
  const isOfDay = (move: Move) => localDayOf(move.since) === day;
  const fellBehind = others.slice(0, rank).find((move) => Date.parse(move.since) > atMs && !isOfDay(move));
  const passed = others.slice(rank).findLast((move) => Date.parse(move.since) < atMs && !isOfDay(move));
  const crossed = fellBehind ?? passed;
  if (crossed && !isInserted) {
    const { code: boardCode } = orRefuse(boards.get(boardId), 'board');
    const facts = { boardCode, placeName: crossed.placeName, movedOn: crossed.since };
    throw new Refusal(
      fellBehind ? message('refusal.move-before-other', facts) : message('refusal.move-after-other', facts),
    );
  }
  const ofDay = (some: readonly Move[]) => some.filter(isOfDay).map((move) => Date.parse(move.since));
  const nowMs = Date.parse(context.now());
  const isNow = !isDayOnly && nowMs - atMs < NOW_MS;
  const moment = momentOfMove(
    { atMs, isDayOnly },
    {
      fromMs: new Date(atMs).setHours(0, 0, 0, 0),
      untilMs: Math.min(nowMs, Date.parse(endOfDay(since))),
      movesBeforeMs: ofDay(others.slice(0, rank)),
      movesAfterMs: ofDay(others.slice(rank)),
      readings: isNow ? [] : readingsOfDay(context, boardId, since),
    },
    order,
  );
  if (typeof moment === 'number') {
    return { since: isoOf(moment), datedBy: isDayOnly || moment !== atMs ? 'day' : 'time' };
  }
  const { code: boardCode } = orRefuse(boards.get(boardId), 'board');
  throw new Refusal(
    moment === 'order-missing'
      ? message('refusal.moved-or-probed-first', { boardCode, movedOn: since })
      : message('refusal.no-room-for-move', { boardCode }),
  );
}

/** What was read on a board on the local day of an instant. */
function readingsOfDay(context: AppContext, boardId: number, at: string): Dated[] {
  const { readings, rounds } = context.yard();
  const day = localDayOf(at);
  const endMs = Date.parse(endOfDay(at));
  return rounds
    .ofBoard(boardId)
    .filter(({ startedAt }) => Date.parse(startedAt) <= endMs)
    .flatMap(({ id, datedBy }) =>
      readings
        .ofBoard(boardId, id)
        .filter(({ excluded, takenAt }) => excluded === null && localDayOf(takenAt) === day)
        .map(({ takenAt }) => ({ atMs: Date.parse(takenAt), isDayOnly: datedBy === 'day' })),
    );
}

/** As the machine's clock has it. */
const localDayOf = (instant: string): string => new Date(instant).toDateString();

/**
 * Records that a board is at a place from an instant on; where only the day is known, after what else was moved on that day.
 * @throws Refusal, a question, as `instantOfMove`
 */
export function moveBoard(context: AppContext, boardId: number, to: Target): void {
  context.yard().moves.add({ boardId, placeId: to.placeId, ...instantOfMove(context, boardId, to) });
}

/**
 * Records that boards are at a place from an instant on, and lets their stacks follow. Earlier moves stay: they are the
 * boards' climate history.
 * @throws Refusal for a future day, or a place or board that is not there; a question as `checkSawnBefore` and
 *   `instantOfMove`
 */
export function* moveBoards(
  context: AppContext,
  judging: Judging,
  boardIds: readonly number[],
  to: Target,
): Slices<void> {
  checkMove(context, to);
  const { boards } = context.yard();
  const stackIds = new Set<number>();
  yield* inSlices(boardIds, (slice) => {
    const found = boards.versionsOf(slice);
    // Another window closed the place meanwhile.
    checkMove(context, to);
    checkInYard(context, slice);
    checkSawnBefore(context, slice, to);
    for (const { stackId } of found) stackIds.add(stackId);
    for (const boardId of slice) moveBoard(context, boardId, to);
    judging.judgeAgain(slice);
  });
  letStacksFollow(context, stackIds);
}

/**
 * Lets stacks follow their boards. A stack is where its boards are: one that none of them is with any more would look
 * empty, and could not be probed.
 */
export function letStacksFollow(context: AppContext, stackIds: Iterable<number>): void {
  const { boards, stacks } = context.yard();
  for (const { id, version, placeId } of boards.stacksLeftBehind([...stackIds])) {
    stacks.edit({ id, basedOn: version, changed: { placeId } });
  }
}
