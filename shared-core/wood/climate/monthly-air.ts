import { z } from 'zod';
import { DAMPEST_RH, emcPct } from './emc.ts';

/** The mean air of one month: temperature in °C, relative humidity as a fraction. */
export const airSchema = z.object({
  tempC: z.number().min(-60).max(60),
  rh: z.number().min(0).max(DAMPEST_RH, 'validation.most-humidity'),
  /** What wood follows in that month's hours, % MC, where those are known: they come to another EMC than their mean. */
  emcPct: z.number().min(0).max(30).optional(),
  /** Standard deviation of the true EMC round this one, % MC, where it is an average over a region. */
  emcSdPct: z.number().min(0).max(10).optional(),
});
export type Air = z.infer<typeof airSchema>;

/** A year of air at one place, January first. A heated room may be twelve times the same. */
export const monthlyAirSchema = z.array(airSchema).length(12);
export type MonthlyAir = z.infer<typeof monthlyAirSchema>;

/** How far a place may be from its months, % MC of EMC, root mean square over the year; 0 where they are its own. */
export const roughnessPct = (air: MonthlyAir): number =>
  Math.sqrt(air.reduce((sum, { emcSdPct = 0 }) => sum + emcSdPct ** 2, 0) / air.length);

/** How far the humidity that a person or a station tells is from that at the boards, as a fraction: standard deviation. */
export const HUMIDITY_SD = 0.03;
/** How far one wood's EMC is from that of the formula for all woods, % MC: standard deviation. */
export const WOOD_EMC_SD_PCT = 0.3;

/**
 * How far the true EMC may be from that of a place's months, % MC, root mean square over the year. Humidity off by so much is
 * half a point in a heated room and a whole one in a damp shed, for there the EMC rises more steeply.
 */
export function airSdPct(air: MonthlyAir): number {
  const squares = air.map(({ tempC, rh, emcSdPct = 0 }) => {
    const damper = emcPct(tempC, Math.min(DAMPEST_RH, rh + HUMIDITY_SD));
    const byHumidity = (damper - emcPct(tempC, Math.max(0, rh - HUMIDITY_SD))) / 2;
    return byHumidity ** 2 + WOOD_EMC_SD_PCT ** 2 + emcSdPct ** 2;
  });
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / air.length);
}
