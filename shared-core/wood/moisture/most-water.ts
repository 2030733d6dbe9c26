/**
 * So wet is green wood, as a part of the most that it can hold, and the spread of that as a standard deviation of its
 * logarithm: a rough middle of the Wood Handbook's Table 4-1 (from memory).
 */
export const GREEN = { share: 0.6, logSd: 0.35 } as const;

/**
 * The most water that wood can hold: every cavity full.
 *
 * @param basicSpecificGravity   oven-dry mass over green volume, relative to water, 0.05 to 1.4
 * @returns                      moisture content, %
 * @throws                       RangeError outside the range above
 * Source: Wood Handbook (FPL-GTR-282, 2021), eq. 4-3; 1.54 is the specific gravity of the cell wall.
 * @example mostWaterPct(0.5) // 135.1
 */
export function mostWaterPct(basicSpecificGravity: number): number {
  if (!(basicSpecificGravity >= 0.05 && basicSpecificGravity <= 1.4)) {
    throw new RangeError(`Basic specific gravity must be 0.05 to 1.4, not ${basicSpecificGravity}.`);
  }
  return (100 * (1.54 - basicSpecificGravity)) / (1.54 * basicSpecificGravity);
}
