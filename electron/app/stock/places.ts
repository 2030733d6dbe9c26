import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';

type Place = NonNullable<ReturnType<YardReader['places']['get']>>;

/** A place with the EMC of its air in this month. */
function rowOf(place: Place, now: string): PlaceRow {
  const year = emcOfYear(place.air);
  return {
    ...place,
    emcNowPct: year.monthlyEmcPct[new Date(now).getMonth()] as number,
    driestEmcPct: year.driestEmcPct,
    driestMonth: year.driestMonth,
  };
}

export const placeQueries = (context: QueryContext) =>
  ({
    'places.list': () =>
      context
        .yard()
        .places.list()
        .map((place) => rowOf(place, context.now())),
  }) satisfies Partial<Queries>;

export function placeCommands(context: AppContext, judging: Judging) {
  const get = (id: number): PlaceRow =>
    rowOf(orRefuse(context.yard().places.get(id), 'place'), context.now());
  const taken = (name: string) => message('refusal.place-name-taken', { placeName: name });

  return {
    'places.add': (place) =>
      get(refusingDuplicates(taken(place.name), () => context.yard().places.add(place))),
    'places.edit': (edit) => {
      const before = get(edit.id);
      const current = refusingDuplicates(taken(edit.changed.name ?? before.name), () =>
        context.yard().places.edit(edit),
      );
      orConflict(current && rowOf(current, context.now()));
      judging.judgeAgain(context.yard().moves.boardsEverAt(edit.id));
      return get(edit.id);
    },
  } satisfies Partial<Commands>;
}
