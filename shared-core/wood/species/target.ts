import { emcPct } from '../climate/emc.ts';

/** A room where the finished work will be: temperature, and its relative humidity over the year. */
export interface Room {
  /** °C, -20 to 60. */
  tempC: number;
  /** Fractions, 0 to 0.99. */
  driestRh: number;
  dampestRh: number;
}

/** A target narrower than this cannot be met by boards that differ, points of MC (common practice, no source). */
const LEAST_WIDTH_POINTS = 2;

/**
 * The target range for wood that is machined for a room: the EMC of the room's air at its driest and at its dampest,
 * so that the wood moves least afterwards. A room that never changes gets a range 2 points wide.
 *
 * @returns  % MC, to 0.1, as a use is saved
 * @throws   RangeError outside the ranges above, or where the driest is damper than the dampest
 * Source: the principle is the Wood Handbook's (chapter 13: install at the average moisture content of service);
 * the numbers are eq. 4-5 at the room's own air.
 * @example targetForRoom({ tempC: 21.1, driestRh: 0.3, dampestRh: 0.5 }) // 6.2 to 9.2
 */
export function targetForRoom(room: Room): { minPct: number; maxPct: number } {
  const { tempC, driestRh, dampestRh } = room;
  if (!(driestRh <= dampestRh)) throw new RangeError('The driest humidity must not be above the dampest.');
  const driestPct = emcPct(tempC, driestRh);
  const dampestPct = emcPct(tempC, dampestRh);
  const missing = Math.max(0, LEAST_WIDTH_POINTS - (dampestPct - driestPct)) / 2;
  const minPct = Math.max(0, driestPct - missing);
  const maxPct = Math.max(dampestPct + missing, minPct + LEAST_WIDTH_POINTS);
  return { minPct: toTenth(minPct), maxPct: toTenth(maxPct) };
}

const toTenth = (pct: number): number => Math.round(10 * pct) / 10;
