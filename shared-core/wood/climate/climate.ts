import { emcPct } from './emc.ts';
import type { MonthlyAir } from './monthly-air.ts';

/** What a year's air at a place does to wood there. */
export interface YearOfEmc {
  /** Equilibrium moisture content of each month, %, January first. */
  monthlyEmcPct: number[];
  /** The driest that wood can get there, if it is thin enough to keep up with the month, %. */
  driestEmcPct: number;
  /** 1 January to 12 December; null where the air is the same all year. */
  driestMonth: number | null;
}

/** EMCs that differ by less are the same, % MC: half of the last place that is shown. */
export const SAME_EMC_PCT = 0.05;

/**
 * Equilibrium moisture content over a year and its driest month: the floor that air drying cannot pass at that place.
 * A month's own EMC holds where it is known; else it is that of the month's mean temperature and humidity.
 *
 * The same sum that W. T. Simpson made for 384 outdoor places (Equilibrium Moisture Content of Wood in Outdoor
 * Locations, FPL-RN-268, 1998, from its abstract), with eq. 4-5 of the Wood Handbook.
 *
 * @param offsetPct  how far readings put the place from these months, % MC of EMC
 */
export function emcOfYear(air: MonthlyAir, offsetPct = 0): YearOfEmc {
  const monthlyEmcPct = air.map((month) => offsetPct + (month.emcPct ?? emcPct(month.tempC, month.rh)));
  const driestEmcPct = Math.min(...monthlyEmcPct);
  const isSame = Math.max(...monthlyEmcPct) - driestEmcPct < SAME_EMC_PCT;
  return {
    monthlyEmcPct,
    driestEmcPct,
    driestMonth: isSame ? null : monthlyEmcPct.indexOf(driestEmcPct) + 1,
  };
}
