import { Refusal } from '../../../shared-core/contract/answer.ts';
import { firstCode } from '../../../shared-core/contract/board-code.ts';
import { type NewPlace, newBoardSchema, unknownOfBoard } from '../../../shared-core/contract/yard.ts';
import { isoOf } from '../../../shared-core/time.ts';
import { message } from '../../../shared-core/words/message.ts';
import { type AppContext, orRefuse, refusingDuplicates } from '../context.ts';
import { dayOf } from '../forecast/judging-board.ts';
import type { Commands } from '../handlers.ts';
import { startOfDay } from './board-days.ts';
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

  /** @throws Refusal for a day still to come, or one before it was sawn */
  function checkSince(sinceOn: string, sawnOn: string | null): void {
    if (startOfDay(sinceOn) > Date.parse(context.now())) throw new Refusal(message('refusal.day-to-come'));
    if (sawnOn !== null && sinceOn < sawnOn)
      throw new Refusal(message('refusal.here-before-sawn', { sawnOn }));
  }

  return {
    'stacks.start': ({
      name: given,
      endUseId,
      boards: count,
      place,
      hereSinceSawn,
      hereSinceOn,
      ...board
    }) => {
      const yard = context.yard();
      if (hereSinceOn !== null) checkSince(hereSinceOn, board.sawnOn);
      const species = orRefuse(yard.species.get(board.speciesId), 'species');
      const name = given === '' ? species.name : given;
      const placeId = placeFor(place);
      const stackId = refusingDuplicates(message('refusal.stack-name-taken', { stackName: name }), () =>
        yard.stacks.add({ name, placeId, endUseId, topCover: 'covered', note: '' }),
      );
      // Its day is known, and no time.
      const sinceOn =
        hereSinceSawn && board.sawnOn !== null ? board.sawnOn : (hereSinceOn ?? dayOf(context.now()));
      const since = isoOf(startOfDay(sinceOn));
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
