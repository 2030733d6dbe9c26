import { parseDecimal } from './decimal.ts';
import type { DisplayUnits } from './length.ts';
import { celsiusFromTemperature } from './temperature.ts';

/** The air of a month: temperature in °C, relative humidity in %. */
export interface PastedMonth {
  tempC: number;
  rhPct: number;
}

/**
 * Twelve months as pasted from a spreadsheet: twelve lines of temperature and humidity, or one line of each with
 * twelve numbers. Numbers are separated by tabs, semicolons or spaces, and may have a decimal comma.
 *
 * @param units  of the temperatures
 * @returns      null where the text is not that
 */
export function pastedMonths(text: string, units: DisplayUnits): PastedMonth[] | null {
  const lines = text
    .trim()
    .split(/\r?\n/)
    .map((line) =>
      line
        .trim()
        .split(/[\t; ]+/)
        .map((cell) => parseDecimal(cell.replace(/(%|°[cf]?)$/i, '')) ?? Number.NaN),
    );
  const pairs =
    lines.length === 2
      ? (lines[0] ?? []).map((temp, month) => [temp, lines[1]?.[month] ?? Number.NaN])
      : lines;
  const isYear = pairs.length === 12 && pairs.every((pair) => pair.length === 2 && !pair.some(Number.isNaN));
  if (!isYear || (lines.length === 2 && lines[1]?.length !== 12)) return null;
  return pairs.map(([temp = 0, rhPct = 0]) => ({ tempC: celsiusFromTemperature(temp, units), rhPct }));
}
