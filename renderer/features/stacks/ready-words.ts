import type { BoardRow, LikelyReady } from '../../../shared-core/contract/yard.ts';
import { readyOf } from '../../../shared-core/probing/calls/judgement.ts';
import type { Words } from '../../../shared-core/words/words.ts';

/** When a board is ready, for its row: the day where it is, else where it is ready first; or why there is none. */
export function readyInRow({ judgement, bestPlaceName: placeName }: BoardRow, words: Words): string | null {
  const { say, formats } = words;
  const dated = readyOf(judgement);
  if (dated) {
    const date = formats.likely(dated.when);
    return dated.placeId === null || placeName === null ? date : say('stacks.ready-at', { date, placeName });
  }
  switch (judgement.places[0]?.ready?.kind) {
    case 'now':
      return say('stacks.ready-now');
    case 'any-day':
      return say('forecast.any-day');
    case 'too-damp':
      return say('stacks.ready-not-here');
    case 'unlikely':
    case 'not-within':
      return say('forecast.not-within');
    default:
      return null;
  }
}

/** For a sentence: whether only a move makes it so is part of it. */
export const readyFacts = ({ when, placeName }: LikelyReady, { formats }: Words) => ({
  date: formats.likely(when),
  where: placeName === null ? ('here' as const) : ('elsewhere' as const),
  placeName: placeName ?? '',
});
