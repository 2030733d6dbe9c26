import { solveMonotone } from '../maths/root.ts';

/** Damper air counts as this damp, a fraction: wood in saturated air is not at a single EMC. */
export const DAMPEST_RH = 0.99;

/** Colder air than this counts as this cold, °C: the formula ends there, and frozen wood hardly dries. */
export const COLDEST_C = -20;

/** The temperature that the formula is used with, °C. */
function tempInFormula(airTempC: number): number {
  if (!(airTempC >= -60 && airTempC <= 60)) {
    throw new RangeError(`Air temperature must be -60 to 60 °C, not ${airTempC}.`);
  }
  return Math.max(COLDEST_C, airTempC);
}

/**
 * Equilibrium moisture content of wood in air: where wood settles if it stays in that air long enough.
 *
 * @param airTempC   air temperature, °C, -60 to 60 (the handbook's table begins at -1.1 °C; below it is an
 *                   extension of the formula, which ends at -20 °C: colder air counts as -20 °C)
 * @param rh         relative humidity, fraction, 0 to 0.99
 * @returns          moisture content, % of oven-dry mass
 * @throws           RangeError outside the ranges above
 * Source: Wood Handbook (FPL-GTR-282, 2021), p. 4-3, eq. 4-5 (Simpson 1973), the one that Table 4-2 was made
 * from. Equation 4-6 (Glass and others 2014) is the newer fit; only the tests use it, because what people
 * compare with is the table.
 * @example emcPct(21.1, 0.5) // 9.2
 */
export function emcPct(airTempC: number, rh: number): number {
  const t = tempInFormula(airTempC);
  if (!(rh >= 0 && rh <= DAMPEST_RH))
    throw new RangeError(`Relative humidity must be 0 to ${DAMPEST_RH}, not ${rh}.`);
  const w = 349 + 1.29 * t + 0.0135 * t * t;
  const k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
  const k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
  const k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
  const kh = k * rh;
  const hydrated = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
  return (1800 / w) * (kh / (1 - kh) + hydrated);
}

/**
 * Relative humidity of air with a given EMC: the inverse of `emcPct`.
 *
 * @param airTempC   air temperature, °C, -60 to 60, as in `emcPct`
 * @param mcPct      equilibrium moisture content, %, from 0 to that of air at 99 % humidity (about 25)
 * @returns          relative humidity, fraction, exact to 1e-9
 * @throws           RangeError outside the ranges above
 * Source: eq. 4-5 as in `emcPct`, solved for humidity; it rises strictly, so there is one answer.
 * @example rhForEmc(21.1, 9.2) // 0.50
 */
export function rhForEmc(airTempC: number, mcPct: number): number {
  const wettest = emcPct(airTempC, DAMPEST_RH);
  if (!(mcPct >= 0 && mcPct <= wettest)) {
    throw new RangeError(
      `At ${airTempC} °C air brings wood to 0 to ${wettest.toFixed(1)} %, not ${mcPct} %.`,
    );
  }
  return solveMonotone((rh) => emcPct(airTempC, rh), mcPct, 0, DAMPEST_RH);
}
