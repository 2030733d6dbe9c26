import type { PlaceRow } from '../../../shared-core/contract/yard.ts';
import { message } from '../../../shared-core/words/message.ts';
import type { YardReader } from '../../store/yard.ts';
import { readMeasured } from '../air/measured-places.ts';
import { type AppContext, orConflict, orRefuse, type QueryContext, refusingDuplicates } from '../context.ts';
import { offsetsByBoards } from '../forecast/learned-of-places.ts';
import type { Commands, Queries } from '../handlers.ts';
import type { Judging } from '../judging/judging.ts';

type Place = NonNullable<ReturnType<YardReader['places']['get']>>;

export const placeQueries = (context: QueryContext) =>
  ({
    'places.list': async () => {
      await readMeasured(context);
      const yard = context.yard();
      const holdingsOf = yard.places.holdings();
      const byBoards = offsetsByBoards(yard, context.now());
      return yard.places.list().map((place) => {
        const { airOffset, stacks } = holdingsOf(place.id);
        // What is stated follows a change of the log a little later: this is the part that is in it.
        const measuredPct =
          airOffset && yard.airLogs.newestId() > 0
            ? Math.round(10 * (airOffset.offsetPct - byBoards(place.id))) / 10
            : 0;
        return {
          ...place,
          stacks,
          airOffset: airOffset && measuredPct !== 0 ? { ...airOffset, measuredPct } : airOffset,
        };
      });
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
