import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { Route } from '../../stores/navigation.ts';

/** Where a round with the board starts: one of the boards of its stack that are where it is. */
export const roundOfBoard = ({ stackId, placeId, isElsewhere }: BoardRow): Route => ({
  name: 'round-start',
  stackId,
  ...(isElsewhere && { placeId }),
});
