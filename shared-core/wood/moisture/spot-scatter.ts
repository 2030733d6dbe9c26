/**
 * How far sound readings at one depth differ from spot to spot on one board, one standard deviation, % MC. It holds
 * what the pins do differently each time and what the wood itself does along the board; what all readings share (the
 * meter, the species correction, the temperature) is not in it.
 *
 * Common practice, no source: about half a point in dry wood, in proportion when it is wetter.
 *
 * @param mcPct moisture content, % MC, 0 or more
 */
export function spotScatterPct(mcPct: number): number {
  return Math.max(0.5, 0.04 * mcPct);
}

/** What is known of that scatter beforehand weighs as much as so many degrees of freedom. Common practice, no source. */
export const SCATTER_DEGREES = 4;
