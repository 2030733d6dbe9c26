import type { BoardRow, Sawing } from '../../../shared-core/contract/yard.ts';
import type { BarkSide } from '../../../shared-core/wood/drying/faces-of-board.ts';

export const sawingWords: Record<Sawing, string> = {
  flat: 'Flat-sawn',
  rift: 'Rift-sawn',
  quarter: 'Quarter-sawn',
  unknown: 'Not known',
};

export const barkSideWords: Record<BarkSide, string> = {
  unknown: 'Not known',
  up: 'Up',
  down: 'Down',
  'up-bark-on': 'Up, bark still on',
  'down-bark-on': 'Down, bark still on',
};

/** What was said of a board's end, for those who do not see it drawn: "flat-sawn, bark side up"; null for nothing. */
export function endWords({ sawing, barkSide }: Pick<BoardRow, 'sawing' | 'barkSide'>): string | null {
  const parts = [
    ...(sawing === 'unknown' ? [] : [sawingWords[sawing].toLowerCase()]),
    ...(barkSide === 'unknown' ? [] : [`bark side ${barkSideWords[barkSide].toLowerCase()}`]),
  ];
  return parts.join(', ') || null;
}
