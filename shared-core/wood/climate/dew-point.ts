/**
 * Temperature at which the air's water begins to condense: on wood colder than this, the surface gets wet and a
 * shell reading says so.
 *
 * @param airTempC   air temperature, °C, -40 to 60
 * @param rh         relative humidity over water, fraction, above 0 to 1
 * @returns          dew point, °C, to about 0.1 °C
 * @throws           RangeError outside the ranges above
 * Source: Magnus form with the coefficients of O. A. Alduchov and R. E. Eskridge, Improved Magnus form
 * approximation of saturation vapor pressure, J. Applied Meteorology 35 (1996), eq. 21 (from memory).
 * @example dewPointC(20, 0.5) // 9.3
 */
export function dewPointC(airTempC: number, rh: number): number {
  if (!(airTempC >= -40 && airTempC <= 60)) {
    throw new RangeError(`Air temperature must be -40 to 60 °C, not ${airTempC}.`);
  }
  if (!(rh > 0 && rh <= 1)) throw new RangeError(`Relative humidity must be above 0 to 1, not ${rh}.`);
  const magnus = Math.log(rh) + (17.625 * airTempC) / (243.04 + airTempC);
  return (243.04 * magnus) / (17.625 - magnus);
}
