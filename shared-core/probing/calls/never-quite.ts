/** So near to the EMC of its air, or to the lowest it ever gets there, waiting gains nothing more, % MC. Common practice, no source. */
export const NEVER_QUITE_PCT = 0.5;
