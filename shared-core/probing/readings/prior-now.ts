/** What a board can be expected to have before any reading, % MC. */
export interface PriorNow {
  average: ExpectedAboveAir;
  core: ExpectedAboveAir;
  /** EMC of its air now, and the lowest of all months that it met. */
  emcPct: number;
  lowestEmcPct: number;
}
/** Its middle, and how far it may be off: one standard deviation of the logarithm of what it is above its air. */
export interface ExpectedAboveAir {
  pct: number;
  logSd: number;
}
