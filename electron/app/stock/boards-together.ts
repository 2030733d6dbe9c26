import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { CheckedInput } from '../../../shared-core/contract/requests.ts';
import { positionInStack, whyNotLaid } from '../../../shared-core/contract/stack-order.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Exclusion } from '../../../shared-core/probing/readings/exclusion.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse } from '../context.ts';
import type { Commands } from '../handlers.ts';
import type { Comparing } from '../judging/comparing.ts';
import type { Judging } from '../judging/judging.ts';
import { moveBoards } from './moving.ts';

type Input = CheckedInput<'boards.editTogether'>;

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
      throw new Refusal(
        message('refusal.boards-edited-meanwhile', {
          boards: outdated.length,
          someCodes: outdated.slice(0, MOST_NAMED).map(({ code }) => code),
        }),
      );
    }
    return versions;
  }

  /** Gives their stacks a use, and has all boards in these judged by it. */
  function setUse(boardIds: readonly number[], endUseId: string): void {
    const { boards, stacks, endUses } = context.yard();
    orRefuse(endUses.get(endUseId), 'use');
    for (const stackId of new Set(boardIds.map((id) => orRefuse(boards.get(id), 'board').stackId))) {
      const { version } = orRefuse(stacks.get(stackId), 'stack');
      stacks.edit({ id: stackId, basedOn: version, changed: { endUseId } });
      judging.judgeAgain(boards.idsOfStack(stackId));
    }
  }

  /** Excludes all readings of their latest rounds, or includes what a person excluded where `why` is null. */
  function excludeLatest(boardIds: readonly number[], why: Exclusion | null): void {
    const { readings, amendments } = context.yard();
    const rounds = new Set<number>();
    for (const boardId of boardIds) {
      const roundId = readings.roundsOfBoard(boardId).at(-1);
      if (roundId === undefined) continue;
      rounds.add(roundId);
      for (const { id, excluded } of readings.ofBoard(boardId, roundId)) {
        if (why === null ? isByPerson(excluded) : excluded === null) {
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
      if (speciesId !== undefined) orRefuse(context.yard().species.get(speciesId), 'species');
      const ids = input.boards.map(({ id }) => id);
      const versions = edit(input);
      if (move) moveBoards(context, ids, move.placeId, move.since);
      if (endUseId !== null) setUse(ids, endUseId);
      if (latestReadings) excludeLatest(ids, latestReadings === 'include' ? null : latestReadings.exclude);
      judging.judgeAgain(ids);
      return versions;
    },
  } satisfies Partial<Commands>;
}

/** What the program excluded, because it was undone or replaced, stays so. */
const isByPerson = (excluded: Exclusion | null): boolean =>
  excluded !== null &&
  !('code' in excluded && (excluded.code === 'undone-in-round' || excluded.code === 'replaced'));
