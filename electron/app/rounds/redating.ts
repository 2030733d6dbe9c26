import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { RoundDate } from '../../../shared-core/contract/round.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { redated } from '../../../shared-core/probing/readings/redated.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { RoundRow } from '../../store/round-table.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { leftOf, readBeforeSawn } from '../stock/board-days.ts';
import { longBeforeStack } from './long-before-stack.ts';
import { instantOfPage, orderMoves } from './page-order.ts';

const dateOf = ({ id, version, startedAt, datedBy, finishedAt }: RoundRow): RoundDate => ({
  id,
  version,
  startedAt,
  isDated: datedBy === 'day',
  finishedAt,
});

export const redatingQueries = (context: QueryContext) =>
  ({
    'rounds.ofBoard': ({ boardId }) => context.yard().rounds.ofBoard(boardId).map(dateOf),
  }) satisfies Partial<Queries>;

/** Corrects when a round was, as where the clock was wrong. What its readings were taken at stays in the file as it was. */
export function redatingCommands(context: AppContext, judging: Judging) {
  /** @throws Refusal where a board of the round would have been probed before it was sawn */
  function checkSawn(boardId: number, roundId: number): void {
    const { boards, readings } = context.yard();
    const { code: boardCode, sawnOn } = orRefuse(boards.get(boardId), 'board');
    if (sawnOn === null || !readBeforeSawn(readings.ofBoard(boardId, roundId), sawnOn)) return;
    throw new Refusal(message('refusal.redated-before-sawn', { boardCode, sawnOn }));
  }

  /**
   * @param before  the readings of the board, dated as until now
   * @param movedAt  the instants that they would have, by their ids
   * @throws Refusal where the board would have been probed after it left the yard, and was not until now
   */
  function checkLeft(
    boardId: number,
    before: readonly Reading[],
    movedAt: ReadonlyMap<number, string>,
  ): void {
    const { boards, origins } = context.yard();
    const board = orRefuse(boards.get(origins.kept(boardId)), 'board');
    const left = leftOf(board);
    if (left === null) return;
    const leftMs = Date.parse(endOfDay(left.at));
    const isAfter = before.some(
      ({ id, excluded, takenAt }) =>
        excluded === null && Date.parse(takenAt) <= leftMs && Date.parse(movedAt.get(id)!) > leftMs,
    );
    if (isAfter)
      throw new Refusal(message('refusal.redated-after-left', { boardCode: board.code, leftOn: left.at }));
  }

  return {
    'rounds.edit': ({ id, basedOn, changed: { startedAt: given, isYearRight, order = null } }) => {
      const { rounds, readings, amendments } = context.yard();
      const round = orRefuse(rounds.get(id), 'round');
      if (given === undefined) return dateOf(round);
      if (round.finishedAt === null) throw new Refusal(message('refusal.round-open'));
      const now = context.now();
      if (Date.parse(given) > Date.parse(now)) throw new Refusal(message('refusal.redated-to-come'));

      const walked = readings.boardsWalked(id);
      const ofBoards = walked.map((boardId) => readings.takenOn(boardId, id));
      // One that was moved from another board was taken when that board's was.
      const taken = ofBoards
        .flat()
        .filter(({ movedFrom }) => movedFrom === undefined)
        .toSorted((one, other) => one.id - other.id);
      // A round whose day a person gave was finished when it was typed.
      const isTyped = round.datedBy === 'day';
      const instants = [...taken.map(({ takenAt }) => takenAt), ...(isTyped ? [] : [round.finishedAt])];
      const boardIds = [...new Set(walked.map(context.yard().origins.kept))];
      // Another time that stands for the same day says nothing new.
      const isSameDay =
        isTyped && new Date(given).toDateString() === new Date(round.startedAt).toDateString();
      const page = { startedAt: given, isDayOnly: isTyped, order };
      const startedAt = isSameDay ? given : instantOfPage(context, boardIds, page);
      const moved = redated(round.startedAt, instants, startedAt, Date.parse(now));
      if (moved === null) throw new Refusal(message('refusal.redated-ends-to-come'));

      const finish = isTyped ? {} : { datedBy: 'time' as const, finishedAt: moved.at(-1)! };
      const current = rounds.edit({ id, basedOn, changed: { startedAt, ...finish } });
      orConflict(current && dateOf(current));
      for (const [index, reading] of taken.entries()) {
        amendments.amendReading(reading.id, 'takenAt', moved[index]!, now);
      }
      const dated = walked.flatMap((boardId) => readings.takenOn(boardId, id));
      const movedAt = new Map(dated.map((reading) => [reading.id, reading.takenAt]));
      for (const [index, boardId] of walked.entries()) {
        checkSawn(boardId, id);
        checkLeft(boardId, ofBoards[index]!, movedAt);
        const readAt = ofBoards[index]!.filter(({ excluded }) => excluded === null).map(
          (each) => movedAt.get(each.id)!,
        );
        orderMoves(context, context.yard().origins.kept(boardId), page, readAt);
      }
      const asks = isYearRight ? null : longBeforeStack(context, round.stackId, startedAt, 'date');
      if (asks !== null) throw new Refusal(asks);
      judging.judgeAgain(walked);
      return dateOf(orRefuse(rounds.get(id), 'round'));
    },
  } satisfies Partial<Commands>;
}
