import { Conflict, Refusal } from '../../../shared-core/contract/answer.ts';
import type { CheckedInput, RequestOutput } from '../../../shared-core/contract/requests.ts';
import { positionInStack, whyNotLaid } from '../../../shared-core/contract/stack-order.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { RULES_VERSION } from '../../../shared-core/probing/calls/rules-version.ts';
import { type Exclusion, isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, type QueryContext } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import { checkBoardDays } from './board-days.ts';
import { moveBoards } from './moving.ts';

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
      const { boards, findings } = context.yard();
      const before = new Map(editedBy(context, act).callsBefore.map(({ id, call }) => [id, call]));
      return {
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
  /** Edits them from the versions that the window showed. */
  function edit({ boards: given, changed, stackOrder }: Input) {
    const { boards } = context.yard();
    const { barkSide, barkOffOn = null, thicknessMm, thicknessQuarters = null, ...others } = changed;
    const shared = {
      ...others,
      ...(barkSide === undefined ? {} : { barkSide, barkOffOn }),
      ...(thicknessMm === undefined ? {} : { thicknessMm, thicknessQuarters }),
    };
    const isEdited = stackOrder !== null || Object.keys(shared).length > 0;
    const outdated: BoardRow[] = [];
    const versions = given.map(({ id, basedOn }, index) => {
      orRefuse(boards.get(id), 'board');
      if (!isEdited) return { id, version: basedOn };
      const position = stackOrder ? positionInStack(stackOrder, index) : {};
      const current = boards.edit({ id, basedOn, changed: { ...shared, ...position } });
      if (current) outdated.push(current);
      return { id, version: basedOn + 1 };
    });
    if (outdated.length > 0) {
      throw new Conflict(
        outdated,
        message('refusal.boards-edited-meanwhile', {
          boards: outdated.length,
          someCodes: outdated.slice(0, MOST_NAMED).map(({ code }) => code),
        }),
      );
    }
    return versions;
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

  /** Excludes all readings of their latest rounds, or includes what a person excluded where `why` is null. */
  function excludeLatest(boardIds: readonly number[], why: Exclusion | null): void {
    const { boards, readings, amendments } = context.yard();
    const rounds = new Set<number>();
    for (const boardId of boardIds) {
      const roundId = boards.get(boardId)?.latest?.roundId;
      if (roundId === undefined) continue;
      rounds.add(roundId);
      for (const { id, excluded } of readings.ofBoard(boardId, roundId)) {
        if (why === null ? excluded !== null && !isSlip(excluded) : excluded === null) {
          amendments.exclude('reading', id, why, context.now());
        }
      }
    }
    context.afterwards(() => comparing.compare([...rounds]));
  }

  return {
    'boards.editTogether': (input) => {
      const { changed, stackOrder, move, endUseId, latestReadings } = input;
      const whyNot = stackOrder && whyNotLaid(stackOrder, input.boards.length);
      if (whyNot) throw new Refusal(message('refusal.nothing-changed', { why: whyNot }));
      const { speciesId } = changed;
      const { acts, boards, species } = context.yard();
      if (speciesId !== undefined) orRefuse(species.get(speciesId), 'species');
      const ids = input.boards.map(({ id }) => id);
      const stackIds = [...new Set(ids.map((id) => orRefuse(boards.get(id), 'board').stackId))];
      const judged = endUseId === null ? ids : [...new Set([...ids, ...stackIds.flatMap(boards.idsOfStack)])];
      checkBoardDays(context, ids, changed);
      const callsBefore = boards.callsOf(judged).map(({ id, call }) => ({ id, call }));
      const versions = edit(input);
      if (move) moveBoards(context, ids, move.placeId, move.since);
      if (endUseId !== null) setUse(stackIds, endUseId);
      if (latestReadings) excludeLatest(ids, latestReadings === 'include' ? null : latestReadings.exclude);
      judging.judgeAgain(judged);
      return { act: acts.now(), boards: versions, callsBefore };
    },

    'boards.undoTogether': ({ act }) => {
      const { boards, callsBefore } = editedBy(context, act);
      const yard = context.yard();
      const codesSince = boards.flatMap(({ id, version }) => {
        const now = orRefuse(yard.boards.get(id), 'board');
        return now.version === version ? [] : [now.code];
      });
      if (!yard.acts.undo(act, context.now())) {
        const someCodes = codesSince.slice(0, MOST_NAMED);
        throw new Refusal(message('refusal.edited-since', { edited: codesSince.length, someCodes }));
      }
      judging.judgeAgain(callsBefore.map(({ id }) => id));
      return boards.map(({ id }) => ({ id, version: orRefuse(yard.boards.get(id), 'board').version }));
    },
  } satisfies Partial<Commands>;
}
