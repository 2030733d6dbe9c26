/**
 * How fast moisture moves inside wood across the grain, and from its face into the air.
 *
 * Formulas: J. F. Siau, Transport Processes in Wood (1984), eqs. 6.14, 6.15, 6.18, 6.19, 6.22, and
 * W. T. Simpson, Wood and Fiber 5 (1973), eqs. 10 and 22 to 24 (Bradley isotherm); both checked in a public
 * model's transcription, not on the page. Porosity: Siau (1984), and specific gravity at a moisture content:
 * Wood Handbook, 0.265 rule; both from memory.
 *
 * Temperature: Siau's model has its bound water at 33 to 36 kJ/mol. What was measured rises more. Simpson's drying simulations
 * of red oak have exp(-5280 / T), 44 kJ/mol (from memory), the heat that water takes to evaporate. In beech the energy of
 * moisture moving radially "was near the magnitude expected if vapor movement predominates" (C. Skaar, The Moisture
 * Diffusion Coefficient for Beech, 1958; abstract read). So the model is taken at 15 °C, and goes from there by 5280 / T.
 *
 * Siau's cell model takes no account of tyloses, extractives or pit membranes; real boards dry several times
 * slower. That is what the fitted diffusivity factor is for (`history-fit.ts`).
 */

import { ZERO_CELSIUS_K } from '../../measures.ts';
import { saturationPressurePa } from '../climate/moist-air.ts';
import { FIBER_SATURATION_PCT } from '../moisture/fiber-saturation.ts';

const gasConstantCal = 1.9872;

/** Lumber dries mostly at about this, °C: the cell model is taken here. */
export const USUAL_C = 15;
/** How steeply diffusivity rises over temperature, K. */
const RISE_K = 5280;

/** Diffusivity at a temperature over that at 15 °C, the same for all wood. */
export function temperatureRise(tempC: number): number {
  checkTemp(tempC);
  return Math.exp(RISE_K / (USUAL_C + ZERO_CELSIUS_K) - RISE_K / (tempC + ZERO_CELSIUS_K));
}

const checkTemp = (tempC: number): void => {
  if (!(tempC >= -60 && tempC <= 60))
    throw new RangeError(`Temperature ${tempC} °C is outside -60 to 60 °C.`);
};
const checkGravity = (basicSpecificGravity: number): void => {
  if (!(basicSpecificGravity >= 0.05 && basicSpecificGravity <= 1.4)) {
    throw new RangeError(`Basic specific gravity ${basicSpecificGravity} is outside 0.05 to 1.4.`);
  }
};

/** Bradley isotherm constants of Simpson (1973), eqs. 22 to 24, which take °F. */
function bradley(tempC: number): { k1: number; k2: number; k3: number } {
  // The polynomials were fitted above freezing; below it they are held at 0 °C.
  const f = 32 + 1.8 * Math.max(0, tempC);
  return {
    k1: 0.839 + 2.02e-5 * f - 1.56e-6 * f * f,
    k2: 3.56 + 0.00392 * f - 4.45e-5 * f * f,
    k3: 0.0219 + 1.64e-5 * f,
  };
}

/**
 * Relative humidity of air in balance with wood, fraction: the closed form that gives its slope as well.
 * (`emc.ts` holds the handbook's formula for people's numbers; the two agree to about 1 % MC.)
 *
 * @param mcPct  moisture content, %, 0 or more; far above fiber saturation it tends to 0.98
 * @param tempC  °C, -60 to 60
 */
export function surfaceHumidity(mcPct: number, tempC: number): number {
  checkTemp(tempC);
  const { k1, k2, k3 } = bradley(tempC);
  return Math.exp(-(k2 * k1 ** mcPct + k3));
}

/** Slope of `surfaceHumidity`, per unit (not %) of moisture content. */
function humiditySlope(mcPct: number, tempC: number): number {
  const { k1, k2 } = bradley(tempC);
  return -100 * k2 * Math.log(k1) * k1 ** mcPct * surfaceHumidity(mcPct, tempC);
}

/**
 * Moisture diffusivity of wood across the grain, m²/s, with moisture content as the driving force.
 *
 * @param mcPct                 % MC, 0 or more; held at its value at 30 % above that (free water)
 * @param tempC                 wood temperature, °C, -60 to 60
 * @param basicSpecificGravity  oven-dry mass over green volume, 0.05 to 1.4
 * @throws                      RangeError outside those ranges
 * @example transverseDiffusivityM2S(12, 25, 0.5) // about 6e-11
 */
export const transverseDiffusivityM2S = (
  mcPct: number,
  tempC: number,
  basicSpecificGravity: number,
): number => usualDiffusivityM2S(mcPct, basicSpecificGravity) * temperatureRise(tempC);

/** The same at 15 °C. Source: Siau (1984), eq. 6.22 with 6.14, 6.15, 6.18, 6.19. */
function usualDiffusivityM2S(mcPct: number, basicSpecificGravity: number): number {
  checkGravity(basicSpecificGravity);
  if (!(mcPct >= 0)) throw new RangeError(`Moisture content ${mcPct} % is below 0.`);
  const bound = Math.min(mcPct, FIBER_SATURATION_PCT);
  const kelvin = USUAL_C + ZERO_CELSIUS_K;
  const gravity =
    basicSpecificGravity / (1 - 0.265 * basicSpecificGravity * (1 - bound / FIBER_SATURATION_PCT));
  // Denser than this the model has no cell cavities left; its own limit is kept.
  const porosity = Math.max(0.02, 1 - gravity * (0.667 + 0.01 * bound));
  const a = Math.sqrt(porosity);
  const boundWater = 7e-6 * Math.exp(-(9200 - 70 * bound) / (gasConstantCal * kelvin));
  const vaporInAir = 2.2e-5 * (kelvin / 273) ** 1.75;
  const cellWallKgM3 = (1000 * 1.5) / (1 + 0.015 * bound);
  const vapor =
    (0.018 * vaporInAir * saturationPressurePa(USUAL_C) * humiditySlope(bound, USUAL_C)) /
    (cellWallKgM3 * 8.314 * kelvin);
  return (boundWater * vapor) / ((1 - porosity) * (boundWater + vapor * (1 - a)));
}

/**
 * Drying rate of a freely exposed face, as % MC times m/s per unit of relative humidity difference: the vapor
 * density of saturated air times a film coefficient, over the wood's basic density.
 *
 * The film coefficient is 0.005 m/s, from 6 W/(m² K) for air that hardly moves by the Lewis relation (heat
 * transfer textbooks, from memory). How far a stack falls short of it is the fitted surface factor.
 *
 * @param tempC                 air temperature, °C, -60 to 60
 * @param basicSpecificGravity  0.05 to 1.4
 */
export function surfaceEmission(tempC: number, basicSpecificGravity: number): number {
  checkGravity(basicSpecificGravity);
  const vaporKgM3 = (0.018 * saturationPressurePa(tempC)) / (8.314 * (tempC + ZERO_CELSIUS_K));
  return (100 * 0.005 * vaporKgM3) / (1000 * basicSpecificGravity);
}
