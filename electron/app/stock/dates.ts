import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { DateOfYard, PlannedMove } from '../../../shared-core/contract/requests/dates.ts';
import type { StackRow } from '../../../shared-core/contract/yard.ts';
import { isOfSome, probeDayOf } from '../../../shared-core/probing/plan/next-probe.ts';
import { isMoveDue } from '../../../shared-core/probing/plan/stack-call.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext } from '../context.ts';
import { dayOf } from '../forecast/judging-board.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';
import { checkMove, moveBoards, movedNow } from './moving.ts';
import { checkInYard, openPlace, openStack } from './open-ones.ts';
import { stacksToday } from './stacks-today.ts';

/** The days on which its boards are next read with use, where that is not what it is due for, or likely ready. */
function datesOfStack(stack: StackRow, uuid: string): DateOfYard[] {
  const of = { stackId: stack.id, stackName: stack.name, uuid };
  const { due, nextReady, lastReady, withDay } = stack;
  const isFree = due === null || due.placeId !== undefined || isMoveDue(due.kind);
  const probe = isFree ? probeDayOf(stack) : null;
  const ready = (which: 'next' | 'last', found: StackRow['nextReady']): DateOfYard[] =>
    found === null ? [] : [{ kind: 'ready', which, boards: withDay, on: found.when.likely, ...found, ...of }];
  return [
    ...(probe === null
      ? []
      : [
          {
            kind: 'probe' as const,
            on: dayOf(isoOf(probe.atMs)),
            readAt: probe.readAt,
            isOfSome: isOfSome(stack, probe, dayOf),
            boardCode: stack.nextProbe.oldestCode,
            ...of,
          },
        ]),
    ...ready('next', nextReady),
    ...(withDay > 1 && lastReady?.when.likely !== nextReady?.when.likely ? ready('last', lastReady) : []),
  ];
}

export const dateQueries = (context: QueryContext) =>
  ({
    'dates.list': () => {
      const { stacks, plannedMoves, projects } = context.yard();
      const all = stacksToday(context).filter(({ boards, elsewhere }) => boards + elsewhere.boards > 0);
      const uuids = stacks.uuids();
      const uuidOf = ({ id }: StackRow) => orRefuse(uuids.get(id), 'stack');
      const dates = all.flatMap((stack) => datesOfStack(stack, uuidOf(stack)));
      for (const planned of plannedMoves.list())
        dates.push({ kind: 'move', on: planned.move.plannedOn, ...planned });
      for (const { id, uuid, name, neededBy } of projects.list()) {
        const boards = projects.boardIds(id).length;
        if (neededBy !== null)
          dates.push({ kind: 'needed', on: neededBy, projectId: id, name, uuid, boards });
      }
      return {
        due: all.flatMap((stack) => {
          const { id: stackId, name: stackName, due } = stack;
          return due === null ? [] : [{ stackId, stackName, uuid: uuidOf(stack), due }];
        }),
        dates: dates.toSorted((one, other) => one.on.localeCompare(other.on)),
      };
    },
    'plannedMoves.of': ({ stackId, boardId }) =>
      context
        .yard()
        .plannedMoves.list()
        .filter(({ move }) => move.stackId === stackId && move.boardId === boardId),
  }) satisfies Partial<Queries>;

/** Moves that are planned, changed, and made. */
export function plannedMoveCommands(context: AppContext, judging: Judging) {
  const get = (id: number): PlannedMove => orRefuse(context.yard().plannedMoves.get(id), 'planned-move');
  function remove(id: number, basedOn: number): void {
    const move = get(id);
    if (!context.yard().plannedMoves.remove(id, basedOn)) orConflict(move);
  }
  return {
    'plannedMoves.add': (planned) => {
      const { boards, plannedMoves } = context.yard();
      openPlace(context, planned.placeId);
      if (planned.stackId !== null) openStack(context, planned.stackId);
      if (planned.boardId !== null) {
        checkInYard(context, [planned.boardId]);
        const { code: name, placeId, placeName } = orRefuse(boards.get(planned.boardId), 'board');
        // Where a move is planned already, another may lead back.
        const moves = plannedMoves.list().some(({ move }) => move.boardId === planned.boardId);
        if (placeId === planned.placeId && !moves)
          throw new Refusal(message('refusal.planned-move-there', { name, placeName }));
      }
      return get(plannedMoves.add(planned));
    },
    'plannedMoves.edit': (edit) => {
      const { plannedMoves } = context.yard();
      get(edit.id);
      if (edit.changed.placeId !== undefined) openPlace(context, edit.changed.placeId);
      orConflict(plannedMoves.edit(edit));
      return get(edit.id);
    },
    'plannedMoves.delete': ({ id, basedOn }) => {
      remove(id, basedOn);
      return { act: context.yard().acts.now() };
    },
    *'plannedMoves.make'({ id, basedOn }) {
      const { acts, boards, stacks } = context.yard();
      const { stackId, boardId, placeId } = get(id);
      const to = movedNow(placeId, context.now());
      remove(id, basedOn);
      const boardIds = stackId === null ? [boardId!] : boards.idsWithStack(stackId);
      if (stackId !== null) {
        const { name: stackName, version } = orRefuse(stacks.get(stackId), 'stack');
        if (boardIds.length === 0) throw new Refusal(message('refusal.planned-move-empty', { stackName }));
        checkMove(context, to);
        stacks.edit({ id: stackId, basedOn: version, changed: { placeId } });
      }
      yield* moveBoards(context, judging, boardIds, to);
      return { act: acts.now(), boardIds };
    },
  } satisfies Partial<Commands>;
}
