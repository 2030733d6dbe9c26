import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { ArchivedWhy, Leaving } from '../../../shared-core/contract/archive.ts';
import type { Origin } from '../../../shared-core/contract/origin.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';
import { endOfDay } from '../forecast/end-of-day.ts';
import type { Commands } from '../handlers.ts';
import { inSlices, type Slices } from '../slices.ts';
import { isBeforeDay } from './board-days.ts';
import { letStacksFollow } from './moving.ts';
import { checkInYard, reopenThoseInUse } from './open-ones.ts';

const became = ({ how, code: ofCode }: Origin, boardCode: string): Message =>
  how === 'merged'
    ? message('refusal.board-merged', { boardCode, ofCode })
    : message('refusal.board-became', { boardCode, ofCode });

/** How boards leave the yard and come back. Nothing that is known of them is deleted. */
export function lifeCommands(context: AppContext) {
  /** @throws Refusal where one was read or weighed */
  function checkUnused(boardIds: readonly number[]): void {
    const { boards, readings, samples } = context.yard();
    for (const id of boardIds) {
      const isUsed =
        readings.ownRounds(id).length > 0 || samples.cuts(id).length > 0 || samples.weights(id).length > 0;
      if (!isUsed) continue;
      const { code: boardCode } = orRefuse(boards.get(id), 'board');
      throw new Refusal(message('refusal.board-has-readings', { boardCode }));
    }
  }

  /** @throws Refusal, a question, where one was read on a day after it left */
  function checkNotReadAfter(boardIds: readonly number[], at: string): void {
    const read = context.yard().readings.lastReadAfter(boardIds, endOfDay(at));
    if (!read) return;
    const { code: boardCode, readAt: readOn } = read;
    throw new Refusal(message('refusal.left-before-read', { boardCode, readOn }));
  }

  /** @throws Refusal where one was sawn on a later day */
  function checkSawnBy(boardIds: readonly number[], at: string): void {
    for (const id of boardIds) {
      const { sawnOn, code: boardCode } = orRefuse(context.yard().boards.judgedBy(id), 'board');
      if (sawnOn !== null && isBeforeDay(at, sawnOn))
        throw new Refusal(message('refusal.left-before-sawn', { boardCode, sawnOn }));
    }
  }

  /** @throws Refusal, a question, where one was moved on a day after it left; where it was first is only known since then */
  function checkNotMovedAfter(boardIds: readonly number[], at: string): void {
    const { boards, moves } = context.yard();
    for (const id of boardIds) {
      const last = moves.ofBoard(id).slice(1).at(-1);
      if (last === undefined || Date.parse(last.since) <= Date.parse(endOfDay(at))) continue;
      const { code: boardCode } = orRefuse(boards.judgedBy(id), 'board');
      const { placeName, since: movedOn } = last;
      throw new Refusal(message('refusal.left-before-move', { boardCode, placeName, movedOn }));
    }
  }

  /** @throws Refusal, a question, where one is reserved for a project that would lose it */
  function checkNotReserved(boardIds: readonly number[], why: Leaving): void {
    if (why === 'used') return;
    const reserved = context.yard().projects.reservedAmong(boardIds);
    if (reserved) throw new Refusal(message('refusal.left-reserved', { ...reserved, why }));
  }

  /** They are reserved for no project any more. @returns those that were */
  function* archive(
    boardIds: readonly number[],
    at: string,
    why: ArchivedWhy,
    check: (slice: readonly number[]) => void = () => {},
  ): Slices<number[]> {
    const { boards, projects } = context.yard();
    const stackIds = new Set<number>();
    const released: number[] = [];
    yield* inSlices(boardIds, (slice) => {
      checkInYard(context, slice);
      check(slice);
      for (const { stackId } of boards.versionsOf(slice)) stackIds.add(stackId);
      boards.archive(slice, at, why);
      released.push(...projects.release(slice));
    });
    letStacksFollow(context, stackIds);
    return released;
  }

  return {
    'boards.archive': function* ({ boardIds, why: code, note, at, ...may }) {
      if (Date.parse(at) > Date.parse(context.now())) throw new Refusal(message('refusal.left-to-come'));
      if (!may.isReserved) checkNotReserved(boardIds, code);
      const check = (slice: readonly number[]) => {
        checkSawnBy(slice, at);
        if (!may.isBeforeReading) checkNotReadAfter(slice, at);
        if (!may.isBeforeMove) checkNotMovedAfter(slice, at);
      };
      const released = yield* archive(boardIds, at, { code, note }, check);
      return { archived: boardIds.length, released };
    },

    'boards.delete': function* ({ boardIds }) {
      yield* archive(boardIds, context.now(), { code: 'deleted', note: '' }, checkUnused);
      return { deleted: boardIds.length };
    },

    'boards.bringBack': function* ({ boards: given }) {
      const { boards, origins } = context.yard();
      yield* inSlices(given, (slice) => {
        for (const { id, code } of slice) {
          const { code: ownCode } = orRefuse(boards.get(id), 'board');
          const [of] = origins.children(id);
          if (of) throw new Refusal(became(of, ownCode));
          const boardCode = code ?? ownCode;
          refusingDuplicates(message('refusal.board-code-taken-since', { boardCode }), () =>
            boards.bringBack(id, code),
          );
        }
      });
      reopenThoseInUse(context);
      return { broughtBack: given.length };
    },
  } satisfies Partial<Commands>;
}
