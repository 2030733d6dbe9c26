/** Standard deviations of a difference that sound readings do not pass: 0.7 in 1000 would. */
export const DIFFERENCE_SCORE = 3.4;
