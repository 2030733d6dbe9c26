import { useEffect, useState } from 'react';
import { type Proposal, proposeInTurns } from '../../../shared-core/gatt/propose.ts';
import type { ShownNumber } from '../../../shared-core/gatt/shown-number.ts';
import { inTurns } from '../../data/in-turns.ts';
import { useMeter } from '../../stores/meter.ts';
import { useWatching } from '../../stores/watching.ts';
import { readingUnitOf } from './shown-number.ts';
import { shownPlaces } from './watched-places.ts';

/** How the watched meter may be read, by the numbers typed so far. */
export function useProposals(): { proposals: readonly Proposal[]; isFinding: boolean } {
  const numbers = useWatching((watching) => watching.numbers);
  const unit = useWatching((watching) => watching.unit);
  const [found, setFound] = useState<{ by: readonly ShownNumber[]; proposals: readonly Proposal[] }>({
    by: [],
    proposals: [],
  });
  useEffect(() => {
    const { state } = useMeter.getState();
    if (state === null) return;
    const places = shownPlaces(state, useWatching.getState().places);
    let isOver = false;
    void inTurns(proposeInTurns(places, numbers, readingUnitOf(unit)), () => isOver).then((proposals) => {
      if (proposals !== null && !isOver) setFound({ by: numbers, proposals });
    });
    return () => {
      isOver = true;
    };
  }, [numbers, unit]);
  // What was found by other numbers is no answer.
  const isFinding = found.by !== numbers && numbers.length > 0;
  return { proposals: isFinding || numbers.length === 0 ? [] : found.proposals, isFinding };
}
