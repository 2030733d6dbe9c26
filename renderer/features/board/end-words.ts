import { type BoardRow, driedBySchema, sawingSchema } from '../../../shared-core/contract/yard.ts';
import { barkSideSchema } from '../../../shared-core/wood/drying/faces-of-board.ts';
import type { Say } from '../../../shared-core/words/words.ts';

/** What a person may choose for the sawing of a board. */
export const sawingOptions = (say: Say) =>
  sawingSchema.options.map((value) => ({ value, label: say(`board.sawing.${value}`) }));

/** What a person may choose for how it was dried before it came. */
export const driedByOptions = (say: Say) =>
  driedBySchema.options.map((value) => ({ value, label: say(`board.dried-by.${value}`) }));

/** What a person may choose for the side on which its bark was. */
export const barkSideOptions = (say: Say) =>
  barkSideSchema.options.map((value) => ({ value, label: say(`board.bark-side.${value}`) }));

/** A board's end for those who do not see it drawn: "flat-sawn, bark side up"; null where neither is known. */
export function endWords(
  { sawing, barkSide }: Pick<BoardRow, 'sawing' | 'barkSide'>,
  say: Say,
): string | null {
  const sawingName = sawing === 'unknown' ? null : say(`board.sawn.${sawing}`);
  const barkSideName = barkSide === 'unknown' ? null : say(`board.bark.${barkSide}`);
  return sawingName !== null && barkSideName !== null
    ? say('board.sawing-and-bark', { sawingName, barkSideName })
    : (sawingName ?? barkSideName);
}
