import type { BoardRow } from '../contract/yard.ts';
import type { Say } from '../words/words.ts';

/** Where a board is and since when; of one that left the yard, where it was until then. */
export const whereWords = (
  { placeName, placeSince, archived }: Pick<BoardRow, 'placeName' | 'placeSince' | 'archived'>,
  say: Say,
): string =>
  archived === null
    ? say('board.at-place', { placeName, sinceOn: placeSince })
    : say('board.until-left', { placeName, leftOn: archived.at });
