import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { ifMoved } from '../../../shared-core/probing/plan/if-moved.ts';
import { type BoardStanding, planStack } from '../../../shared-core/probing/plan/stack-plan.ts';
import { Z_90 } from '../../../shared-core/wood/maths/gaussian.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Queries } from '../handlers.ts';
import { lowestEmcOf } from '../judging/lowest-emc.ts';

/** More than any stack has. */
const ALL = 1_000_000;
/** From the 10 to the 90 % point of a normal distribution, in standard deviations. */
const TEN_TO_NINETY = 2 * Z_90;

export const stackPlanQueries = (context: QueryContext) =>
  ({
    'stacks.plan': ({ id, certainty }) => {
      const { boards, endUses, stacks } = context.yard();
      const endUse = orRefuse(endUses.get(orRefuse(stacks.get(id), 'stack').endUseId), 'use');
      const { rows } = boards.page({ stackId: id, search: '', offset: 0, limit: ALL });
      return rows.length === 0 ? null : planStack(rows.map(standingOf), endUse, certainty);
    },
    'stacks.dueToMove': ({ id, kind }) => {
      const { rows } = context.yard().boards.page({ stackId: id, search: '', offset: 0, limit: ALL });
      const [due, others] = [true, false].map((isDue) =>
        rows.filter(({ judgement }) => isDueToMove(judgement, kind) === isDue),
      ) as [BoardRow[], BoardRow[]];
      return {
        boards: due.map(({ id, version, code }) => ({ id, version, code })),
        stay: others.map(({ code }) => code),
      };
    },
    'stacks.ifMoved': (which) => {
      const { boards, places } = context.yard();
      const rows =
        'id' in which
          ? boards.page({ stackId: which.id, search: '', offset: 0, limit: ALL }).rows
          : which.boardIds.map((id) => orRefuse(boards.get(id), 'board'));
      return ifMoved(
        rows.map(({ placeId, judgement, latest }) => ({
          placeId,
          judgement,
          corePct: latest?.corePct ?? null,
        })),
        places.list().map((place) => ({
          placeId: place.id,
          name: place.name,
          kind: place.kind,
          lowestEmc: lowestEmcOf(place, places.airOffsetPct(place.id)),
        })),
      );
    },
  }) satisfies Partial<Queries>;

/** Where no place of the yard is dry enough, the person may know one. */
const isDueToMove = ({ call, next }: BoardRow['judgement'], kind: 'bring-in' | 'move-back'): boolean =>
  next.due === kind || (kind === 'bring-in' && (call === 'bring-in' || next.due === 'add-place'));

/** What is known of a board today: by its forecast, else what its latest round found. */
export function standingOf({ id, code, latest, outlook, judgement }: BoardRow): BoardStanding {
  const board = {
    boardId: id,
    code,
    latest: latest && { ...latest, averagePct: latest.isQuestionable ? null : latest.averagePct },
    next: judgement.next,
  };
  if (outlook) return { ...board, today: outlook };
  const { averagePct = null, lowPct = null, highPct = null } = latest ?? {};
  const isKnown = averagePct !== null && lowPct !== null && highPct !== null && highPct > lowPct;
  return {
    ...board,
    today: isKnown ? { averagePct, standardUncertaintyPct: (highPct - lowPct) / TEN_TO_NINETY } : null,
  };
}
