/**
 * What readings teach of how freely boards dry in the moving air of a place, against what is assumed of such air: an offset of
 * the logarithm of their surface factor (`wood/climate/learned-at-places.ts`).
 */
import type { Spreads } from '../climate/learned-at-places.ts';
import { priorPace } from './history-fit.ts';

export const SURFACE_SPREADS: Spreads = {
  /** Boards of one place, by stack and sticker; those of one log differ by 0.3 (`withinGroupSd`). Common practice, no source. */
  betweenBoards: 0.4,
  /** Common practice, no source. */
  shared: 0.3,
  /** Most of it is what is assumed of such air (`movements`), which is off at all places of a kind. Common practice, no source. */
  kindShare: 0.7,
};

/** Of a place's offset before any reading: what its boards do not differ by of the spread known beforehand. */
export const PLACE_SURFACE_LOG_SD = Math.sqrt(
  priorPace.surface.logSd ** 2 - SURFACE_SPREADS.betweenBoards ** 2,
);
