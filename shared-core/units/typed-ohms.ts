import { parseDecimal } from './decimal.ts';

/** What a resistance is given in. */
export type OhmUnit = 'ohm' | 'kohm' | 'megohm' | 'gigohm';

const ohmsOf: Readonly<Record<string, number>> = { k: 1e3, m: 1e6, g: 1e9 };

/** To the digits that a number holds, so that 1.1 MΩ is 1,100,000 Ω exactly. */
const exactly = (value: number): number => Number(value.toPrecision(15));
export const ohmsOfMegohms = (megohms: number): number => exactly(megohms * 1e6);
const PER: Readonly<Record<OhmUnit, number>> = { ohm: 1, kohm: 1e3, megohm: 1e6, gigohm: 1e9 };
/** A resistance in Ω, to the digits that its number holds. */
export const ohmsIn = (value: number, unit: OhmUnit): number => exactly(value * PER[unit]);
export const megohmsOf = (ohms: number): number => exactly(ohms / 1e6);

/** The number of a typed resistance, and its prefix, as "2.2" and "G"; the prefix may be empty. */
export function partsOfOhms(text: string): { number: string; prefix: string } {
  const [, number = '', prefix = ''] = /^(.*?)\s*([kmg]?)(?:[ΩΩ]|ohms?)?$/i.exec(text.trim()) ?? [];
  return { number, prefix };
}

/**
 * The resistance a person typed, Ω: "350" and "0.5" are megohms; "2.2G", "800k" and "12 MΩ" have their prefix. No meter
 * shows milliohms of wood, so "m" is mega as well.
 *
 * @returns null for an empty field, NaN for what is not a resistance
 */
export function parseOhms(text: string): number | null {
  if (text.trim() === '') return null;
  const { number, prefix } = partsOfOhms(text);
  const typed = parseDecimal(number) ?? Number.NaN;
  return Number.isNaN(typed) ? typed : exactly(typed * ohmsOf[prefix.toLowerCase() || 'm']!);
}
