import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Move } from '../../../shared-core/contract/yard.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices, type Slices } from '../slices.ts';
import { startOfDay } from './board-days.ts';

interface Target extends Pick<Move, 'placeId' | 'since'> {
  /** Whether of that instant only the local day is known. */
  isDayOnly: boolean;
  /** Whether it may come before moves of a later day. */
  isInserted: boolean;
}

/** @throws Refusal for a future day, or a place that is not there */
export function checkMove(context: AppContext, { placeId, since }: Pick<Target, 'placeId' | 'since'>): void {
  orRefuse(context.yard().places.get(placeId), 'place');
  if (Date.parse(since) > Date.parse(context.now())) {
    throw new Refusal(message('refusal.move-to-come'));
  }
}

/** @throws Refusal where one of the boards was not sawn yet */
export function checkSawnBefore(
  context: AppContext,
  boardIds: readonly number[],
  { since }: Pick<Target, 'since'>,
): void {
  for (const id of boardIds) {
    const { sawnOn, code: boardCode } = orRefuse(context.yard().boards.judgedBy(id), 'board');
    if (sawnOn !== null && Date.parse(since) < startOfDay(sawnOn))
      throw new Refusal(message('refusal.move-before-sawn', { boardCode, sawnOn }));
  }
}

/** Of two moves on one day, the later comes so long after the other. */
const AFTER_MS = 1000;

/**
 * Records that a board is at a place from an instant on; where only the day is known, after what else was moved on that day.
 * @throws Refusal, a question, where the board was moved on a later day and this one may not come before that
 */
export function moveBoard(
  context: AppContext,
  boardId: number,
  { placeId, since, isDayOnly, isInserted }: Target,
): void {
  const { boards, moves } = context.yard();
  const later = moves.ofBoard(boardId).filter((move) => Date.parse(move.since) >= Date.parse(since));
  const day = localDayOf(since);
  const after = later.find((move) => localDayOf(move.since) !== day);
  if (after && !isInserted) {
    const { code: boardCode } = orRefuse(boards.get(boardId), 'board');
    const { placeName, since: movedOn } = after;
    throw new Refusal(message('refusal.move-before-other', { boardCode, placeName, movedOn }));
  }
  const sameDay = isDayOnly && later.findLast((move) => localDayOf(move.since) === day);
  const at = sameDay ? Date.parse(sameDay.since) + AFTER_MS : Date.parse(since);
  moves.add({
    boardId,
    placeId,
    since: isoOf(Math.min(at, Math.max(Date.parse(context.now()), Date.parse(since)))),
  });
}

/** As the machine's clock has it. */
const localDayOf = (instant: string): string => new Date(instant).toDateString();

/**
 * Records that boards are at a place from an instant on, and lets their stacks follow. Earlier moves stay: they are the
 * boards' climate history.
 * @throws Refusal for a future day, one before the sawing, or a place or board that is not there
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
    orRefuse(found.length === slice.length || undefined, 'board');
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
