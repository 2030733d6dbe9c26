/** Customary measures in SI; the inch and the pound are exact by definition (1959). */
export const MM_PER_INCH = 25.4;
export const MM_PER_FOOT = 12 * MM_PER_INCH;
export const KG_PER_POUND = 0.45359237;
/** A board foot is 144 cubic inches. */
export const M3_PER_BOARD_FOOT = 144 * (MM_PER_INCH / 1000) ** 3;
/** A printer's point. */
export const MM_PER_POINT = MM_PER_INCH / 72;
/** °F = °C × 9/5 + 32, exact by definition. */
export const FAHRENHEIT_PER_CELSIUS = 9 / 5;
export const FAHRENHEIT_AT_ZERO_CELSIUS = 32;
/** 0 °C, K; exact by definition. */
export const ZERO_CELSIUS_K = 273.15;
