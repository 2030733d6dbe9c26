import { ZERO_CELSIUS_K } from '../../measures.ts';

/** The Magnus form's coefficients: pressure at 0 °C in Pa, slope, and offset in °C. */
const [AT_ZERO_PA, SLOPE, OFFSET_C] = [610.94, 17.625, 243.04];

/** Specific gas constant of water vapor, J/(kg K): 8.3145 / 0.018015. */
const VAPOR_GAS_CONSTANT = 461.5;

/**
 * Vapor pressure of saturated air, over water below freezing too: that is how weather stations give relative humidity.
 *
 * @param airTempC   air temperature, °C, -60 to 60
 * @returns          Pa, within 0.4 % from -40 to 50 °C
 * @throws           RangeError outside that range
 * Source: O. A. Alduchov and R. E. Eskridge, Improved Magnus form approximation of saturation vapor pressure, J. Applied
 * Meteorology 35 (1996), eq. 21 (from memory). Not Siau's eq. 1.2, which is 12 % above the steam tables from 0 to 40 °C.
 * @example saturationPressurePa(20) // 2334
 */
export function saturationPressurePa(airTempC: number): number {
  if (!(airTempC >= -60 && airTempC <= 60)) {
    throw new RangeError(`Air temperature must be -60 to 60 °C, not ${airTempC}.`);
  }
  return AT_ZERO_PA * Math.exp((SLOPE * airTempC) / (OFFSET_C + airTempC));
}

/**
 * Temperature at which the air's water begins to condense: on wood colder than this, the surface gets wet and a
 * shell reading says so.
 *
 * @param airTempC   air temperature, °C, -60 to 60
 * @param rh         relative humidity over water, fraction, above 0 to 1
 * @returns          dew point, °C, to about 0.1 °C
 * @throws           RangeError outside the ranges above
 * Source: the inverse of `saturationPressurePa`.
 * @example dewPointC(20, 0.5) // 9.3
 */
export function dewPointC(airTempC: number, rh: number): number {
  if (!(rh > 0 && rh <= 1)) throw new RangeError(`Relative humidity must be above 0 to 1, not ${rh}.`);
  const magnus = Math.log((rh * saturationPressurePa(airTempC)) / AT_ZERO_PA);
  return (OFFSET_C * magnus) / (SLOPE - magnus);
}

/**
 * Vapor pressure of an amount of water in air: the ideal gas law.
 *
 * @param gramsPerM3   water vapor, g/m³
 * @param airTempC     air temperature, °C
 * @returns            Pa
 * @example vaporPa(1, 20) // 135
 */
export const vaporPa = (gramsPerM3: number, airTempC: number): number =>
  (gramsPerM3 / 1000) * VAPOR_GAS_CONSTANT * (airTempC + ZERO_CELSIUS_K);
