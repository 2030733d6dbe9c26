import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { Move } from '../../../shared-core/contract/yard.ts';
import {
  type Dated,
  type DayOrder,
  momentOfMove,
  momentOfPage,
} from '../../../shared-core/probing/readings/order-of-day.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';

/** A page of a notebook, and whether its boards were moved before it or after it where the day alone does not tell. */
export interface OrderedPage {
  startedAt: string;
  isDayOnly: boolean;
  /** Null while unknown. */
  order: DayOrder | null;
}

const boundsOf = (context: AppContext, at: string) => ({
  fromMs: new Date(at).setHours(0, 0, 0, 0),
  untilMs: Math.min(Date.parse(context.now()), Date.parse(endOfDay(at))),
});

/** The moves of a board on the local day of an instant; its first place is none. */
function movesOfDay({ yard }: Pick<QueryContext, 'yard'>, boardId: number, at: string): Move[] {
  const day = new Date(at).toDateString();
  const [, ...later] = yard().moves.ofBoard(boardId);
  return later.filter(({ since }) => new Date(since).toDateString() === day);
}

/** Those of the day of readings whose order among them is not told by the times that are known. */
export const unorderedMoves = (
  context: Pick<QueryContext, 'yard'>,
  boardId: number,
  at: string,
  isDayOnly: boolean,
): Move[] => movesOfDay(context, boardId, at).filter(({ datedBy }) => isDayOnly || datedBy === 'day');

function noRoom(context: AppContext, boardId: number): Refusal {
  const { code: boardCode } = orRefuse(context.yard().boards.get(boardId), 'board');
  return new Refusal(message('refusal.no-room-for-move', { boardCode }));
}

/**
 * The instant of a page among the moves of its boards on that day.
 * @throws Refusal, a question, where nobody knows whether one of them was moved before
 */
export function instantOfPage(
  context: AppContext,
  boardIds: readonly number[],
  { startedAt, isDayOnly, order }: OrderedPage,
): string {
  const from = isoOf(new Date(startedAt).setHours(0, 0, 0, 0));
  const moved = context.yard().moves.movedBetween(boardIds, from, endOfDay(startedAt));
  const open: Dated[] = [];
  for (const id of moved) {
    for (const { since, datedBy } of unorderedMoves(context, id, startedAt, isDayOnly)) {
      if (order === null) {
        const { code: boardCode } = orRefuse(context.yard().boards.get(id), 'board');
        throw new Refusal(message('past-round.moved-or-probed-first', { boardCode, movedOn: since }));
      }
      open.push({ atMs: Date.parse(since), isDayOnly: datedBy === 'day' });
    }
  }
  if (!isDayOnly || open.length === 0) return startedAt;
  const moment = momentOfPage(Date.parse(startedAt), { ...boundsOf(context, startedAt), moves: open }, order);
  if (typeof moment !== 'number') throw noRoom(context, moved[0] as number);
  return isoOf(moment);
}

/**
 * Moves of a board of which only the day is known come before or after a page whose time is, as a person said.
 * @param readAt  when the board was read on that day
 */
export function orderMoves(
  context: AppContext,
  boardId: number,
  { startedAt, isDayOnly, order }: OrderedPage,
  readAt: readonly string[],
): void {
  if (isDayOnly || order === null) return;
  const { moves } = context.yard();
  const ids = movesOfDay(context, boardId, startedAt).map(({ id }) => id);
  // Each makes room for the next.
  for (const id of order === 'moved-first' ? ids : ids.toReversed()) {
    const all = movesOfDay(context, boardId, startedAt);
    const index = all.findIndex((move) => move.id === id);
    const { version, since, datedBy } = all[index] as Move;
    if (datedBy !== 'day') continue;
    const instants = all.map((move) => Date.parse(move.since));
    const moment = momentOfMove(
      { atMs: Date.parse(since), isDayOnly: true },
      {
        ...boundsOf(context, startedAt),
        movesBeforeMs: instants.slice(0, index),
        movesAfterMs: instants.slice(index + 1),
        readings: readAt.map((at) => ({ atMs: Date.parse(at), isDayOnly: false })),
      },
      order,
    );
    if (typeof moment !== 'number') throw noRoom(context, boardId);
    if (moment !== Date.parse(since)) moves.edit({ id, basedOn: version, changed: { since: isoOf(moment) } });
  }
}
