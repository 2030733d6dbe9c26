import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type JudgedPlace, type Judgement, judge } from '../../../shared-core/probing/calls/judgement.ts';
import type { Forecast } from '../../../shared-core/wood/drying/forecast.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import { orRefuse, type QueryContext } from '../context.ts';
import type { Assessing } from '../judging/assessing.ts';
import { lowestEmcOf } from '../judging/lowest-emc.ts';

/** The local ISO day of an instant. */
export const dayOf = (instant: string | Date): string => new Date(instant).toLocaleDateString('sv-SE');

/** Everything that is stated of a board today, by its readings, its places and its forecast. */
export function judgementOf(
  context: QueryContext,
  assessing: Assessing,
  board: Pick<BoardRow, 'id' | 'stackId' | 'placeId'>,
  made: { forecast: Forecast } | { forecast: null; whyNot: Message | null },
  nowMs: number,
): Judgement {
  const yard = context.yard();
  const stack = orRefuse(yard.stacks.get(board.stackId), 'stack');
  const { minPct, maxPct, cautions } = orRefuse(yard.endUses.get(stack.endUseId), 'use');
  const { forecast } = made;
  const placeOf = (placeId: number): JudgedPlace => {
    const place = orRefuse(yard.places.get(placeId), 'place');
    const lowestEmc = lowestEmcOf(place, yard.places.airOffsetPct(placeId));
    return { placeId, name: place.name, kind: place.kind, lowestEmc };
  };
  const others = forecast?.places.slice(1) ?? [];
  return judge({
    found: assessing.found(board.id),
    target: { minPct, maxPct },
    mayCheck: !cautions.includes('firewood'),
    places: [placeOf(board.placeId), ...others.map(({ placeId }) => placeOf(placeId))],
    forecast,
    whyNot: 'whyNot' in made ? made.whyNot : null,
    nowMs,
    dayOf,
  });
}
