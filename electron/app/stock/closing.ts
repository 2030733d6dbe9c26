import { Refusal } from '../../../shared-core/contract/answer.ts';
import { joinedNote, type PlaceRow, type StackRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices, type Slices } from '../slices.ts';
import { checkMove, checkSawnBefore, letStacksFollow, moveBoard } from './moving.ts';
import { openPlace, openStack, reopenPlace, reopenStack } from './open-ones.ts';

export const closingQueries = (context: QueryContext) =>
  ({
    'stacks.closed': () => context.yard().stacks.closed(),
    'places.closed': () => context.yard().places.closed(),
  }) satisfies Partial<Queries>;

/** How stacks and places leave the lists, come back, and become one. What was there keeps its history. */
export function closingCommands(context: AppContext, judging: Judging) {
  const stackOf = (id: number): StackRow => orRefuse(context.yard().stacks.get(id), 'stack');
  function placeOf(id: number): PlaceRow {
    const { places } = context.yard();
    return { ...orRefuse(places.get(id), 'place'), ...places.holdings()(id) };
  }

  /** @throws Conflict where it is another now than the window showed */
  function asShown<R extends { version: number }>(record: R, basedOn: number): R {
    if (record.version !== basedOn) orConflict(record);
    return record;
  }

  /** @throws Refusal where a round on it is not finished */
  function checkNoRound({ name: stackName, openRoundId }: StackRow): void {
    if (openRoundId !== null) throw new Refusal(message('refusal.stack-round-open', { stackName }));
  }

  /** @throws Refusal where something is there, or is planned to go there */
  function checkUnused({ id, name: placeName }: Pick<PlaceRow, 'id' | 'name'>): void {
    const { places, plannedMoves } = context.yard();
    const withBoards = places
      .holdings()(id)
      .stacks.map(({ name }) => name);
    const stackNames = [...new Set([...withBoards, ...places.stacksAt(id)])].toSorted();
    if (stackNames.length > 0) throw new Refusal(message('refusal.place-in-use', { placeName, stackNames }));
    const planned = plannedMoves.list().find(({ move }) => move.placeId === id);
    if (planned) throw new Refusal(message('refusal.place-planned', { placeName, name: planned.name }));
  }

  /** Moves to where a board is already are none. */
  function dropRepeated(boardId: number): void {
    const { moves } = context.yard();
    const all = moves.ofBoard(boardId);
    for (const [index, { id, placeId }] of all.entries()) {
      if (placeId === all[index - 1]?.placeId) moves.remove(id);
    }
  }

  /** Does it to all of them, and to those that others added while it did. */
  function* untilNoneIsLeft(
    find: () => readonly number[],
    work: (batch: readonly number[]) => void,
  ): Slices<void> {
    for (let ids = find(); ids.length > 0; ids = find()) yield* inSlices(ids, work);
  }

  function* judgeAll(boardIds: readonly number[]): Slices<void> {
    yield* inSlices(boardIds, (slice) => judging.judgeAgain(slice));
  }

  return {
    'stacks.close': ({ id, basedOn }) => {
      const stack = asShown(stackOf(id), basedOn);
      // First: the round may still be probing its boards.
      checkNoRound(stack);
      const { name: stackName } = stack;
      const boards = stack.boards + stack.elsewhere.boards;
      if (boards > 0) throw new Refusal(message('refusal.stack-has-boards', { stackName, boards }));
      orConflict(context.yard().stacks.edit({ id, basedOn, changed: { closedAt: context.now() } }));
      return stackOf(id);
    },

    'stacks.reopen': ({ id, basedOn, name }) => {
      asShown(stackOf(id), basedOn);
      reopenStack(context, id, name);
      return stackOf(id);
    },

    'stacks.delete': ({ id, basedOn }) => {
      const { acts, stacks } = context.yard();
      const { name: stackName } = asShown(stackOf(id), basedOn);
      if (!stacks.remove(id)) throw new Refusal(message('refusal.stack-has-records', { stackName }));
      return { act: acts.now() };
    },

    'stacks.merge': function* ({ id, basedOn, intoId, move }) {
      const { boards, stacks } = context.yard();
      const from = asShown(openStack(context, id), basedOn);
      const into = openStack(context, intoId);
      orRefuse(id === intoId ? undefined : into, 'stack');
      checkNoRound(from);
      if (move) checkMove(context, move);
      const carried = new Set(move ? boards.idsWithStack(id) : []);
      yield* untilNoneIsLeft(
        () => boards.idsEverOfStack(id),
        (slice) => {
          openStack(context, intoId);
          if (move) checkMove(context, move);
          boards.putIn(slice, intoId);
          for (const boardId of slice) {
            if (!move || !carried.has(boardId)) continue;
            checkSawnBefore(context, [boardId], move);
            moveBoard(context, boardId, move);
          }
          judging.judgeAgain(slice);
        },
      );
      // One was started meanwhile.
      checkNoRound(stackOf(id));
      stacks.give(id, intoId);
      // Else it stays with the closed one, as the window said before.
      const note = joinedNote(into.note, from.note);
      if (from.note !== '' && note !== null)
        orConflict(stacks.edit({ id: intoId, basedOn: into.version, changed: { note } }));
      orConflict(stacks.edit({ id, basedOn, changed: { closedAt: context.now() } }));
      letStacksFollow(context, [intoId]);
      return stackOf(intoId);
    },

    'places.close': ({ id, basedOn }) => {
      const { acts, places } = context.yard();
      checkUnused(asShown(placeOf(id), basedOn));
      orConflict(places.edit({ id, basedOn, changed: { closedAt: context.now() } }));
      return { act: acts.now() };
    },

    'places.reopen': ({ id, basedOn, name }) => {
      asShown(placeOf(id), basedOn);
      reopenPlace(context, id, name);
      return placeOf(id);
    },

    'places.delete': ({ id, basedOn }) => {
      const { acts, places } = context.yard();
      const { name: placeName } = asShown(placeOf(id), basedOn);
      if (!places.remove(id)) throw new Refusal(message('refusal.place-has-records', { placeName }));
      return { act: acts.now() };
    },

    'places.merge': function* ({ id, basedOn, intoId, air: whose }) {
      const { airLogs, airSensors, moves, places } = context.yard();
      const from = asShown(openPlace(context, id), basedOn);
      const into = openPlace(context, intoId);
      orRefuse(id === intoId ? undefined : into, 'place');
      const { kind, air, airSource, airMovement } = from;
      if (whose === 'own') {
        const changed = { kind, air, airSource, airMovement };
        orConflict(places.edit({ id: intoId, basedOn: into.version, changed }));
      }
      const bringOver = (boardIds: readonly number[]): void => {
        openPlace(context, intoId);
        const all = boardIds.flatMap(moves.ofBoard).filter(({ placeId }) => placeId === id);
        moves.giveAll(
          all.map((move) => move.id),
          intoId,
        );
        boardIds.forEach(dropRepeated);
      };
      yield* inSlices(airLogs.ofPlace(id), (slice) => {
        openPlace(context, intoId);
        for (const air of slice) {
          const row = { ...air, placeId: intoId };
          if (!airLogs.isTyped(row)) airLogs.add({ ...row, sensorId: null });
        }
      });
      yield* untilNoneIsLeft(() => moves.boardsEverAt(id), bringOver);
      for (const stay of airSensors.staysAt(id))
        airSensors.editStay({ id: stay.id, basedOn: stay.version, changed: { placeId: intoId } });
      openPlace(context, intoId);
      places.give(id, intoId);
      orConflict(places.edit({ id, basedOn, changed: { closedAt: context.now() } }));
      yield* judgeAll(moves.boardsEverAt(intoId));
      return placeOf(intoId);
    },
  } satisfies Partial<Commands>;
}
