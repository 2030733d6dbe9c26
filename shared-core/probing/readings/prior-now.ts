/** What a board can be expected to have before any reading, % MC. */
export interface PriorNow {
  shell: ExpectedAboveAir;
  average: ExpectedAboveAir;
  core: ExpectedAboveAir;
  /** EMC of its air now. */
  emcPct: number;
}
/** The driest air that a board met. */
export interface DriestAir {
  /** Its EMC, % MC, and how far that may be off, one standard deviation. */
  emcPct: number;
  sdPct: number;
  /** EMC of its air as a board so thick has followed it by now, % MC; left out: it is not known since when it is there. */
  followedPct?: number;
}
/**
 * Its middle, and how far it may be off, one standard deviation each: by pace and start, of the logarithm of what it is
 * above its air; and by the air that it met, % MC.
 */
export interface ExpectedAboveAir {
  pct: number;
  logSd: number;
  airSdPct: number;
}

/** A prior-predictive check doubts what is further off than this (G. E. P. Box, Journal of the Royal Statistical Society A 143, 1980; from memory). */
export const DOUBT_SDS = 2.3;

/** The wettest that any layer of the board can be by it, % MC. */
export const wettestBy = ({ core: { pct, logSd, airSdPct }, emcPct }: PriorNow): number =>
  emcPct + Math.max(0, pct - emcPct) * Math.exp(DOUBT_SDS * logSd) + DOUBT_SDS * airSdPct;
