import type { NewPlace, Place, PlaceRow } from '../../../shared-core/contract/yard.ts';
import { emcOfYear } from '../../../shared-core/wood/climate/climate.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';
import type { Judging } from '../judging/judging.ts';

export function placeUseCases(context: AppContext, judging: Judging) {
  const row = (place: Place & { version: number }): PlaceRow => {
    const year = emcOfYear(place.air);
    return {
      ...place,
      emcNowPct: year.monthlyEmcPct[new Date(context.now()).getMonth()] as number,
      driestEmcPct: year.driestEmcPct,
      driestMonth: year.driestMonth,
    };
  };
  const get = (id: number): PlaceRow => row(orRefuse(context.yard().places.get(id), 'place'));
  const taken = (name: string) => message('refusal.place-name-taken', { placeName: name });

  return {
    'places.list': (): PlaceRow[] => context.yard().places.list().map(row),
    'places.add': (place: NewPlace): PlaceRow => {
      const id = refusingDuplicates(taken(place.name), () => context.yard().places.add(place));
      context.emit('yard.changed', {});
      return get(id);
    },
    'places.change': (place: Place): PlaceRow => {
      const { version } = get(place.id);
      refusingDuplicates(taken(place.name), () =>
        context.yard().places.edit({ id: place.id, basedOn: version, changed: place }),
      );
      judging.judgeAgain(context.yard().moves.boardsEverAt(place.id));
      context.emit('yard.changed', {});
      return get(place.id);
    },
  };
}
