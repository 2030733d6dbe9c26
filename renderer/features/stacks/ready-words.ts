import type { LikelyReady } from '../../../shared-core/contract/yard.ts';
import type { When } from '../../../shared-core/words/message.ts';
import type { Words } from '../../../shared-core/words/words.ts';

/** The day on which something is likely ready, as precisely as that is known; or that it is by now. */
export const likelyDate = ({ say, formats }: Words, when: When): string =>
  when.likely <= formats.localDay(new Date()) ? say('stacks.ready-now') : formats.likely(when);

/** For a sentence: whether only a move makes it so is part of it. */
export const readyFacts = ({ when, placeName }: LikelyReady) => ({
  likelyWhen: when,
  where: placeName === null ? ('here' as const) : ('elsewhere' as const),
  placeName: placeName ?? '',
});
