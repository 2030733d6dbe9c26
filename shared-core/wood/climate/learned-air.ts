/** What readings teach of the air of places: how far the EMC of each is from that of its months, % MC (`learned-at-places.ts`). */
import type { Spreads } from './learned-at-places.ts';
import { airSdPct, type MonthlyAir } from './monthly-air.ts';

export const AIR_SPREADS: Spreads = {
  /** From top to bottom of a stack, and by the wood, % MC. Common practice, no source. */
  betweenBoards: 0.3,
  /** % MC. Common practice, no source. */
  shared: 0.7,
  /** Common practice, no source. */
  kindShare: 0.5,
};

/** How far the EMC of a place may be from that of its months, % MC: without what its boards differ by. */
export const placeSdPct = (air: MonthlyAir): number =>
  Math.sqrt(airSdPct(air) ** 2 - AIR_SPREADS.betweenBoards ** 2);
