import { z } from 'zod';
import { rhForEmc } from './emc.ts';
import type { MonthlyAir } from './monthly-air.ts';

/** How a room is heated and cooled over the year. An open shed has the outdoor air, which must be known. */
export const roomAirSchema = z.enum(['open-shed', 'part-heated', 'heated', 'conditioned']);
export type RoomAir = z.infer<typeof roomAirSchema>;

/** A room whose air is usual, wherever it is. */
export type HeatedRoom = Exclude<RoomAir, 'open-shed'>;

/** The air of a season: temperature in °C, EMC in % MC. */
interface Season {
  tempC: number;
  emcPct: number;
}

/**
 * A room heated in winter swings between what the Wood Handbook recommends for pieces of wood inside most of the United
 * States, 6 and 10 % (FPL-GTR-282, Table 13-2, from memory): driest when it is heated. The other two rooms and all
 * temperatures: common practice, no source.
 */
export const roomSeasons: Record<HeatedRoom, { winter: Season; summer: Season }> = {
  'part-heated': { winter: { tempC: 10, emcPct: 9 }, summer: { tempC: 24, emcPct: 12 } },
  heated: { winter: { tempC: 20, emcPct: 6 }, summer: { tempC: 24, emcPct: 10 } },
  conditioned: { winter: { tempC: 20, emcPct: 6 }, summer: { tempC: 24, emcPct: 8 } },
};

/** The same table has 6 % on average in the dry southwest and 11 % on the damp coast, against 8 % elsewhere. */
export const UNSURE_PCT = 1.5;

/**
 * The usual air of a room over the year, where the outdoor air is not known (else `air-from-outdoors.ts`). Rough: forecasts
 * widen by it, until readings or the room's own figures say better.
 *
 * @param monthsLater  6 where July is winter, else 0
 */
export function roomYear(room: HeatedRoom, monthsLater: number): MonthlyAir {
  const { winter, summer } = roomSeasons[room];
  return Array.from({ length: 12 }, (_, month) => {
    // January is the middle of winter, July of summer.
    const warmth = (1 - Math.cos((2 * Math.PI * (month + monthsLater)) / 12)) / 2;
    const between = (from: number, to: number): number => from + warmth * (to - from);
    const tempC = between(winter.tempC, summer.tempC);
    const emcPct = between(winter.emcPct, summer.emcPct);
    return { tempC, rh: rhForEmc(tempC, emcPct), emcPct, emcSdPct: UNSURE_PCT };
  });
}
