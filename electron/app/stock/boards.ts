import { Refusal } from '../../../shared-core/contract/answer.ts';
import { followingCode } from '../../../shared-core/contract/board-code.ts';
import type { RequestInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { positionInStack, whyNotLaid } from '../../../shared-core/contract/stack-order.ts';
import type { Board, BoardRow, NewBoard } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';
import type { Judging } from '../judging/judging.ts';
import { moveBoards } from './moving.ts';

export function boardUseCases(context: AppContext, judging: Judging) {
  const get = (id: number): BoardRow => orRefuse(context.yard().boards.get(id), 'board');

  function checkSpecies(board: NewBoard): void {
    if (context.yard().species.get(board.speciesId) === undefined) {
      throw new Refusal(
        message('refusal.species-unknown', { speciesId: board.speciesId, boardCode: board.code }),
      );
    }
  }
  const taken = (code: string) => message('refusal.board-code-taken', { boardCode: code });

  return {
    'boards.list': (which: { stackId: number | null; search: string; offset: number; limit: number }) =>
      context.yard().boards.page(which),

    'boards.get': ({ id }: { id: number }): RequestOutput<'boards.get'> => {
      const board = get(id);
      const rounds = context.yard().readings.roundsOfBoard(id).toReversed();
      const assessments = rounds.map((roundId) => judging.assess(id, roundId));
      return {
        board,
        moves: context.yard().moves.ofBoard(id),
        readings: assessments.flatMap((assessment) => assessment.readings),
        findings: context.yard().findings.ofBoard(id),
        reasons: assessments[0]?.reasons ?? [],
        isSpeciesConfirmed: orRefuse(context.yard().boards.judgedBy(id), 'board').isSpeciesConfirmed,
      };
    },

    'boards.add': (boards: NewBoard[]): BoardRow[] => {
      // A stack is looked up with the counts of its boards: once, not for each of 500 boards.
      const places = new Map(
        [...new Set(boards.map((board) => board.stackId))].map((id) => [
          id,
          orRefuse(context.yard().stacks.get(id), 'stack').placeId,
        ]),
      );
      const ids = context.yard().transaction(() =>
        boards.map((board) => {
          checkSpecies(board);
          const placeId = orRefuse(places.get(board.stackId), 'stack');
          return refusingDuplicates(taken(board.code), () =>
            context.yard().boards.add(board, placeId, context.now()),
          );
        }),
      );
      context.emit('yard.changed', {});
      return ids.map(get);
    },

    'boards.change': (board: Board): BoardRow => {
      const { version } = get(board.id);
      orRefuse(context.yard().stacks.get(board.stackId), 'stack');
      checkSpecies(board);
      refusingDuplicates(taken(board.code), () =>
        context.yard().boards.edit({ id: board.id, basedOn: version, changed: board }),
      );
      judging.judgeAgain([board.id]);
      context.emit('yard.changed', {});
      return get(board.id);
    },

    'boards.changeTogether': ({
      boardIds,
      said,
      stackOrder,
    }: RequestInput<'boards.changeTogether'>): RequestOutput<'boards.changeTogether'> => {
      const whyNot = stackOrder && whyNotLaid(stackOrder, boardIds.length);
      if (whyNot) throw new Refusal(message('refusal.nothing-changed', { why: whyNot }));
      const { boards } = context.yard();
      const { barkSide, barkOffOn = null, ...others } = said;
      const shared = barkSide === undefined ? others : { ...others, barkSide, barkOffOn };
      context.yard().transaction(() => {
        for (const [index, id] of boardIds.entries()) {
          const position = stackOrder ? positionInStack(stackOrder, index) : {};
          boards.edit({ id, basedOn: get(id).version, changed: { ...shared, ...position } });
        }
      });
      context.emit('yard.changed', {});
      return { changed: boardIds.length };
    },

    'boards.confirmSpecies': ({ id }: { id: number }): Record<string, never> => {
      get(id);
      context.yard().confirmedSpecies.confirm(id, context.now());
      judging.judgeAgain([id]);
      context.emit('yard.changed', {});
      return {};
    },

    'boards.nextCode': ({ stackId }: { stackId: number }): { code: string } => {
      const stack = orRefuse(context.yard().stacks.get(stackId), 'stack');
      const newest = context.yard().boards.codesOfStack(stackId)[0];
      let code = newest === undefined ? `${stemOf(stack.name)}-01` : followingCode(newest);
      while (context.yard().boards.idByCode(code) !== undefined) code = followingCode(code);
      return { code };
    },

    'boards.move': ({ boardIds, placeId, since }: { boardIds: number[]; placeId: number; since: string }) => {
      moveBoards(context, boardIds, placeId, since);
      judging.judgeAgain(boardIds);
      context.emit('yard.changed', {});
      return { moved: boardIds.length };
    },
  };
}

/** The first word of a stack's name as letters and digits, to begin its boards' IDs with. */
function stemOf(name: string): string {
  const word = name
    .normalize('NFKD')
    .toUpperCase()
    .match(/[A-Z0-9]+/)?.[0];
  return (word ?? 'B').slice(0, 8);
}
