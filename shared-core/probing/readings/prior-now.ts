/** What a board can be expected to have before any reading, % MC. */
export interface PriorNow {
  shell: ExpectedAboveAir;
  average: ExpectedAboveAir;
  core: ExpectedAboveAir;
  /** EMC of its air now. */
  emcPct: number;
  /** Sawn so long ago that it can be drier than this, and no wetter; left out: it was not. */
  isAtMost?: boolean;
  /** A face of it was under bark, so that it may well be wetter; left out: none was. */
  mayBeWetter?: boolean;
  /** Green wood can hold more water than the model begins with: so much more may be left, as the logarithm of what it is above its air. Left out: none. */
  unmodeledLog?: number;
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
  /** Toward the damp side, where that is more: it may have been in damper air before it was entered. */
  damperSdPct?: number;
}

/** A prior-predictive check doubts what is further off than this (G. E. P. Box, Journal of the Royal Statistical Society A 143, 1980; from memory). */
export const DOUBT_SDS = 2.3;

/** The wettest that any layer of the board can be by it, % MC. */
export const wettestBy = ({
  core: { pct, logSd, airSdPct, damperSdPct = airSdPct },
  emcPct,
  unmodeledLog = 0,
}: PriorNow): number =>
  emcPct + Math.max(0, pct - emcPct) * Math.exp(DOUBT_SDS * logSd + unmodeledLog) + DOUBT_SDS * damperSdPct;
