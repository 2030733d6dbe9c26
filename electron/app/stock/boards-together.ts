import { Conflict, Refusal } from '../../../shared-core/contract/answer.ts';
import type { CheckedInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { positionInStack, whyNotLaid } from '../../../shared-core/contract/stack-order.ts';
import type { Board, BoardRow } from '../../../shared-core/contract/yard.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import { type Exclusion, isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Reading } from '../../../shared-core/probing/readings/reading.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { BoardVersion } from '../../store/board-table.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import { inSlices, type Slices } from '../slices.ts';
import { checkBoardDays, checkSawnByMoves } from './board-days.ts';
import { checkMove, checkSawnBefore, letStacksFollow, moveBoard } from './moving.ts';
import { openStack } from './open-ones.ts';

type Input = CheckedInput<'boards.editTogether'>;
type Edited = RequestOutput<'boards.editTogether'>;

/** What such an edit came to. */
function editedBy({ yard }: QueryContext, act: string): Edited {
  const done = yard().acts.find(act);
  return orRefuse(done?.request === 'boards.editTogether' ? (done.outcome as Edited) : undefined, 'act');
}

export const boardsTogetherQueries = (context: QueryContext) =>
  ({
    'boards.callsChanged': ({ act }) => {
      const { acts, boards, findings } = context.yard();
      const before = new Map(editedBy(context, act).callsBefore.map(({ id, call }) => [id, call]));
      return {
        isUndone: acts.listed(act)?.isUndone ?? false,
        isJudging: findings.boardsDue(RULES_VERSION).some((id) => before.has(id)),
        changed: boards
          .callsOf([...before.keys()])
          .flatMap(({ id, code, call }) => (before.get(id) === call ? [] : [{ code, call }])),
      };
    },
  }) satisfies Partial<Queries>;

/** A refusal names no more boards than a person reads. */
const MOST_NAMED = 5;

/** The same done to several boards in one act: all of it, or nothing where anything is refused. */
export function boardsTogetherCommands(context: AppContext, judging: Judging, comparing: Comparing) {
  const conflict = (outdated: readonly Pick<BoardRow, 'id' | 'code'>[]): Conflict =>
    new Conflict(
      outdated.map(({ id }) => orRefuse(context.yard().boards.get(id), 'board')),
      message('refusal.boards-edited-meanwhile', {
        boards: outdated.length,
        someCodes: outdated.slice(0, MOST_NAMED).map(({ code }) => code),
      }),
    );

  /** What an edit gives to every board, and to each its place in the order. */
  function editOf({
    changed,
    stackId,
    stackOrder,
  }: Input): ((index: number, inStack: number) => Partial<Board>) | null {
    const { barkSide, barkOffOn = null, thicknessMm, thicknessQuarters = null, ...others } = changed;
    const shared = {
      ...others,
      ...(barkSide === undefined ? {} : { barkSide, barkOffOn }),
      ...(thicknessMm === undefined ? {} : { thicknessMm, thicknessQuarters }),
    };
    if (stackId === null && stackOrder === null && Object.keys(shared).length === 0) return null;
    const put = stackId === null ? {} : { stackId, layer: null, column: null };
    return (index, inStack) => ({
      ...shared,
      ...(inStack === stackId ? {} : put),
      ...(stackOrder ? positionInStack(stackOrder, index) : {}),
    });
  }

  /**
   * Looks at all of them before the first is edited.
   * @returns their stacks
   * @throws Refusal where one is not there; Conflict with those that are at another version than the window showed
   */
  function* check({ boards: given }: Input, isEdited: boolean): Slices<number[]> {
    const stackIds = new Set<number>();
    const outdated: BoardVersion[] = [];
    yield* inSlices(given, (slice) => {
      const found = context.yard().boards.versionsOf(slice.map(({ id }) => id));
      orRefuse(found.length === slice.length || undefined, 'board');
      const basedOn = new Map(slice.map((board) => [board.id, board.basedOn]));
      for (const board of found) {
        stackIds.add(board.stackId);
        if (isEdited && board.version !== basedOn.get(board.id)) outdated.push(board);
      }
    });
    if (outdated.length > 0) throw conflict(outdated);
    return [...stackIds];
  }

  /** Gives their stacks a use. */
  function setUse(stackIds: readonly number[], endUseId: string): void {
    const { stacks, endUses } = context.yard();
    orRefuse(endUses.get(endUseId), 'use');
    for (const id of stackIds) {
      const { version } = orRefuse(stacks.get(id), 'stack');
      stacks.edit({ id, basedOn: version, changed: { endUseId } });
    }
  }

  /** What was read on a board in the last round that did, but for slips: of the readings, as its call may still be made. */
  function latestReadingsOf(boardId: number): Reading[] {
    const { origins, readings } = context.yard();
    const records = origins.records(boardId);
    for (const roundId of readings.roundsOfBoard(boardId).toReversed()) {
      const taken = records
        .flatMap((record) => readings.takenOn(record, roundId))
        .filter(({ excluded }) => !isSlip(excluded));
      if (taken.length > 0) return taken;
    }
    return [];
  }

  /** Excludes all readings of their latest rounds, or includes what a person excluded where `why` is null. */
  function excludeLatest(boardIds: readonly number[], why: Exclusion | null): void {
    const rounds = new Set<number>();
    for (const { id, roundId, excluded } of boardIds.flatMap(latestReadingsOf)) {
      if ((excluded === null) === (why === null)) continue;
      rounds.add(roundId);
      context.yard().amendments.exclude('reading', id, why, context.now());
    }
    context.afterwards(() => comparing.compare([...rounds]));
  }

  return {
    'boards.editTogether': function* (input) {
      const {
        boards: given,
        changed,
        stackId,
        stackOrder,
        move,
        endUseId,
        latestReadings,
        isBeforeSawing,
      } = input;
      const whyNot = stackOrder && whyNotLaid(stackOrder, given.length);
      if (whyNot) throw new Refusal(message('refusal.nothing-changed', { why: whyNot }));
      const { speciesId } = changed;
      const { acts, boards, species } = context.yard();
      if (stackId !== null) openStack(context, stackId);
      if (speciesId !== undefined) orRefuse(species.get(speciesId), 'species');
      checkBoardDays(context, [], changed);
      if (move) checkMove(context, move);
      const edit = editOf(input);
      const stackIds = yield* check(input, edit !== null);
      const act = acts.now();
      const callsBefore: Edited['callsBefore'] = [];
      const judge = (ids: readonly number[]): void => {
        for (const { id, call } of boards.callsOf(ids)) callsBefore.push({ id, call });
        judging.judgeAgain(ids);
      };
      if (endUseId !== null) setUse(stackIds, endUseId);
      yield* inSlices(given, (slice, from) => {
        const ids = slice.map(({ id }) => id);
        // Another window closed it meanwhile.
        if (stackId !== null) openStack(context, stackId);
        if (move) checkMove(context, move);
        checkBoardDays(context, ids, changed);
        if (changed.sawnOn && !isBeforeSawing) checkSawnByMoves(context, ids, changed.sawnOn);
        const outdated: BoardRow[] = [];
        const inStack = new Map(boards.versionsOf(ids).map((board) => [board.id, board.stackId]));
        for (const [index, { id, basedOn }] of slice.entries()) {
          const current = edit && boards.edit({ id, basedOn, changed: edit(from + index, inStack.get(id)!) });
          if (current) outdated.push(current);
          if (move) moveBoard(context, id, move);
        }
        // One was edited after its version was compared.
        if (outdated.length > 0) throw conflict(outdated);
        // By the sawing date that this gives it, too.
        if (move) checkSawnBefore(context, ids, move);
        if (latestReadings) excludeLatest(ids, latestReadings === 'include' ? null : latestReadings.exclude);
        judge(ids);
      });
      if (move || stackId !== null) {
        letStacksFollow(context, stackId === null ? stackIds : [...stackIds, stackId]);
      }
      if (endUseId !== null) {
        const isGiven = new Set(given.map(({ id }) => id));
        yield* inSlices(
          stackIds.flatMap(boards.idsOfStack).filter((id) => !isGiven.has(id)),
          judge,
        );
      }
      return {
        act,
        boards: given.map(({ id, basedOn }) => ({ id, version: edit ? basedOn + 1 : basedOn })),
        callsBefore: callsBefore.toSorted((a, b) => a.id - b.id),
      };
    },
  } satisfies Partial<Commands>;
}
