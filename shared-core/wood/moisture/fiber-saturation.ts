/**
 * Fiber saturation, % MC: above it water is free. Wood does not shrink, bound water moves no faster, and a pin meter
 * tells only that the wood is wet (Wood Handbook, chapters 4 and 13).
 */
export const FIBER_SATURATION_PCT = 30;
