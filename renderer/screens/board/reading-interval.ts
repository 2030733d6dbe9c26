/** Half of the interval that holds with 90 % probability what was read, % MC, from its standard uncertainty. */
export const halfIntervalPct = (standardUncertaintyPct: number): number => 1.645 * standardUncertaintyPct;
