import type { PlannedMove } from '../../../shared-core/contract/requests/dates.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';

/** The moves that are planned of a stack or a board, as links to the dates. Nothing where there are none. */
export function PlannedHere({ stackId, boardId }: Pick<PlannedMove, 'stackId' | 'boardId'>) {
  const { say } = useWords();
  const planned = useQuery('plannedMoves.of', { stackId, boardId }).output ?? [];
  return planned.map(({ placeName, move: { id, plannedOn } }) => (
    <span key={id}>
      {' · '}
      <a href={hrefOf({ name: 'dates' })}>{say('dates.planned-here', { placeName, plannedOn })}</a>
    </span>
  ));
}
