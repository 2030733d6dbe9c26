import { type DisplayUnits, longLengthText, shortLengthText } from './length.ts';
import { temperatureStepText, temperatureText } from './temperature.ts';

/**
 * Quantities in the sentences that the core says. The core does not know the person's units, and its sentences are
 * kept in the yard file. So it says every quantity in SI with a narrow no-break space before its unit, which nothing
 * else in a sentence has, and `inUnits` turns those at the edge.
 */
const BEFORE_UNIT = '\u202f';

/** A thickness, width or depth. */
export const saidShortLength = (mm: number): string => said(mm, 'mm');
/** A length along a board. */
export const saidLongLength = (mm: number): string => said(mm / 1000, 'm');
export const saidTemperature = (tempC: number): string => said(tempC, '°C');
/** A difference between two temperatures. */
export const saidTemperatureStep = (kelvin: number): string => said(kelvin, 'K');

const said = (value: number, unit: string): string => `${Number(value.toFixed(4))}${BEFORE_UNIT}${unit}`;

const quantity = new RegExp(`(-?\\d+(?:\\.\\d+)?)${BEFORE_UNIT}(mm|m|°C|K)(?!\\p{L})`, 'gu');

/** A sentence of the core with its lengths and temperatures in the person's units. */
export function inUnits(sentence: string, units: DisplayUnits): string {
  return sentence.replace(quantity, (_, number: string, unit: string) => {
    const value = Number(number);
    switch (unit) {
      case 'mm':
        return shortLengthText(value, units);
      case 'm':
        return longLengthText(value * 1000, units);
      case '°C':
        return temperatureText(Math.round(value), units);
      default:
        return temperatureStepText(value, units);
    }
  });
}
