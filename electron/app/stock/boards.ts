import { Refusal } from '../../../shared-core/contract/answer.ts';
import { firstCode, followingCode } from '../../../shared-core/contract/board-code.ts';
import type { BoardRow, NewBoard } from '../../../shared-core/contract/yard.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { missingFacts } from '../../../shared-core/wood/drying/missing-facts.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Assessing } from '../judging/assessing.ts';
import type { Judging } from '../judging/judging.ts';
import { checkBoardDays, checkHereSince, checkSawnByMoves, startOfDay } from './board-days.ts';
import { freeCode } from './free-code.ts';
import { instantOfMove, moveBoards } from './moving.ts';
import { openStack } from './open-ones.ts';

export const boardQueries = (context: QueryContext, assessing: Assessing) =>
  ({
    'boards.list': (which) => context.yard().boards.page(which),

    'boards.get': ({ id }) => {
      const { boards, findings, moves, origins, places, readings } = context.yard();
      const board = orRefuse(boards.get(id), 'board');
      const assessments = readings
        .roundsOfBoard(id)
        .toReversed()
        .map((roundId) => assessing.assess(id, roundId));
      return {
        board,
        moves: moves.ofBoard(id),
        readings: assessments.flatMap((assessment) => assessment.readings),
        findings: findings.ofBoard(id),
        isSpeciesConfirmed: orRefuse(boards.judgedBy(id), 'board').isSpeciesConfirmed,
        cameFrom: origins.parents(id),
        becameOf: origins.children(id),
        readBefore: origins.ancestors(id),
        missing: missingFacts(
          board,
          places.get(board.placeId)?.airSource?.kind === 'region' ? board.placeName : null,
        ),
      };
    },

    'boards.withCodes': ({ codes }) => context.yard().boards.withCodes(codes),

    'boards.nextCode': ({ stackId }) => {
      const yard = context.yard();
      const { name } = orRefuse(yard.stacks.get(stackId), 'stack');
      const newest = yard.boards.codesOfStack(stackId)[0];
      return { code: freeCode(yard, newest === undefined ? firstCode(name) : followingCode(newest)) };
    },
  }) satisfies Partial<Queries>;

export function boardCommands(context: AppContext, judging: Judging) {
  const get = (id: number): BoardRow => orRefuse(context.yard().boards.get(id), 'board');
  const taken = (code: string) => message('refusal.board-code-taken', { boardCode: code });

  function checkSpecies({ speciesId, code }: Pick<NewBoard, 'speciesId' | 'code'>): void {
    if (context.yard().species.get(speciesId) === undefined) {
      throw new Refusal(message('refusal.species-unknown', { speciesId, boardCode: code }));
    }
  }

  /** It came to its first place on that day, before anything that was read of it there on that day. */
  function beganOn({ id, sawnOn }: BoardRow, day: string): void {
    checkHereSince(context, day, sawnOn);
    const { moves } = context.yard();
    const first = orRefuse(moves.ofBoard(id)[0], 'move');
    const since = isoOf(startOfDay(day));
    const to = {
      since,
      isDayOnly: true,
      isInserted: false,
      order: 'moved-first',
      isBeforeSawing: false,
    } as const;
    moves.edit({ id: first.id, basedOn: first.version, changed: instantOfMove(context, id, to, first) });
  }

  return {
    'boards.add': (boards) => {
      // A stack is looked up with the counts of its boards: once, not for each of 500 boards.
      const places = new Map(
        [...new Set(boards.map((board) => board.stackId))].map((id) => [id, openStack(context, id).placeId]),
      );
      const ids = boards.map(({ hereSinceOn, ...board }) => {
        checkSpecies(board);
        checkBoardDays(context, [], board);
        if (hereSinceOn !== null) checkHereSince(context, hereSinceOn, board.sawnOn);
        const placeId = orRefuse(places.get(board.stackId), 'stack');
        return refusingDuplicates(taken(board.code), () =>
          hereSinceOn === null
            ? context.yard().boards.add(board, placeId, context.now())
            : context.yard().boards.add(board, placeId, isoOf(startOfDay(hereSinceOn)), 'day'),
        );
      });
      return ids.map(get);
    },

    'boards.edit': ({ changed: { isBeforeSawing, hereSinceOn, ...changed }, ...of }) => {
      const edit = { ...of, changed };
      const before = get(edit.id);
      const { stackId, speciesId, code = before.code } = edit.changed;
      if (stackId !== undefined && stackId !== before.stackId) openStack(context, stackId);
      if (speciesId !== undefined) checkSpecies({ speciesId, code });
      checkBoardDays(context, [edit.id], changed);
      const { sawnOn } = changed;
      if (sawnOn && sawnOn !== before.sawnOn && !isBeforeSawing) checkSawnByMoves(context, [edit.id], sawnOn);
      orConflict(refusingDuplicates(taken(code), () => context.yard().boards.edit(edit)));
      if (hereSinceOn !== undefined) beganOn(get(edit.id), hereSinceOn);
      judging.judgeAgain([edit.id]);
      return get(edit.id);
    },

    'boards.confirmSpecies': ({ id }) => {
      get(id);
      context.yard().confirmedSpecies.confirm(id, context.now());
      judging.judgeAgain([id]);
      return {};
    },

    'boards.move': function* ({ boardIds, work: _, ...to }) {
      yield* moveBoards(context, judging, boardIds, to);
      return { moved: boardIds.length };
    },
  } satisfies Partial<Commands>;
}
