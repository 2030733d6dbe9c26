import { FAHRENHEIT_AT_ZERO_CELSIUS, FAHRENHEIT_PER_CELSIUS } from '../measures.ts';
import type { DisplayUnits } from './length.ts';

export const temperatureUnit = (units: DisplayUnits): string => (units === 'metric' ? '°C' : '°F');

/** A temperature as a person types it in a field, to a tenth of a degree. */
export function temperatureFromC(tempC: number, units: DisplayUnits): number {
  const shown = units === 'metric' ? tempC : tempC * FAHRENHEIT_PER_CELSIUS + FAHRENHEIT_AT_ZERO_CELSIUS;
  return Math.round(shown * 10) / 10;
}

export function celsiusFromTemperature(typed: number, units: DisplayUnits): number {
  return units === 'metric' ? typed : (typed - FAHRENHEIT_AT_ZERO_CELSIUS) / FAHRENHEIT_PER_CELSIUS;
}
