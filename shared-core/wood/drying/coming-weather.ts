/** How far the air to come may be from a place's mean year, as a board feels it. */
import { DAY_S } from '../../time.ts';
import { emcOfYear } from '../climate/climate.ts';
import type { MonthlyAir } from '../climate/monthly-air.ts';
import type { DayToDay } from '../climate/station.ts';
import { SEASON_SHARE } from '../climate/swings.ts';
import { mean } from '../maths/mean.ts';
import { transverseDiffusivityM2S } from './diffusivity.ts';

/** Lumber dries mostly at about this, and then at about this moisture content. */
const [USUAL_C, USUAL_MC_PCT] = [15, 15];

/**
 * How long a board takes to follow its air: the time constant of the slowest term of the series for a sheet whose faces
 * are held at the EMC, days (J. Crank, The Mathematics of Diffusion, 1975, chapter 4; from memory).
 *
 * @param diffusivityFactor  on the published diffusivity
 */
export function responseDays(
  thicknessMm: number,
  basicSpecificGravity: number,
  diffusivityFactor: number,
): number {
  const d = diffusivityFactor * transverseDiffusivityM2S(USUAL_MC_PCT, USUAL_C, basicSpecificGravity);
  return (thicknessMm / 1000) ** 2 / (Math.PI ** 2 * d) / DAY_S;
}

/**
 * Standard deviation of the EMC to come round that of the place's months as a board feels it, % MC. Days that stray from their
 * month as a first-order process are smoothed by the board's response, also of first order: of their variance there
 * remains the share of their correlation time in both times together.
 *
 * @param days            how the EMC of single days swings there; null where that is not known, as within walls
 * @param boardDays       `responseDays`
 */
export function comingAirSdPct(air: MonthlyAir, days: DayToDay | null, boardDays: number): number {
  const seasonSdPct = SEASON_SHARE * mean(emcOfYear(air).monthlyEmcPct);
  if (days === null) return seasonSdPct;
  const correlationDays = days.lag > 0 ? -1 / Math.log(Math.min(0.99, days.lag)) : 0;
  return Math.hypot(seasonSdPct, days.sdPct * Math.sqrt(correlationDays / (correlationDays + boardDays)));
}
