import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { YardReader } from '../../store/yard.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';

type Place = NonNullable<ReturnType<YardReader['places']['get']>>;

export const placeQueries = (context: QueryContext) =>
  ({
    'places.list': () => {
      const { list, holdings } = context.yard().places;
      const holdingsOf = holdings();
      return list().map((place) => ({ ...place, ...holdingsOf(place.id) }));
    },
  }) satisfies Partial<Queries>;

export function placeCommands(context: AppContext, judging: Judging) {
  const rowOf = (place: Place): PlaceRow => ({
    ...place,
    ...context.yard().places.holdings()(place.id),
  });
  const get = (id: number): PlaceRow => rowOf(orRefuse(context.yard().places.get(id), 'place'));
  const taken = (name: string) => message('refusal.place-name-taken', { placeName: name });

  return {
    'places.add': (place) =>
      get(refusingDuplicates(taken(place.name), () => context.yard().places.add(place))),
    'places.edit': (edit) => {
      const before = get(edit.id);
      const current = refusingDuplicates(taken(edit.changed.name ?? before.name), () =>
        context.yard().places.edit(edit),
      );
      orConflict(current && rowOf(current));
      judging.judgeAgain(context.yard().moves.boardsEverAt(edit.id));
      return get(edit.id);
    },
  } satisfies Partial<Commands>;
}
