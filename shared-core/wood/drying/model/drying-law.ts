import { surfaceEmission, surfaceHumidity, transverseDiffusivityM2S } from '../diffusivity.ts';

/** What the wood and its faces do at one temperature; functions of % MC. */
export type DryingLaw = {
  /** Diffusivity, m²/s. */
  diffusivityM2S: (mcPct: number, tempC: number) => number;
  /** What drives moisture off a face: increasing with % MC, and at the EMC equal to that of the air. */
  surfacePotential: (mcPct: number, tempC: number) => number;
  /** Rate off a freely exposed face, % MC · m/s per unit of potential. */
  emission: (tempC: number) => number;
};

/** Where the diffusivity is the same for each exponent, % MC: about the middle of the way of a board that dries. */
export const ANCHOR_MC_PCT = 18;

/**
 * The law of wood, from `diffusivity.ts`, where the sources stand.
 *
 * @param basicSpecificGravity  oven-dry mass over green volume and the density of water, as `transverseDiffusivityM2S` takes it
 * @param exponent  how much of the published rise over moisture content it has: (D / D at 18 %) to this power; 1 is all
 */
export function woodDryingLaw(basicSpecificGravity: number, exponent = 1): DryingLaw {
  return {
    diffusivityM2S: (mcPct, tempC) => {
      if (exponent === 1) return transverseDiffusivityM2S(mcPct, tempC, basicSpecificGravity);
      const anchor = transverseDiffusivityM2S(ANCHOR_MC_PCT, tempC, basicSpecificGravity);
      return anchor * (transverseDiffusivityM2S(mcPct, tempC, basicSpecificGravity) / anchor) ** exponent;
    },
    surfacePotential: surfaceHumidity,
    emission: (tempC) => surfaceEmission(tempC, basicSpecificGravity),
  };
}
