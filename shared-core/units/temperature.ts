import type { DisplayUnits } from './length.ts';

/** °F = °C × 9/5 + 32, exact by definition. */
const FAHRENHEIT_PER_CELSIUS = 9 / 5;
const FAHRENHEIT_AT_ZERO_CELSIUS = 32;

export const temperatureUnit = (units: DisplayUnits): string => (units === 'metric' ? '°C' : '°F');

/** A temperature as a person types it in a field, to a tenth of a degree. */
export function temperatureFromC(tempC: number, units: DisplayUnits): number {
  const shown = units === 'metric' ? tempC : tempC * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_CELSIUS;
  return Math.round(shown * 10) / 10;
}

export function celsiusFromTemperature(typed: number, units: DisplayUnits): number {
  return units === 'metric' ? typed : (typed - FAHRENHEIT_AT_ZERO_CELSIUS) / FAHRENHEIT_PER_CELSIUS;
}

/** "18 °C", "64.4 °F". */
export function temperatureText(tempC: number, units: DisplayUnits): string {
  return `${temperatureFromC(tempC, units)} ${temperatureUnit(units)}`.replace('-', '−');
}

/** A difference between two temperatures, to a whole degree: "10 °C", "18 °F". */
export function temperatureStepText(kelvin: number, units: DisplayUnits): string {
  const shown = units === 'metric' ? kelvin : kelvin * FAHRENHEIT_PER_CELSIUS;
  return `${Math.round(shown)} ${temperatureUnit(units)}`.replace('-', '−');
}
