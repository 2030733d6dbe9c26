/**
 * Fiber saturation, % MC: above it water is free. Wood does not shrink, bound water moves no faster, and a pin meter
 * tells only that the wood is wet (Wood Handbook, chapters 4 and 13).
 */
export const FIBER_SATURATION_PCT = 30;

/**
 * Bound water does not freeze, so wood at or below 0 °C can be read up to here, % MC; in wetter wood some of the water is
 * ice, which hardly conducts. Where that begins is common practice, no source: 22 to 25 %.
 */
export const FROZEN_FROM_PCT = 22;
