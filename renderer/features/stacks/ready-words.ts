import type { BoardRow, LikelyReady } from '../../../shared-core/contract/yard.ts';
import { readyOf } from '../../../shared-core/probing/calls/judgement.ts';
import type { When } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';

/** When a board is ready, for its row: the day where it is, else where it is ready first; or why there is none. */
export function readyInRow({ judgement, bestPlaceName: placeName }: BoardRow, words: Words): string | null {
  const { say, formats } = words;
  const dated = readyOf(judgement);
  if (dated) {
    const day = readyDay(dated.when, formats);
    return dated.placeId === null || placeName === null
      ? say('stacks.ready-day', day)
      : say('stacks.ready-at', { ...day, placeName });
  }
  const hereIs = judgement.places[0]?.ready;
  switch (hereIs?.kind) {
    case 'now':
      return say('stacks.ready-now');
    case 'any-day':
      return say('forecast.any-day');
    case 'leaves':
      if (hereIs.entersOn !== null) return say('stacks.ready-passes', { entersOn: hereIs.entersOn });
      return judgement.call === null ? null : say('stacks.ready-not-here');
    case 'too-damp':
      return judgement.call === null ? null : say('stacks.ready-not-here');
    case 'unlikely':
    case 'not-within':
      return say('forecast.not-within');
    default:
      return null;
  }
}

/** For a sentence: a day is likely only where the time to it has an end. Without one there are no 8 chances in 10. */
export const readyDay = (when: When, formats: Words['formats']) => ({
  date: formats.likely(when),
  end: when.to === null ? ('open' as const) : ('known' as const),
});

/** The same with the move that it may need. */
export const readyFacts = ({ when, placeName }: LikelyReady, { formats }: Words) => ({
  ...readyDay(when, formats),
  where: placeName === null ? ('here' as const) : ('elsewhere' as const),
  placeName: placeName ?? '',
});
