import type { DisplayUnits } from '../../units/length.ts';
import { temperatureText } from '../../units/temperature.ts';
import { emcPct } from '../climate/emc.ts';
import type { EndUse } from './end-use.ts';

/** A room where the finished work will stand: temperature, and its relative humidity over the year. */
export interface Room {
  /** °C, -20 to 60. */
  tempC: number;
  /** Fractions, 0 to 0.99. */
  driestRh: number;
  dampestRh: number;
}

/** A target narrower than this cannot be met by boards that differ, % MC (common practice, no source). */
const LEAST_WIDTH_PCT = 2;

/**
 * The MC range that wood for a room should have when it is worked: what the room's air brings it to between its driest
 * and its dampest time, so that it moves least afterwards. A room that never changes gets a range 2 % wide.
 *
 * @throws RangeError outside the ranges above, or where the driest is damper than the dampest
 * Source: the principle is the Wood Handbook's (chapter 13: install at the average moisture content of service);
 * the numbers are eq. 4-5 at the room's own air.
 * @example targetForRoom({ tempC: 21.1, driestRh: 0.3, dampestRh: 0.5 }) // 6.2 to 9.2
 */
export function targetForRoom(room: Room): { minPct: number; maxPct: number } {
  const { tempC, driestRh, dampestRh } = room;
  if (!(driestRh <= dampestRh)) throw new RangeError('The driest humidity must not be above the dampest.');
  const minPct = emcPct(tempC, driestRh);
  const maxPct = emcPct(tempC, dampestRh);
  const missing = Math.max(0, LEAST_WIDTH_PCT - (maxPct - minPct)) / 2;
  const low = Math.max(0, minPct - missing);
  return { minPct: low, maxPct: Math.max(maxPct + missing, low + LEAST_WIDTH_PCT) };
}

/** A use with its range set by the humidity of the user's own room, rounded to 0.1 %, and a note, for the person to edit, that says so in their units. */
export function endUseForRoom(endUse: EndUse, room: Room, units: DisplayUnits): EndUse {
  const { minPct, maxPct } = targetForRoom(room);
  const percent = (rh: number) => `${Math.round(100 * rh)} %`;
  return {
    ...endUse,
    minPct: Math.round(10 * minPct) / 10,
    maxPct: Math.round(10 * maxPct) / 10,
    note: `Set by a room of ${temperatureText(Math.round(room.tempC), units)} and ${percent(room.driestRh)} to ${percent(room.dampestRh)} relative humidity.`,
  };
}
