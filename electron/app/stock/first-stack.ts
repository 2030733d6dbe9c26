import { firstCode } from '../../../shared-core/contract/board-code.ts';
import { type NewPlace, newBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';
import { dayOf } from '../forecast/judging-board.ts';
import type { Commands } from '../handlers.ts';
import { checkHereSince, startOfDay } from './board-days.ts';
import { freeCode } from './free-code.ts';

export function firstStackCommands(context: AppContext) {
  /** A place of that name is taken where its air is the same; else the new one is numbered. */
  function placeFor(wanted: NewPlace): number {
    const { places } = context.yard();
    const air = JSON.stringify(wanted.air);
    const known = places.list();
    const same = known.find(({ name, air: its }) => name === wanted.name && JSON.stringify(its) === air);
    if (same) return same.id;
    const names = new Set(known.map(({ name }) => name.toLowerCase()));
    let { name } = wanted;
    for (let number = 2; names.has(name.toLowerCase()); number++) name = `${wanted.name} ${number}`;
    return places.add({ ...wanted, name });
  }

  return {
    'stacks.start': ({ name: given, endUseId, boards: count, place, hereSinceOn, ...board }) => {
      const yard = context.yard();
      if (hereSinceOn !== null) checkHereSince(context, hereSinceOn, board.sawnOn);
      const species = orRefuse(yard.species.get(board.speciesId), 'species');
      const name = given === '' ? species.name : given;
      const placeId = placeFor(place);
      const stackId = refusingDuplicates(message('refusal.stack-name-taken', { stackName: name }), () =>
        yard.stacks.add({ name, placeId, endUseId, topCover: 'covered', note: '' }),
      );
      // Its day is known, and no time.
      const since = isoOf(startOfDay(hereSinceOn ?? dayOf(context.now())));
      let code = firstCode(name, species.name);
      for (let added = 0; added < count; added++) {
        code = freeCode(yard, code);
        const made = newBoardSchema.parse({
          ...unknownOfBoard,
          code,
          stackId,
          ...board,
        });
        yard.boards.add(made, placeId, since, 'day');
      }
      return orRefuse(yard.stacks.get(stackId), 'stack');
    },
  } satisfies Partial<Commands>;
}
